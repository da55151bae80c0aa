using CoopLessons.Core.Calendar;

namespace CoopLessons.Data.Scenario;

/// <summary>How far each child of school age is in its year beside an even course through the teaching days.</summary>
internal sealed class Pace
{
    private readonly Dictionary<Guid, int> _credited = [];
    private readonly int _days;

    public Pace(CoopYear year, TeachingCalendar calendar) => _days = calendar.TeachingDays().Count(d => !year.IsSick(d));

    /// <summary>Teaching days so far, the one at hand included.</summary>
    public int DaysBegun { get; private set; }

    public void BeginDay() => DaysBegun++;

    public void Credit(Guid child, int minutes) => _credited[child] = _credited.GetValueOrDefault(child) + minutes;

    /// <summary>Minutes that the child lacks at the end of the day begun; below zero where it is ahead.</summary>
    public int Short(Pupil pupil) => (int)((long)pupil.Child.YearHours * 60 * DaysBegun / Math.Max(1, _days)) - _credited.GetValueOrDefault(pupil.Id);
}
