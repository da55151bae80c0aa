using System.Net;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class From_the_shop_to_the_shelf(TestServer server)
{
    private const string Bought = BakingFamily.List + "/bought";

    private async Task<BakingFamily> TickedAsync()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.SoldAsync();
        using var ticked = await family.Guardian.SubmitAsync(await family.ListAsync(), new() { ["ticks"] = family.Flour.ToString() }, within: "#basket");
        return family;
    }

    // By hand: 1,000 g for $4.00, needed as 250 : 300, is 1.8181… and 2.1818… dollars; by the largest remainder 1.82 and 2.18.
    [Fact]
    public async Task What_was_bought_is_there_and_its_price_is_divided_by_need()
    {
        var family = await TickedAsync();
        var page = await family.Guardian.GetAsync(Bought);
        Assert.Equal("1000", page.QuerySelector("#Input_Rows_0__Quantity")!.GetAttribute("value"));
        Assert.Equal("3.78", page.QuerySelector("#Input_Rows_0__Price")!.GetAttribute("value"));
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Rows[0].Price"] = "4.00" });
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var purchase = await family.Family.FromDbAsync(db => db.Purchases.SingleAsync());
        Assert.Equal([("Bake rolls", 182), ("Salt dough", 218)], purchase.Shares.Select(s => (s.Activity, s.Cents)));
        Assert.Empty(await family.TicksAsync());
        var list = await family.ListAsync();
        Assert.DoesNotContain("Flour", list.Text("#basket"), StringComparison.Ordinal);
        Assert.Contains("needs 550 g of 1 kg", list.Text("main"), StringComparison.Ordinal);
        Assert.Contains("1 kg", (await family.Guardian.GetAsync("/week/shelf")).Text(".rows"), StringComparison.Ordinal);

        var costs = (await family.Guardian.GetAsync("/week/costs")).QuerySelectorAll("tbody tr, tfoot tr").Select(r => string.Join(' ', r.Children.Select(c => c.TextContent.Trim())));
        Assert.Equal(["From Grain to Loaf $4.00", "Salt dough $2.18", "Bake rolls $1.82", "Together $4.00"], costs);
    }

    [Fact]
    public async Task What_was_not_bought_after_all_stays_on_the_list_without_its_tick()
    {
        var family = await TickedAsync();
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Bought), new() { ["Input.Rows[0].Leave"] = "true" });
        Assert.Empty(await family.TicksAsync());
        Assert.Contains("Flour 550 g", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Rows[0].Quantity", "")]
    [InlineData("Input.Rows[0].Quantity", "-1")]
    [InlineData("Input.Rows[0].Quantity", "1,000")]
    [InlineData("Input.Rows[0].Measure", "bag")]
    [InlineData("Input.Rows[0].Price", "4.005")]
    [InlineData("Input.Rows[0].Price", "dear")]
    [InlineData("Input.Day", "2026-03-13")]
    [InlineData("Input.Day", "")]
    public async Task Nothing_is_put_there_while_something_is_amiss(string field, string value)
    {
        var family = await TickedAsync();
        var shown = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Bought), new() { ["Input.Rows[0].Price"] = "3.99", [field] = value }).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.NotEmpty(shown.Fault(field));
        Assert.Equal(field.EndsWith("Price", StringComparison.Ordinal) ? value : "3.99", shown.QuerySelector("#Input_Rows_0__Price")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Purchases.CountAsync()));
    }

    [Fact]
    public async Task Nothing_of_another_family_is_put_there()
    {
        var (family, other) = (await TickedAsync(), await TickedAsync());
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Bought), new() { ["Input.Rows[0].GoodId"] = other.Flour.ToString() });
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Purchases.CountAsync()));
    }

    // By hand: 1,000 g counted on Wednesday, less the rolls' 2 cups of 125 g on Thursday, is 750 g; Friday's dough needs 300 g.
    [Fact]
    public async Task What_an_activity_used_is_gone_once_it_is_done_and_back_when_it_is_not()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.CountedAsync(1000, 1);
        Assert.Contains("needs 550 g of 1 kg", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
        using var done = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/today"), within: PlannedDay.Form(family.RollsSession, "Done"));
        Assert.Contains("needs 300 g of 750 g", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
        Assert.Contains("used: Bake rolls Thursday 12 March − 2 cups", (await family.Guardian.GetAsync($"/week/shelf/{family.Flour}")).Text(".rows"), StringComparison.Ordinal);
        using var undone = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/today"), within: PlannedDay.Form(family.RollsSession, "Undo"));
        Assert.Contains("needs 550 g of 1 kg", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
    }

    // By hand: 1,000 g less this week's 550 g leaves 450 g for the week after.
    [Fact]
    public async Task What_this_week_will_use_is_promised_and_not_offered_to_the_next()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.CountedAsync(1000, 1);
        using var listed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/shopping/2026-W12"), new() { ["Else.Name"] = "Flour", ["Else.Quantity"] = "400", ["Else.Measure"] = "g" }, within: "#Else_Name");
        Assert.Contains("needs 400 g of 450 g", (await family.Guardian.GetAsync("/week/shopping/2026-W12")).Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_put_there_from_one_form_is_not_put_there_from_another_again()
    {
        var family = await TickedAsync();
        var (one, other) = (await family.Guardian.GetAsync(Bought), await family.Guardian.GetAsync(Bought));
        using var first = await family.Guardian.SubmitAsync(one);
        Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
        var shown = await family.Guardian.SubmitAsync(other).AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Contains("lies in the basket no longer", shown.Fault("Input.Rows[0].Quantity"), StringComparison.Ordinal);
        Assert.Equal(1, await family.Family.FromDbAsync(db => db.Purchases.CountAsync()));
    }

    // By hand: $10.00 over 250 g, 300 g and 450 g for no activity are 2.50, 3.00 and 4.50.
    [Fact]
    public async Task What_was_listed_by_hand_is_charged_to_no_activity()
    {
        var family = await TickedAsync();
        using var listed = await family.Guardian.SubmitAsync(await family.ListAsync(), new() { ["Else.Name"] = "Flour", ["Else.Quantity"] = "450", ["Else.Measure"] = "g" }, within: "#Else_Name");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Bought), new() { ["Input.Rows[0].Price"] = "10.00" });
        var costs = (await family.Guardian.GetAsync("/week/costs")).QuerySelectorAll("tbody tr, tfoot tr").Select(r => string.Join(' ', r.Children.Select(c => c.TextContent.Trim())));
        Assert.Equal(["From Grain to Loaf $5.50", "Salt dough $3.00", "Bake rolls $2.50", "For no activity in particular $4.50", "Together $10.00"], costs);
    }

    [Fact]
    public async Task What_is_bought_by_the_piece_and_by_weight_is_charged_to_whom_it_is_for()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Butter", 2, "piece", Per.Family), new Supply("Butter dish", 1, "piece", Per.Family)], [new Supply("Butter", 100, "g", Per.Family)], [new Ingredient("Butter", [])]);
        using var ticked = await family.Guardian.SubmitAsync(await family.ListAsync(), new() { ["ticks"] = family.IdOf("Butter").ToString() }, within: "#basket");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Bought), new() { ["Input.Rows[0].Price"] = "1.00", ["Input.Rows[1].Price"] = "2.00" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var purchases = await family.Family.FromDbAsync(db => db.Purchases.ToListAsync());
        Assert.Equal([("Bake rolls", "piece"), ("Salt dough", "g")], purchases.Select(p => (Assert.Single(p.Shares).Activity, p.Measure)).Order());
    }

    // Bought for the week of 2 March and used in it: on 12 March the next litre is missing.
    [Fact]
    public async Task What_was_listed_by_hand_for_a_week_that_is_past_is_used()
    {
        var family = await BakingFamily.MakeAsync(server);
        var litre = new Amount(1, Measures.Litre);
        await family.Family.WithDbAsync(async db =>
        {
            var milk = new Good(family.Family.Id, "Milk");
            db.Goods.Add(milk);
            db.Purchases.Add(new Purchase(Guid.CreateVersion7(), milk.Id, litre, 119, new DateOnly(2026, 3, 3), TestServer.Start.UtcDateTime.AddDays(-9), "2026-W10", []));
            db.ListedByHand.Add(new ListedByHand(Guid.CreateVersion7(), "2026-W10", milk.Id, litre));
            db.ListedByHand.Add(new ListedByHand(Guid.CreateVersion7(), BakingFamily.Week, milk.Id, litre));
            await db.SaveChangesAsync();
        });
        Assert.Contains("Milk 1 l", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
        Assert.DoesNotContain("Milk", (await family.Guardian.GetAsync("/week/shopping/2026-W10")).Text("#basket"), StringComparison.Ordinal);
    }

    // By hand: 1,000 g less the 250 g of Thursday's rolls is 750 g; Friday's sitting of the rolls needs no more of them.
    [Fact]
    public async Task What_the_first_sitting_of_an_activity_used_is_not_needed_again_for_the_second()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.CountedAsync(1000, 1);
        await family.Family.WithDbAsync(async db =>
        {
            db.PlannedSessions.Add(new PlannedSession(Guid.CreateVersion7(), family.Rolls, TestServer.Today.AddDays(1), 600, 1, [family.Teal]));
            await db.SaveChangesAsync();
        });
        Assert.Contains("needs 550 g of 1 kg", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
        using var done = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/today"), within: PlannedDay.Form(family.RollsSession, "Done"));
        Assert.Contains("needs 300 g of 750 g", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_count_keeps_the_measure_of_the_form_it_was_typed_in()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.CountedAsync(1000, 1);
        var old = await family.Guardian.GetAsync("/week/shelf");
        using var kilogram = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/shelf/{family.Flour}"), new() { ["Count.Quantity"] = "2", ["Count.Measure"] = "kg" }, within: "#Count_Quantity");
        using var counted = await family.Guardian.SubmitAsync(old, new() { ["Input.Counts[0].Quantity"] = "200" }, within: "#count-0");
        Assert.Equal([(2m, "kg"), (200m, "g"), (1000m, "g")], (await family.Family.FromDbAsync(db => db.ShelfCounts.ToListAsync())).Select(c => (c.Quantity, c.Measure)).Order());
    }

    [Fact]
    public async Task A_count_on_the_shelf_begins_anew()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.CountedAsync(1000, 1);
        using var counted = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/shelf"), new() { ["Input.Counts[0].Quantity"] = "200" }, within: "#count-0");
        Assert.Equal(HttpStatusCode.Redirect, counted.StatusCode);
        Assert.Contains("Flour 350 g", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
        var shown = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/shelf"), new() { ["Input.Counts[0].Quantity"] = "a few" }, within: "#count-0").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.NotEmpty(shown.Fault("Input.Counts[0].Quantity"));
        Assert.Equal("a few", shown.QuerySelector("#count-0")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Costs_without_a_purchase_say_so_and_another_years_are_not_found()
    {
        var (family, other) = (await BakingFamily.MakeAsync(server), await BakingFamily.MakeAsync(server));
        Assert.Contains("Nothing was bought", (await family.Guardian.GetAsync("/week/costs")).Text("main"), StringComparison.Ordinal);
        var theirs = await other.Family.FromDbAsync(db => db.SchoolYears.Select(y => y.Id).FirstAsync());
        using var answer = await family.Guardian.OpenAsync($"/week/costs?year={theirs}");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
