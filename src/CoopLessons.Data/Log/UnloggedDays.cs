using CoopLessons.Core.Calendar;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log;

/// <summary>
/// The days of the last two weeks that may be written down yet:
/// <list type="number">
/// <item>Teaching days before today, not before the family first planned or logged anything.</item>
/// <item>A day on which something planned is undecided, unless it rests because somebody is ill.</item>
/// <item>Else a day on which nothing is logged and nothing was planned, unless everybody is ill.</item>
/// </list>
/// </summary>
/// <param name="Days">The last first.</param>
/// <param name="Logged">Those of the two weeks on which something is logged.</param>
/// <param name="Open">What is planned and undecided on the days, without what rests.</param>
public sealed record UnloggedDays(IReadOnlyList<DateOnly> Days, IReadOnlySet<DateOnly> Logged, IReadOnlyList<PlannedWork> Open)
{
    public const int DaysBack = 14;

    /// <param name="today">In the family's zone.</param>
    public static async Task<UnloggedDays> LoadAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        var range = new DayRange(today.AddDays(-DaysBack), today.AddDays(-1));
        var none = new UnloggedDays([], new HashSet<DateOnly>(), []);
        if (!await db.Learners.AnyAsync(l => !l.SetAside, ct) || await BeganAsync(db, ct) is not { } began)
            return none;
        var calendar = await TeachingDays.LoadAsync(db, ct);
        var days = range.Days().Where(d => d >= began && calendar.Holds(d)).ToHashSet();
        if (days.Count == 0)
            return none;
        var logged = (await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date >= range.First && r.Date <= range.Last).Select(r => r.Date).Distinct().ToListAsync(ct)).ToHashSet();
        var planned = await db.PlannedSessions.Where(s => s.Date >= range.First && s.Date <= range.Last).Select(s => new { s.Date, s.State }).Distinct().ToListAsync(ct);
        var ill = await IllDays.LoadAsync(db, range.First, today, ct);
        var undecided = planned.Where(s => s.State == SessionState.Planned && days.Contains(s.Date)).Select(s => s.Date).ToList();
        var open = undecided.Count == 0 ? [] : await db.WorkAsync(
            db.PlannedSessions.AsNoTracking().Where(s => s.State == SessionState.Planned && undecided.Contains(s.Date)), ct, today);
        var asking = open.Where(w => !ill.Stops(w)).ToList();
        var had = planned.Select(s => s.Date).ToHashSet();
        return new UnloggedDays(
            [
                .. days.Where(d => asking.Exists(w => w.Session.Date == d) || !logged.Contains(d) && !had.Contains(d) && ill.On(d)?.Learners.Count != 0)
                    .OrderDescending(),
            ],
            logged, asking);
    }

    /// <summary>The first day of which the family says anything at all.</summary>
    private static async Task<DateOnly?> BeganAsync(AppDb db, CancellationToken ct)
    {
        var logged = await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed).MinAsync(r => (DateOnly?)r.Date, ct);
        var planned = await db.PlannedSessions.MinAsync(s => (DateOnly?)s.Date, ct);
        return logged is null || planned < logged ? planned : logged;
    }
}
