using CoopLessons.Core.Prepare;
using CoopLessons.Core.Units;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>Something to begin ahead of an activity, with the days as they stand now.</summary>
/// <param name="NeededOn">The day of the activity; while it has none, the Monday of the week for which it is written.</param>
/// <param name="DayIsSet">Whether the activity has a day of its own.</param>
/// <param name="Dates">Counted back from that day.</param>
/// <param name="Mark">What became of it; null where nobody touched it.</param>
/// <param name="Underway">Where it was begun.</param>
public sealed record AheadLine(
    Unit Unit, Activity Activity, AheadStart Start, DateOnly NeededOn, bool DayIsSet, AheadDates Dates, AheadMark? Mark, AheadUnderway? Underway)
{
    public bool NotNeeded => Mark?.NotNeeded == true;

    /// <summary>When somebody has to see to it next, today or later; null where nobody need.</summary>
    public DateOnly? TendNext(DateOnly today) =>
        Underway?.TendOn.Where(d => d > (Mark!.TendedOn ?? Mark.BegunOn)).Select(d => d < today ? today : d).Cast<DateOnly?>().FirstOrDefault(d => d < NeededOn);

    /// <summary>When it asks for a hand next; what is ready and needs nothing comes last, on its own day.</summary>
    public DateOnly Next(DateOnly today) => Underway is null ? Dates.By : TendNext(today) ?? NeededOn;
}

/// <summary>All that is begun ahead of the activities which are still to come.</summary>
/// <param name="Lines">By the day on which each asks for a hand next.</param>
public sealed record AheadList(IReadOnlyList<AheadLine> Lines)
{
    /// <summary>How long after its last day to begin a thing is still named day by day; then only its own page tells of it.</summary>
    private const int DaysNamed = 3;

    /// <summary>What asks for a hand on this very day: the last day to begin something has come, or a day to see to it.</summary>
    public IEnumerable<AheadLine> For(DateOnly today) =>
        Lines.Where(l => !l.NotNeeded && (l.Underway is null ? l.Dates.By <= today && l.Dates.By.AddDays(DaysNamed) > today : l.TendNext(today) <= today));

    public static async Task<AheadList> LoadAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        var longAgo = today.AddDays(-7 * (Unit.MostWeeks + Unit.WeeksAfter));
        var units = await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery()
            .Where(u => u.StartsOn >= longAgo || u.Activities.Any(a => db.PlannedSessions.Any(s => s.ActivityId == a.Id && s.State == SessionState.Planned && s.Date >= today)))
            .OrderBy(u => u.StartsOn).ThenBy(u => u.Id).ToListAsync(ct);
        var activities = units.SelectMany(u => u.Activities).Where(a => a.Details.Ahead.Count > 0).Select(a => a.Id).ToList();
        var sessions = (await db.PlannedSessions.AsNoTracking().Where(s => s.ActivityId != null && activities.Contains(s.ActivityId.Value)).ToListAsync(ct)).ToLookup(s => s.ActivityId!.Value);
        var marks = (await db.AheadMarks.AsNoTracking().ToListAsync(ct)).ToDictionary(m => (m.ActivityId, m.What.ToUpperInvariant()));
        var lines = units.SelectMany(u => u.InPlan().Where(a => a.Details.Ahead.Count > 0).SelectMany(a => Of(u, a, [.. sessions[a.Id]], marks, today)));
        return new AheadList([.. lines.OrderBy(l => l.NotNeeded).ThenBy(l => l.Next(today)).ThenBy(l => l.NeededOn).ThenBy(l => l.Start.What, StringComparer.OrdinalIgnoreCase)]);
    }

    private static IEnumerable<AheadLine> Of(Unit unit, Activity activity, List<PlannedSession> sessions, Dictionary<(Guid, string), AheadMark> marks, DateOnly today)
    {
        if (sessions.Exists(s => s.State == SessionState.Done) || sessions.Count > 0 && sessions.TrueForAll(s => s.State == SessionState.LetGo))
            yield break;
        // The next day that comes; a day that went by unnoticed counts only where no other is left.
        var days = sessions.Where(s => s.State == SessionState.Planned).Select(s => (DateOnly?)s.Date).ToList();
        var planned = days.Where(d => d >= today).Min() ?? days.Max();
        // What was not done on its day waits for another; what has no day stands in its week.
        var week = unit.StartsOn?.AddDays(7 * (activity.Week - 1));
        if ((planned ?? week) is not { } day || planned is null && day < today.AddDays(-7 * Unit.WeeksAfter))
            yield break;
        foreach (var start in activity.Details.Ahead)
        {
            var mark = marks.GetValueOrDefault((activity.Id, start.What.ToUpperInvariant()));
            var underway = mark is { BegunOn: { } begun, MeantFor: { } meant } ? StartAhead.Underway(start, begun, meant, day) : null;
            yield return new AheadLine(unit, activity, start, day, planned is not null, StartAhead.Of(start, day), mark, underway);
        }
    }
}
