using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>Where a line of a week's list stands.</summary>
public enum ShopState
{
    /// <summary>Something is missing.</summary>
    ToBuy,

    /// <summary>The shelf has enough.</summary>
    OnShelf,

    /// <summary>Kept from week to week, and nobody counted it yet: most houses have it.</summary>
    LookOut,

    /// <summary>Never bought.</summary>
    AlwaysThere,
}

/// <summary>A good of a week's list, with all that the family knows of it.</summary>
/// <param name="Buy">Nothing unless something is missing.</param>
/// <param name="Ticked">It lies in the basket.</param>
public sealed record ShopLine(
    Guid GoodId, string Name, NeedLine Line, string Place, OnShelf Shelf, Pack? Pack, ToBuy Buy, ShopState State, bool Ticked,
    IReadOnlyList<SupplyWarning> Warnings, IReadOnlyList<SupplyAside> Asides)
{
    /// <summary>For whom it is bought: the parts that belong to an activity.</summary>
    public IEnumerable<LinePart> Activities => Line.Parts.Where(p => p.Ask.ActivityId is not null);
}

/// <summary>A swap that changed something in the week.</summary>
public sealed record SwappedHere(Guid GoodId, string Good, Swap Swap, IReadOnlyList<string> Activities);

/// <summary>What a week needs, joined, less the shelf, with who is allergic to what is in it.</summary>
/// <param name="Lines">By place, those without one last; within it by name.</param>
/// <param name="Beyond">Warnings of ingredients behind which no supply stands.</param>
public sealed record ShoppingList(
    ReadyWeek Week, GoodBook Goods, IReadOnlyList<ShopLine> Lines, IReadOnlyList<SupplyWarning> Beyond, IReadOnlyList<SwappedHere> Swapped, IReadOnlyList<ListedByHand> ByHand)
{
    public IEnumerable<ShopLine> In(ShopState state) => Lines.Where(l => l.State == state);

    /// <summary>What the packs to be bought cost, as far as their prices are known.</summary>
    public long EstimateCents => In(ShopState.ToBuy).Sum(l => l.Buy.Cents ?? 0);

    /// <summary>How many lines have no price.</summary>
    public int WithoutPrice => In(ShopState.ToBuy).Count(l => l.Buy.Cents is null);

    /// <summary>Reads the week's list. What was done has used its supplies already and asks for none, nor does what was listed by hand for a week that is past.</summary>
    public static async Task<ShoppingList> LoadAsync(AppDb db, ReadyWeek week, DateOnly today, CancellationToken ct)
    {
        var iso = week.Week.Iso;
        var goods = await GoodBook.LoadAsync(db, ct);
        var shelf = await ShelfBook.LoadAsync(db, goods, today, week.Week.Monday, ct);
        var ticks = (await db.ShopTicks.Where(t => t.Week == iso).Select(t => t.GoodId).ToListAsync(ct)).ToHashSet();
        var byHand = await db.ListedByHand.AsNoTracking().Where(h => h.Week == iso).OrderBy(h => h.Id).ToListAsync(ct);
        var open = await OpenAsync(db, week, ct);

        var asks = open.SelectMany(o => goods.AsksOf(o.Of.Activity, o.Of.Date, o.Learners, o.IsLater))
            .Concat(week.Week.Days.Last < today ? [] : byHand.Select(h => (goods.KeyOf(goods.Find(h.GoodId)!.Key), h.AskOf(goods.Find(h.GoodId)!)))).ToList();
        var near = week.Learners.Select(l => l.ToCautioned(week.Week.Monday)).ToList();
        var reading = new LineReading(goods, shelf, ticks, near, open.ToDictionary(o => o.Of.Activity.Id, o => o.Of));
        var lines = NeedLines.Join(asks, goods.TermsOf).Select(reading.Read)
            .OrderBy(l => l.Place.Length == 0).ThenBy(l => l.Place, StringComparer.OrdinalIgnoreCase).ThenBy(l => l.Name, StringComparer.OrdinalIgnoreCase).ToList();
        return new ShoppingList(week, goods, lines, BeyondSupplies(asks, open, near, goods), SwappedIn(open, goods), byHand);
    }

    /// <summary>An activity of the week that is still to be done.</summary>
    /// <param name="Learners">How many of its learners have not done it in any week.</param>
    /// <param name="IsLater">Others have done it already.</param>
    private sealed record Open(ReadyActivity Of, int Learners, bool IsLater);

    private static async Task<List<Open>> OpenAsync(AppDb db, ReadyWeek week, CancellationToken ct)
    {
        var (first, last) = (week.Week.Days.First, week.Week.Days.Last);
        var sessions = await db.PlannedSessions.AsNoTracking().Where(s => s.ActivityId != null && s.Date >= first && s.Date <= last && s.State != SessionState.LetGo).ToListAsync(ct);
        var ids = sessions.Select(s => s.ActivityId!.Value).ToHashSet();
        var done = (await db.PlannedSessions.AsNoTracking().Where(s => s.State == SessionState.Done && s.ActivityId != null && ids.Contains(s.ActivityId.Value)).ToListAsync(ct))
            .ToLookup(s => s.ActivityId!.Value, s => s.Learners);
        var finished = sessions.GroupBy(s => s.ActivityId!.Value).Where(g => g.All(s => s.State == SessionState.Done)).Select(g => g.Key).ToHashSet();
        return [.. week.Activities.Where(a => a.Learners.Count > 0 && !finished.Contains(a.Activity.Id)).Select(a =>
            new Open(a, a.Learners.Count(l => !done[a.Activity.Id].Any(d => d.Contains(l.Id))), done.Contains(a.Activity.Id)))];
    }

    /// <summary>By the names of what is asked for after swaps, so that an ingredient never vanishes together with a supply that it only sounds like.</summary>
    private static List<SupplyWarning> BeyondSupplies(List<(string Key, SupplyAsk Ask)> asks, List<Open> open, List<CautionedLearner> near, GoodBook goods)
    {
        var names = asks.Where(a => a.Ask.ActivityId is not null && a.Ask.Amount.Quantity > 0).ToLookup(a => a.Ask.ActivityId!.Value, a => a.Ask.Supply.Name);
        return [.. open.Select(o => o.Of.Activity).SelectMany(a => SupplyWarnings.OfIngredients(near, [.. names[a.Id]], a.Title, goods.IngredientsOf(a)))];
    }

    private static List<SwappedHere> SwappedIn(List<Open> open, GoodBook goods) =>
        [.. open.Select(o => o.Of).SelectMany(a => a.Activity.Details.Supplies.Select(s => (a.Activity, Supply: s, Key: goods.KeyOf(s.Name))))
            .Select(x => (x.Activity, x.Supply, x.Key, Swap: goods.SwapOf(x.Key, x.Activity.Id))).Where(x => x.Swap is not null).GroupBy(x => x.Swap!.Id)
            .Select(g => new SwappedHere(goods.IdOf(g.First().Key), goods.Find(g.First().Key)?.Name ?? GoodName.Proper(g.First().Supply.Name), g.First().Swap!, [.. g.Select(x => x.Activity.Title).Distinct()]))];
}
