using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Week;

/// <summary>An activity of a taken unit that has no day yet.</summary>
/// <param name="UnitWeek">The week of the unit for which it is written.</param>
/// <param name="Earlier">Left from an earlier week of the unit.</param>
public sealed record Unplaced(Guid ActivityId, string Title, string Unit, int UnitWeek, bool Earlier, int Minutes)
{
    /// <summary>What the taken units have for the week that begins on this Monday, and what they left from earlier ones; units that ended long ago are let go.</summary>
    public static async Task<IReadOnlyList<Unplaced>> LoadAsync(AppDb db, DateOnly monday, CancellationToken ct)
    {
        var units = await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery()
            .Where(u => u.StartsOn != null && u.StartsOn <= monday.AddDays(6)).OrderBy(u => u.StartsOn).ThenBy(u => u.Id).ToListAsync(ct);
        var placed = (await db.PlannedSessions.Where(s => s.ActivityId != null).Select(s => s.ActivityId!.Value).Distinct().ToListAsync(ct)).ToHashSet();
        return [.. units.Where(u => monday < u.StartsOn!.Value.AddDays(7 * (u.Weeks + Data.Units.Unit.WeeksAfter))).SelectMany(u => Of(u, monday, placed))];
    }

    private static IEnumerable<Unplaced> Of(Unit unit, DateOnly monday, HashSet<Guid> placed)
    {
        var week = (monday.AddDays(6).DayNumber - unit.StartsOn!.Value.DayNumber) / 7 + 1;
        return unit.InPlan().Where(a => a.Week <= week && !placed.Contains(a.Id))
            .Select(a => new Unplaced(a.Id, a.Title, unit.Title, a.Week, a.Week < week, a.HandsOnMinutes));
    }
}
