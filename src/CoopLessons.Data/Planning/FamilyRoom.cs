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
    private readonly IReadOnlyList<(Appointment Appointment, IReadOnlySet<DateOnly> Days)> _appointments;
    private readonly IReadOnlyList<TeachingAdult> _adults;

    private FamilyRoom(
        TeachingDays calendar, TeachingHours hours, IReadOnlyList<(Appointment, IReadOnlySet<DateOnly>)> appointments,
        IReadOnlyList<Learner> learners, IReadOnlyList<TeachingAdult> adults) =>
        (_calendar, _hours, _appointments, Learners, _adults) = (calendar, hours, appointments, learners, adults);

    /// <summary>The children who are taught now, in the family's order.</summary>
    public IReadOnlyList<Learner> Learners { get; }

    /// <param name="range">The days that will be asked for.</param>
    public static async Task<FamilyRoom> LoadAsync(AppDb db, DayRange range, CancellationToken ct)
    {
        var appointments = await db.Appointments.AsNoTracking().Where(a => a.First <= range.Last).ToListAsync(ct);
        return new FamilyRoom(
            await TeachingDays.LoadAsync(db, ct),
            await TeachingHours.LoadAsync(db, range.First, ct),
            [.. appointments.Select(a => (a, (IReadOnlySet<DateOnly>)a.DaysIn(range).ToHashSet()))],
            await db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct),
            await db.TeachingAdults.AsNoTracking().Where(a => !a.SetAside).OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(ct));
    }

    public IReadOnlyList<DateOnly> DaysOf(Week week) => [.. week.Days.Days().Where(_calendar.Holds)];

    public IReadOnlyList<Room> LearnersOn(IReadOnlyList<DateOnly> days) =>
        [.. Learners.Select(l => new Room(l.Id, l.Name, FreeOf(l.Id, days, a => a.Learners.Contains(l.Id)).MinutesOn(days)))];

    /// <summary>Where no adult is written down, one is taken to be there in the family's hours.</summary>
    public IReadOnlyList<Room> AdultsOn(IReadOnlyList<DateOnly> days) => _adults.Count > 0
        ? [.. _adults.Select(a => new Room(a.Id, a.Name, FreeOf(a.Id, days, x => x.Adults.Contains(a.Id)).MinutesOn(days)))]
        : [new Room(Guid.Empty, "", _hours.Family.Over(days).MinutesOn(days))];

    private FreeTime FreeOf(Guid owner, IReadOnlyList<DateOnly> days, Func<Appointment, bool> takes)
    {
        var hours = _hours.Of(owner);
        return new FreeTime(days.ToDictionary(d => d, d => Stretches.Less(
            hours.On(d.DayOfWeek), _appointments.Where(a => takes(a.Appointment) && a.Days.Contains(d)).Select(a => a.Appointment.Time))));
    }
}
