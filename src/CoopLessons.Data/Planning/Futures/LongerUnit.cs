using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>
/// A unit needs a week more: from the week after this one on, everything of it comes a week later. The units behind it
/// follow, or stay and overlap with it, or it ends on its day after all without what it has not done by now.
/// </summary>
public static class LongerUnit
{
    private const int AWeek = 7;

    /// <param name="unit">Taken, with its activities.</param>
    public static async Task<UpsetOutcome> OfAsync(
        AppDb db, Unit unit, string title, DateOnly today, int now, Effort effort, Action<LayoutProgress>? progress, CancellationToken ct)
    {
        var week = Week.Of(today);
        var units = await db.Units.AsNoTracking().Where(u => u.StartsOn != null).ToListAsync(ct);
        var behind = week.Monday.AddDays(-4 * AWeek);
        var open = await db.WorkAsync(
            db.PlannedSessions.AsNoTracking().Where(s => s.Date >= behind && (s.State == SessionState.Planned || s.State == SessionState.NotDone)), ct);
        var cost = new FutureCost(open, units);
        var followers = units.Where(u => u.StartsOn > unit.StartsOn).Select(u => u.Id).ToHashSet();

        async Task<Future> LaterAsync(FutureKind kind, HashSet<Guid> which)
        {
            var moves = open.Where(w => w.Doing.Activity is { } a && which.Contains(a.UnitId) && !w.Session.Pinned && w.Session.State == SessionState.Planned && w.Session.Date > week.Days.Last)
                .ToDictionary(w => w.Session.Id, w => w.Session.Date.AddDays(AWeek));
            var (changes, proof) = await Relaid.OfAsync(db, moves, new HashSet<Guid>(), new HashSet<DateOnly>(), title, today, now, effort, ct);
            var unitMoves = units.Where(u => which.Contains(u.Id)).Select(u => new UnitMove(u.Id, u.StartsOn!.Value, u.StartsOn.Value.AddDays(AWeek))).ToList();
            return cost.Of(kind, title, changes, unitMoves, [], proof, (u, last) =>
                which.Contains(u.Id) && FutureCost.LastDay(u).AddDays(AWeek) is var later && later > last ? later : last);
        }

        progress?.Invoke(new LayoutProgress("The units behind it follow", 0.1));
        var shift = await LaterAsync(FutureKind.Shift, [unit.Id, .. followers]);
        progress?.Invoke(new LayoutProgress("The units behind it stay", 0.5));
        var thin = await LaterAsync(FutureKind.Thin, [unit.Id]);
        progress?.Invoke(new LayoutProgress("It ends on its day", 0.9));
        var undone = Undone(unit, open, await DoneAsync(db, unit, ct), week);
        var gone = open.Where(w => w.Session.ActivityId is { } id && undone.Any(a => a.Id == id)).Select(w => new PlanChange(w.Session.Id, w.Session.Stands, null)).ToList();
        var letGo = cost.Of(FutureKind.LetGo, title, gone, [], undone, null, (_, last) => last);
        return new UpsetOutcome(new Upset(title, today, [], [.. gone.Select(c => open.First(w => w.Session.Id == c.SessionId).Session)]) { IsLongerUnit = true }, [shift, thin, letGo]);
    }

    private static async Task<HashSet<Guid>> DoneAsync(AppDb db, Unit unit, CancellationToken ct)
    {
        var ids = unit.Activities.Select(a => a.Id).ToList();
        return [.. await db.PlannedSessions.Where(s => s.State == SessionState.Done && s.ActivityId != null && ids.Contains(s.ActivityId.Value)).Select(s => s.ActivityId!.Value).ToListAsync(ct)];
    }

    /// <summary>What the weeks up to this one hold and nobody has done or planned for a day to come.</summary>
    private static List<Activity> Undone(Unit unit, IReadOnlyList<PlannedWork> open, HashSet<Guid> done, Week week)
    {
        var number = (week.Days.Last.DayNumber - unit.StartsOn!.Value.DayNumber) / AWeek + 1;
        var ahead = open.Where(w => w.Session.State == SessionState.Planned && w.Session.Date > week.Days.Last).Select(w => w.Session.ActivityId).ToHashSet();
        return [.. unit.InPlan().Where(a => a.Week <= number && !done.Contains(a.Id) && !ahead.Contains(a.Id))];
    }
}
