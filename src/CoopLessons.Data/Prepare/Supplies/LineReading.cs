using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>Adds to a joined line what shelf, packs and children say of it.</summary>
internal sealed class LineReading(GoodBook goods, ShelfBook shelf, HashSet<Guid> ticks, IReadOnlyList<CautionedLearner> near, Dictionary<Guid, ReadyActivity> activities)
{
    public ShopLine Read(NeedLine line)
    {
        var good = goods.Find(line.Key);
        var name = good?.Name ?? line.Name;
        var there = shelf.Of(line.Key, line.Measure);
        var state = goods.IsAlwaysThere(line.Key) ? ShopState.AlwaysThere
            : !line.UsedUp && !shelf.Knows(line.Key) ? ShopState.LookOut : ShopState.ToBuy;
        var buy = state == ShopState.ToBuy ? Buying.Of(line.Quantity, there.Quantity, line.Measure, good?.Pack, line.GramsPerCup) : ToBuy.Nothing;
        if (state == ShopState.ToBuy && buy.IsNothing)
            state = ShopState.OnShelf;
        var id = goods.IdOf(line.Key);
        return new ShopLine(
            id, name, line, good?.Place ?? "", there, good?.Pack, buy, state, state == ShopState.ToBuy && ticks.Contains(id),
            SupplyWarnings.Together(line.Parts.SelectMany(p => WarningsOf(p.Ask, name).Select(w => (p.Ask.ActivityId, w)))), SupplyWarnings.Asides(near, name));
    }

    private IReadOnlyList<SupplyWarning> WarningsOf(SupplyAsk ask, string name)
    {
        // The note tells what else may be used; only the names say what it is.
        IReadOnlyList<string> names = string.Equals(name, ask.Supply.Name, StringComparison.OrdinalIgnoreCase) ? [name] : [ask.Supply.Name, name];
        var ingredients = ask.ActivityId is { } id ? goods.IngredientsFor(ask, activities[id].Activity.Details.Ingredients) : [];
        return SupplyWarnings.OfGood(near, names, ask.For, ingredients);
    }
}
