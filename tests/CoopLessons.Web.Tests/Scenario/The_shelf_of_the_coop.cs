using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Supplies;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class The_shelf_of_the_coop : IAsyncLifetime
{
    private static readonly DateOnly Monday = new(2026, 11, 9);
    private MillraceDatabase _coop = null!;

    public async Task InitializeAsync() => _coop = await MillraceDatabase.LoadedOn(Monday);

    public async Task DisposeAsync() => await _coop.DisposeAsync();

    [Fact]
    public async Task Gives_the_Alders_a_list_by_place_with_packs_prices_and_things_that_are_there()
    {
        var list = await ListAsync("Alder");
        Assert.True(list.In(ShopState.ToBuy).Count(l => l.Buy is { Packs: > 0, Cents: > 0 } && l.Place.Length > 0) >= 4);
        Assert.NotEmpty(list.In(ShopState.OnShelf));
        Assert.Equal(list.In(ShopState.ToBuy).Sum(l => l.Buy.Cents ?? 0), list.EstimateCents);
        Assert.All(list.Lines, l => Assert.Empty(l.Line.Apart));
        // “Shop white flour” by the spoon and the dough's by weight stand on the one line of plain flour.
        Assert.Equal(2, Assert.Single(list.Lines, l => l.Name == "Plain wheat flour").Line.Parts.Count);
    }

    // By hand from shelf.json: 4.79 + 1.49 + 4.00 + 2.49 + 5.49 dollars.
    [Fact]
    public async Task Gives_the_Alders_costs_that_add_up()
    {
        var alder = _coop.Loaded["Alder"];
        var costs = await _coop.In(alder, db => SupplyCosts.LoadAsync(db, MillraceDatabase.ThisYear, default));
        Assert.Equal(1826, costs.TotalCents);
        Assert.Equal(costs.TotalCents, costs.Units.Sum(u => u.Activities.Sum(a => a.Cents)));
    }

    [Fact]
    public async Task Warns_the_Dogwoods_of_butter()
    {
        var list = await ListAsync("Dogwood");
        Assert.Contains(list.Lines.SelectMany(l => l.Warnings), w => w.Met.Learner.Name == "Teal" && w.Met.Ingredient == "Butter");
    }

    private Task<ShoppingList> ListAsync(string family) => _coop.In(_coop.Loaded[family], async db =>
        await ShoppingList.LoadAsync(db, await ReadyWeek.LoadAsync(db, IsoWeek.Of(Monday), default), Monday, default));
}
