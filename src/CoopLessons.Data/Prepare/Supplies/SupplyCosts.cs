using CoopLessons.Core.Calendar;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>What an activity cost.</summary>
public sealed record ActivityCost(Guid ActivityId, string Activity, long Cents);

/// <summary>What a unit cost; its activities add up to it.</summary>
public sealed record UnitCost(Guid UnitId, string Unit, long Cents, IReadOnlyList<ActivityCost> Activities);

/// <summary>What supplies cost between two days; units and what belongs to none add up to the total.</summary>
/// <param name="ForNone">What was bought for no activity in particular.</param>
public sealed record SupplyCosts(long TotalCents, IReadOnlyList<UnitCost> Units, long ForNone, int Purchases)
{
    public static async Task<SupplyCosts> LoadAsync(AppDb db, DayRange days, CancellationToken ct)
    {
        var (first, last) = (days.First, days.Last);
        var purchases = await db.Purchases.AsNoTracking().Where(p => p.Day >= first && p.Day <= last).OrderBy(p => p.Day).ThenBy(p => p.Id).ToListAsync(ct);
        var units = purchases.SelectMany(p => p.Shares).GroupBy(s => s.UnitId).Select(u => new UnitCost(
            u.Key, u.Last().Unit, u.Sum(s => (long)s.Cents),
            [.. u.GroupBy(s => s.ActivityId).Select(a => new ActivityCost(a.Key, a.Last().Activity, a.Sum(s => (long)s.Cents))).OrderByDescending(a => a.Cents).ThenBy(a => a.Activity, StringComparer.Ordinal)]));
        return new SupplyCosts(
            purchases.Sum(p => (long)p.Cents), [.. units.OrderByDescending(u => u.Cents).ThenBy(u => u.Unit, StringComparer.Ordinal)],
            purchases.Sum(p => p.Cents - p.Shares.Sum(s => (long)s.Cents)), purchases.Count);
    }
}
