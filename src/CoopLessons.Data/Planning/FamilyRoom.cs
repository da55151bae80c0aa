using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>When everybody in a family is free over some weeks: their hours on teaching days, less their appointments.</summary>
public sealed class FamilyRoom
{
    private readonly TeachingDays _calendar;
    private readonly TeachingHours _hours;
    private readonly IReadOnlyList<FixedPoint> _appointments;

    private FamilyRoom(TeachingDays calendar, TeachingHours hours, IReadOnlyList<FixedPoint> appointments, IReadOnlyList<Learner> learners, IReadOnlyList<TeachingAdult> adults) =>
        (_calendar, _hours, _appointments, Learners, Adults) = (calendar, hours, appointments, learners, adults);

    /// <summary>The children who are taught now, in the family's order.</summary>
    public IReadOnlyList<Learner> Learners { get; }

    /// <summary>Those who teach now, in the family's order; empty where nobody was written down.</summary>
    public IReadOnlyList<TeachingAdult> Adults { get; }

    /// <param name="range">The days that will be asked for.</param>
    public static async Task<FamilyRoom> LoadAsync(AppDb db, DayRange range, CancellationToken ct) => new(
        await TeachingDays.LoadAsync(db, ct),
        await TeachingHours.LoadAsync(db, range.First, ct),
        await FixedPoint.InAsync(db, range, ct),
        await db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct),
        await db.TeachingAdults.AsNoTracking().Where(a => !a.SetAside).OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(ct));

    public IReadOnlyList<DateOnly> DaysOf(Week week) => [.. week.Days.Days().Where(_calendar.Holds)];

    /// <summary>The first teaching day after a date.</summary>
    public DateOnly DayAfter(DateOnly date) => _calendar.After(date, 1)[0];

    /// <summary>Appointments on the days, by day and start.</summary>
    public IReadOnlyList<FixedPoint> AppointmentsOn(IReadOnlyList<DateOnly> days) => [.. _appointments.Where(f => days.Contains(f.Date))];

    public FreeTime OfLearner(Guid learner, IReadOnlyList<DateOnly> days) => Free(_hours.Of(learner), days, a => a.Learners.Contains(learner));

    public FreeTime OfAdult(Guid adult, IReadOnlyList<DateOnly> days) => Free(_hours.Of(adult), days, a => a.Adults.Contains(adult));

    /// <summary>The family's usual hours, whoever has an appointment in them.</summary>
    public FreeTime OfFamily(IReadOnlyList<DateOnly> days) => Free(_hours.Family, days, _ => false);

    /// <summary>When a learner has an appointment: asleep or out of the house.</summary>
    public IReadOnlyList<Stretch> AppointmentsOf(Guid learner, DateOnly day) =>
        Stretches.Joined(_appointments.Where(f => f.Date == day && f.Appointment.Learners.Contains(learner)).Select(f => f.Appointment.Time));

    public IReadOnlyList<Room> LearnersOn(IReadOnlyList<DateOnly> days) => [.. Learners.Select(l => new Room(l.Id, l.Name, OfLearner(l.Id, days).MinutesOn(days)))];

    /// <summary>Where no adult is written down, one is taken to be there in the family's hours.</summary>
    public IReadOnlyList<Room> AdultsOn(IReadOnlyList<DateOnly> days) => Adults.Count > 0
        ? [.. Adults.Select(a => new Room(a.Id, a.Name, OfAdult(a.Id, days).MinutesOn(days)))]
        : [new Room(Guid.Empty, "", OfFamily(days).MinutesOn(days))];

    private FreeTime Free(WeekHours hours, IReadOnlyList<DateOnly> days, Func<Appointment, bool> takes) => new(days.ToDictionary(
        d => d, d => Stretches.Less(hours.On(d.DayOfWeek), _appointments.Where(f => f.Date == d && takes(f.Appointment)).Select(f => f.Appointment.Time))));
}
