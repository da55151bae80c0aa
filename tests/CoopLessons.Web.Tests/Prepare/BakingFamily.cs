using AngleSharp.Html.Dom;
using CoopLessons.Core.Families;
using CoopLessons.Core.Prepare;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

/// <summary>
/// Dove, who is allergic to wheat, and Teal, who is to milk and eggs; on Thursday rolls of 2 cups of flour, on Friday salt
/// dough of 300 g of it.
/// </summary>
public sealed class BakingFamily
{
    public const string Week = "2026-W11";
    public const string List = "/week/shopping/" + Week;

    private BakingFamily(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public Guid Dove { get; private set; }
    public Guid Teal { get; private set; }
    public Guid Unit { get; } = Guid.CreateVersion7();
    public Guid Rolls { get; } = Guid.CreateVersion7();
    public Guid Dough { get; } = Guid.CreateVersion7();
    public Guid RollsSession { get; } = Guid.CreateVersion7();
    public Guid Flour => IdOf("Flour");

    public Guid IdOf(string name) => Good.IdFor(Family.Id, GoodName.Key(name));

    public static Task<BakingFamily> MakeAsync(TestServer server) => MakeAsync(server,
        [new Supply("Flour", 2, "cup", Per.Family), new Supply("Rolling pin", 1, "piece", Per.Pair), new Supply("Water", 150, "ml", Per.Family)],
        [new Supply("flour", 300, "g", Per.Family), new Supply("Card, stiff", 2, "sheet", Per.Learner)]);

    public static async Task<BakingFamily> MakeAsync(TestServer server, Supply[] rolls, Supply[] dough, Ingredient[]? ingredients = null)
    {
        var made = new BakingFamily(await server.FamilyAsync());
        made.Dove = await made.Family.LearnerAsync("Dove", new DateOnly(2017, 5, 1), [Allergen.Wheat]);
        made.Teal = await made.Family.LearnerAsync("Teal", new DateOnly(2018, 5, 1), [Allergen.Milk, Allergen.Eggs]);
        var details = UnitSamples.Counting((await made.Family.SubjectAsync("science"), 1));
        await made.Family.WithDbAsync(async db =>
        {
            var unit = new Unit(made.Unit, "From Grain to Loaf", "", 2);
            unit.Take(new DateOnly(2026, 3, 9));
            unit.Add(new Activity(made.Rolls, "rolls", Facts(1, "Bake rolls", ActivityKind.Cooking), details with { Supplies = rolls, Ingredients = ingredients ?? [] }));
            unit.Add(new Activity(made.Dough, "dough", Facts(2, "Salt dough", ActivityKind.Making), details with { Supplies = dough }));
            db.Units.Add(unit);
            db.PlannedSessions.Add(new PlannedSession(made.RollsSession, made.Rolls, TestServer.Today, 540, 0, [made.Dove, made.Teal]));
            db.PlannedSessions.Add(new PlannedSession(Guid.CreateVersion7(), made.Dough, TestServer.Today.AddDays(1), 540, 0, [made.Dove, made.Teal]));
            await db.SaveChangesAsync();
        });
        return made;
    }

    public Task<IHtmlDocument> ListAsync() => Guardian.GetAsync(List);

    /// <summary>Writes down how flour is sold: 500 g for $1.89, in the baking aisle.</summary>
    public Task SoldAsync() => WithGoodAsync("Flour", g => g.Describe(new GoodFacts("Flour", new Pack(500, Measures.Gram, 189), "Baking aisle", null, null, false, null)));

    /// <summary>So many grams of flour, counted so many days ago.</summary>
    public Task CountedAsync(decimal grams, int daysAgo) => WithGoodAsync("Flour", _ => { }, new ShelfCount(
        Guid.CreateVersion7(), Flour, TestServer.Today.AddDays(-daysAgo), TestServer.Start.UtcDateTime.AddDays(-daysAgo), new Amount(grams, Measures.Gram)));

    public async Task<IReadOnlyList<ReadyTask>> TasksAsync() => await Family.FromDbAsync(async db =>
        await SupplyTasks.OfAsync(db, await ReadyWeek.LoadAsync(db, Core.Calendar.Week.Of(TestServer.Today), default), TestServer.Today, default));

    public Task<List<Guid>> TicksAsync() => Family.FromDbAsync(db => db.ShopTicks.Select(t => t.GoodId).ToListAsync());

    private Task WithGoodAsync(string name, Action<Good> say, object? more = null) => Family.WithDbAsync(async db =>
    {
        var id = IdOf(name);
        if (await db.Goods.SingleOrDefaultAsync(g => g.Id == id) is not { } good)
            db.Goods.Add(good = new Good(Family.Id, name));
        say(good);
        if (more is not null)
            db.Add(more);
        await db.SaveChangesAsync();
    });

    private static ActivityFacts Facts(int order, string title, ActivityKind kind) => new(1, order, title, kind, "Do it.", AdultNeed.Beside, 30, 0, "");
}
