using CoopLessons.Core.Prepare;
using CoopLessons.Data.Prepare.Supplies;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>What is to be gathered for a week: bought, and looked out in the house.</summary>
public static class SupplyTasks
{
    /// <summary>
    /// At most two tasks: what is to be bought, and what is to be looked out; each by the Sunday before the first day that
    /// needs something of it. What was bought for the week already is told as done.
    /// </summary>
    public static async Task<IReadOnlyList<ReadyTask>> OfAsync(AppDb db, ReadyWeek week, DateOnly today, CancellationToken ct)
    {
        var list = await ShoppingList.LoadAsync(db, week, today, ct);
        var link = $"/week/shopping/{week.Week.Iso}";
        var tasks = new List<ReadyTask>();
        var missing = list.In(ShopState.ToBuy).ToList();
        var iso = week.Week.Iso;
        var bought = missing.Count > 0 ? 0 : await db.Purchases.Where(p => p.Week == iso).Select(p => p.GoodId).Distinct().CountAsync(ct);
        if (missing.Count + bought > 0)
            tasks.Add(new ReadyTask(ReadyKind.Gather, SundayBefore(missing, week), $"Buy {Things(missing.Count + bought)}", For(missing), link, missing.Count == 0));
        var kept = list.In(ShopState.LookOut).ToList();
        if (kept.Count > 0)
            tasks.Add(new ReadyTask(ReadyKind.Gather, SundayBefore(kept, week), $"Look out {Things(kept.Count)} at home", For(kept), link + "#look-out", false));
        return tasks;
    }

    private static DateOnly SundayBefore(IReadOnlyList<ShopLine> lines, ReadyWeek week)
    {
        var first = lines.Min(l => l.Line.FirstDay) ?? week.Week.Monday;
        return first.AddDays(first.DayOfWeek == DayOfWeek.Sunday ? -7 : -(int)first.DayOfWeek);
    }

    private static string Things(int count) => count == 1 ? "1 thing" : $"{count} things";

    private static string For(IReadOnlyList<ShopLine> lines)
    {
        var titles = lines.SelectMany(l => l.Activities).Select(p => p.Ask.For).Distinct().ToList();
        return titles.Count switch { 0 => "", 1 => titles[0], 2 => $"{titles[0]} and {titles[1]}", _ => $"{titles[0]} and {titles.Count - 1} more" };
    }
}
