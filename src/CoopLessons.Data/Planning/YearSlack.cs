using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>The slack of the school year that holds a day.</summary>
/// <param name="Year">The year's name.</param>
public sealed record YearSlack(string Year, Slack Slack)
{
    /// <summary>Null between school years.</summary>
    public static async Task<YearSlack?> LoadAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        if (await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).FirstOrDefaultAsync(y => y.First <= today && y.Last >= today, ct) is not { } year)
            return null;
        var units = await db.Units.Where(u => u.StartsOn != null).Select(u => new { u.StartsOn, u.Weeks }).ToListAsync(ct);
        var planned = await db.PlannedSessions.Where(s => s.State == SessionState.Planned && s.Date >= year.First && s.Date <= year.Last)
            .Select(s => s.Date).Distinct().ToListAsync(ct);
        var logged = await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date >= year.First && r.Date <= year.Last)
            .Select(r => r.Date).Distinct().ToListAsync(ct);
        return new YearSlack(year.Name, Slack.Of(
            year.Calendar, today, [.. units.Select(u => new TakenWeeks(Week.Of(u.StartsOn!.Value), u.Weeks))],
            [.. planned.Select(Week.Of).Distinct()], [.. logged.Select(Week.Of).Distinct()]));
    }
}
