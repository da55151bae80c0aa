using System.Text.Json;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data.Prepare.Supplies;

namespace CoopLessons.Data.Scenario;

/// <summary>What the families of the co-op have at home and how they buy, as <c>seed-scenario/shelf.json</c> tells it.</summary>
internal sealed record CoopShelf(IReadOnlyDictionary<string, CoopPantry> Families)
{
    public static CoopShelf Read() =>
        JsonSerializer.Deserialize<CoopShelf>(ScenarioFiles.Bytes("scenario/shelf.json"), Coop.Json) ?? throw new InvalidDataException("shelf.json holds nothing.");
}

internal sealed record CoopPantry(
    IReadOnlyList<CoopGood> Goods, IReadOnlyList<CoopSwap> Swaps, IReadOnlyList<CoopCount> Counts, IReadOnlyList<CoopPurchase> Purchases);

/// <param name="Price">Of a pack, in dollars.</param>
internal sealed record CoopGood(
    string Name, string? Place = null, decimal? Pack = null, string? Measure = null, decimal? Price = null, decimal? GramsPerCup = null,
    bool? UsedUp = null, bool AlwaysThere = false, string? SameAs = null);

/// <summary>In every activity.</summary>
internal sealed record CoopSwap(string Good, string Instead, decimal Factor = 1);

/// <param name="WeeksAgo">On the Saturday before the week that lies so many weeks back.</param>
internal sealed record CoopCount(string Good, decimal Quantity, string Measure, int WeeksAgo);

/// <param name="Unit">File name of a unit that the family runs.</param>
/// <param name="Activities">Codes of the activities for which it was bought.</param>
internal sealed record CoopPurchase(
    string Good, decimal Quantity, string Measure, decimal Price, int WeeksAgo, string Unit, IReadOnlyList<string> Activities);

/// <summary>Writes what a family of the scenario has at home. Ids come from no stream, so that the log's stay what they are.</summary>
internal sealed class ShelfOfFamily(AppDb db, Household house, Guid familyId, CoopPantry told, DateOnly today)
{
    private const int Morning = 9 * 60;
    private readonly Dictionary<string, Good> _goods = [];

    /// <summary>Adds everything to the unit of work. Nothing is saved here.</summary>
    public void Add()
    {
        foreach (var good in told.Goods)
            Describe(good);
        foreach (var swap in told.Swaps)
            db.Swaps.Add(new Swap(Guid.CreateVersion7(), Meet(swap.Good).Id, null, new SwapFacts(swap.Instead, swap.Factor, null)));
        foreach (var count in told.Counts)
            db.ShelfCounts.Add(new ShelfCount(Guid.CreateVersion7(), Meet(count.Good).Id, Saturday(count.WeeksAgo), At(count.WeeksAgo), AmountOf(count.Quantity, count.Measure)));
        foreach (var purchase in told.Purchases)
            Buy(purchase);
    }

    private void Describe(CoopGood told)
    {
        var pack = told.Pack is { } size ? new Pack(size, MeasureOf(told.Measure), told.Price is { } price ? (int)(price * 100) : null) : null;
        var same = told.SameAs is { } other ? Meet(other).Id : (Guid?)null;
        Meet(told.Name).Describe(new GoodFacts(told.Name, pack, told.Place ?? "", told.GramsPerCup, told.UsedUp, told.AlwaysThere, same));
    }

    private void Buy(CoopPurchase bought)
    {
        if (house.Runs.Select(r => r.Unit).FirstOrDefault(u => u.Title == ScenarioFiles.Units[bought.Unit].Title) is not { } unit)
            return;
        var key = GoodName.Key(bought.Good);
        var needs = bought.Activities.Select(code => unit.Activities.Single(a => a.Code == code))
            .Select(a => new PurchaseNeed(a.Id, a.Title, unit.Id, unit.Title, Math.Max(0.001m, a.Details.Supplies.Where(s => Resolved(s.Name) == key)
                .Sum(s => new Amount(s.Quantity, MeasureOf(s.Unit)).In(Measures.Plain(MeasureOf(bought.Measure).Dimension), CupWeights.Of(key)?.Grams) ?? 0))));
        db.Purchases.Add(new Purchase(
            Guid.CreateVersion7(), Meet(bought.Good).Id, AmountOf(bought.Quantity, bought.Measure), (int)(bought.Price * 100), Saturday(bought.WeeksAgo), At(bought.WeeksAgo),
            Week.Of(Saturday(bought.WeeksAgo)).Next.Iso, [.. needs]));
    }

    private string Resolved(string name) => GoodName.Key(told.Goods.FirstOrDefault(g => GoodName.Key(g.Name) == GoodName.Key(name))?.SameAs ?? name);

    private Good Meet(string name)
    {
        var key = GoodName.Key(name);
        if (!_goods.TryGetValue(key, out var good))
        {
            _goods[key] = good = new Good(familyId, name);
            db.Goods.Add(good);
        }

        return good;
    }

    private DateOnly Saturday(int weeksAgo) => Week.Of(today).Monday.AddDays(5 - 7 * weeksAgo - 7);

    private DateTime At(int weeksAgo) => house.Utc(Saturday(weeksAgo), Morning);

    private static Amount AmountOf(decimal quantity, string measure) => new(quantity, MeasureOf(measure));

    private static Measure MeasureOf(string? word) => Measures.Find(word) ?? throw new InvalidDataException($"shelf.json: {word} is no measure.");
}
