using CoopLessons.Core.Prepare;
using CoopLessons.Core.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class Supplies_of_two_activities_with_flour(TestServer server)
{
    // USDA SR Legacy, NDB 20081: a cup of white flour is 125 g. By hand: 2 × 125 g + 300 g = 550 g, which two packs of 500 g
    // hold and one does not; 2 × $1.89 = $3.78.
    [Fact]
    public async Task Stand_on_one_line_with_the_right_amount_and_a_warning_for_the_child()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.SoldAsync();
        var page = await family.ListAsync();
        var line = Assert.Single(page.QuerySelectorAll("#basket .shop > li"), l => l.TextContent.Contains("Flour", StringComparison.Ordinal));
        var text = line.TextContent.Squeezed();
        Assert.Contains("Flour 550 g", text, StringComparison.Ordinal);
        Assert.Contains("2 packs of 500 g", text, StringComparison.Ordinal);
        Assert.Contains("$3.78", text, StringComparison.Ordinal);
        Assert.Contains("Wheat for Dove", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Teal", text, StringComparison.Ordinal);
        Assert.Contains("Bake rolls, Thursday: 2 cups = 250 g", text, StringComparison.Ordinal);
        Assert.Contains("Salt dough, Friday: 300 g = 300 g", text, StringComparison.Ordinal);
        Assert.Contains("Together: 550 g", text, StringComparison.Ordinal);
        Assert.Contains("NDB 20081", text, StringComparison.Ordinal);
        Assert.Equal("Baking aisle", line.Closest("section")!.QuerySelector("h2")!.TextContent);
        Assert.Contains("Flour holds wheat, and Dove is allergic to it: in “Bake rolls” (“flour” is wheat).", page.Text(".note.look"), StringComparison.Ordinal);
        Assert.Contains("in “Salt dough”", page.Text(".note.look"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_taken_by_the_cup_that_the_family_weighed()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/shelf/{family.Flour}"), new() { ["Input.GramsPerCup"] = "140" }, within: "#Input_Name");
        // By hand: 2 × 140 g + 300 g = 580 g.
        Assert.Contains("Flour 580 g", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Say_nowhere_that_something_is_safe()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Rice flour", 2, "cup", Per.Family)], [new Supply("Rye flour", 100, "g", Per.Family)]);
        var page = await family.ListAsync();
        Assert.Empty(page.QuerySelectorAll(".care"));
        Assert.DoesNotContain("safe ", page.Text("main"), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("rye holds gluten, which by itself is none of the nine. Ask whoever treats Dove", page.Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Warn_of_marked_ingredients_behind_which_no_supply_stands()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Oven gloves", 1, "piece", Per.Family)], [], [new Ingredient("Glaze from the jar", [Core.Families.Allergen.Eggs])]);
        Assert.Contains("Glaze from the jar holds eggs, and Teal is allergic to it: in “Bake rolls”.", (await family.ListAsync()).Text(".note.look"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_counted_by_learner_and_pair_looked_out_or_always_there()
    {
        var family = await BakingFamily.MakeAsync(server);
        var page = await family.ListAsync();
        Assert.Contains("Card 4 sheets", page.Text("#basket"), StringComparison.Ordinal);
        Assert.Contains("Rolling pin 1", page.Text("#look-out"), StringComparison.Ordinal);
        Assert.DoesNotContain("Water", page.Text("#basket"), StringComparison.Ordinal);
        Assert.Contains("Water 150 ml", page.Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stay_apart_with_the_reason_where_nobody_knows_a_cup()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Moss", 2, "cup", Per.Family)], [new Supply("Moss", 100, "g", Per.Family)]);
        var page = await family.ListAsync();
        Assert.Equal(2, page.QuerySelectorAll("#basket .shop > li").Length);
        Assert.Contains("weigh a cup of it once to join the two lines", page.Text("#basket"), StringComparison.Ordinal);
    }

    // The first of the week's activities with something to buy is on Thursday 12 March; the Sunday before it is the 8th.
    [Fact]
    public async Task Tell_the_week_what_is_to_be_bought_and_looked_out()
    {
        var family = await BakingFamily.MakeAsync(server);
        Assert.Equal(
            [("Buy 2 things", false, BakingFamily.List), ("Look out 1 thing at home", false, BakingFamily.List + "#look-out")],
            (await family.TasksAsync()).Select(t => (t.What, t.Done, t.Link)));
        Assert.All(await family.TasksAsync(), t => Assert.Equal((ReadyKind.Gather, new DateOnly(2026, 3, 8)), (t.Kind, t.By)));
    }

    [Theory]
    [InlineData("2026-W60")]
    [InlineData("now")]
    public async Task Are_not_found_for_what_is_no_week(string week)
    {
        var family = await BakingFamily.MakeAsync(server);
        foreach (var path in new[] { $"/week/shopping/{week}", $"/week/shopping/{week}/bought", $"/week/shopping/{week}/swap/{family.Flour}" })
        {
            using var answer = await family.Guardian.OpenAsync(path);
            Assert.Equal(System.Net.HttpStatusCode.NotFound, answer.StatusCode);
        }
    }
}
