using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>Something that upsets a plan: days that are lost, or an appointment that came.</summary>
/// <param name="Title">What happened, as the beginning of a sentence: "Wednesday 11 March fell through".</param>
/// <param name="Lost">The teaching days that are lost, ascending; empty for an appointment.</param>
/// <param name="Hit">Sessions that cannot stand where they stand, tracked by nobody, in their order.</param>
public sealed record Upset(string Title, DateOnly From, IReadOnlyList<DateOnly> Lost, IReadOnlyList<PlannedSession> Hit)
{
    /// <summary>A unit needs a week more: nothing was hit, everything of it comes later.</summary>
    public bool IsLongerUnit { get; init; }

    /// <summary>Days of a range are lost, whatever was to be done on them and is not done.</summary>
    /// <param name="some">Some of the children were ill on them: only what is theirs was hit, and no day is lost for all.</param>
    public static async Task<Upset> OfDaysAsync(AppDb db, DayRange range, string title, IllSpell? some, CancellationToken ct)
    {
        var calendar = await TeachingDays.LoadAsync(db, ct);
        var hit = await db.PlannedSessions.AsNoTracking()
            .Where(s => s.Date >= range.First && s.Date <= range.Last && (s.State == SessionState.Planned || s.State == SessionState.NotDone))
            .ToListAsync(ct);
        return some is { Learners.Count: > 0 }
            ? new Upset(title, range.First, [], InOrder(hit.Where(some.Takes)))
            : new Upset(title, range.First, [.. range.Days().Where(calendar.Holds)], InOrder(hit));
    }

    /// <summary>An appointment takes hours in which something is planned for the same people.</summary>
    /// <param name="range">The days looked at.</param>
    public static async Task<Upset> OfAppointmentAsync(AppDb db, Appointment appointment, DayRange range, string title, CancellationToken ct)
    {
        var days = appointment.DaysIn(range).ToHashSet();
        var work = await db.WorkAsync(
            db.PlannedSessions.AsNoTracking().Where(s => s.Date >= range.First && s.Date <= range.Last && s.State == SessionState.Planned && s.StartsAt != null), ct);
        var hit = work.Where(w => days.Contains(w.Session.Date)
            && new Stretch(w.Session.StartsAt!.Value, w.Session.StartsAt.Value + w.Minutes).Meets(appointment.Time)
            && (w.Session.Learners.Any(appointment.Learners.Contains) || w.Session.AdultId is { } adult && appointment.Adults.Contains(adult)));
        return new Upset(title, range.First, [], InOrder(hit.Select(w => w.Session)));
    }

    private static List<PlannedSession> InOrder(IEnumerable<PlannedSession> sessions) =>
        [.. sessions.OrderBy(s => s.Date).ThenBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id)];
}
