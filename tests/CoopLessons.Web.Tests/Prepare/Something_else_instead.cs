using System.Net;
using CoopLessons.Core.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class Something_else_instead(TestServer server)
{
    private static string Swap(BakingFamily family) => $"{BakingFamily.List}/swap/{family.Flour}";

    private static async Task<HttpResponseMessage> UseAsync(BakingFamily family, Dictionary<string, string?> fill) =>
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Swap(family)), fill, within: "#Input_Instead");

    // By hand: half of 2 cups is 1 cup.
    [Fact]
    public async Task Is_used_in_one_activity_and_warns_of_what_is_in_it()
    {
        var family = await BakingFamily.MakeAsync(server);
        using var answer = await UseAsync(family, new() { ["Input.Instead"] = "Milk powder", ["Input.ActivityId"] = family.Rolls.ToString(), ["Input.Factor"] = "0.5" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var text = (await family.ListAsync()).Text("#basket");
        Assert.Contains("Milk powder 1 cup Milk for Teal", text, StringComparison.Ordinal);
        Assert.Contains("instead of Flour", text, StringComparison.Ordinal);
        Assert.Contains("Flour 300 g Wheat for Dove", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_used_in_every_activity_in_an_amount_of_its_own_and_said_anew()
    {
        var family = await BakingFamily.MakeAsync(server);
        foreach (var grams in new[] { "90", "100" })
        {
            using var answer = await UseAsync(family, new() { ["Input.Instead"] = "Rice flour", ["Input.ActivityId"] = "", ["Input.Quantity"] = grams, ["Input.Measure"] = "g" });
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        Assert.Equal(1, await family.Family.FromDbAsync(db => db.Swaps.CountAsync()));
        var page = await family.ListAsync();
        Assert.Contains("Rice flour 200 g", page.Text("#basket"), StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll(".care"));
        Assert.Contains("Flour: Rice flour in “Bake rolls” and “Salt dough”", page.Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task May_be_nothing_and_is_taken_back()
    {
        var family = await BakingFamily.MakeAsync(server);
        using var left = await UseAsync(family, new() { ["Input.LeaveOut"] = "true", ["Input.ActivityId"] = "" });
        Assert.DoesNotContain("Flour", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
        using var back = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Swap(family)), within: "input[name=swapId]");
        Assert.Contains("Flour 550 g", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_the_marks_of_the_ingredient_with_it()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Grain from the jar", 2, "cup", Per.Family)], [], [new Ingredient("Grain from the jar", [Core.Families.Allergen.Wheat])]);
        Assert.Contains("Wheat for Dove", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
        var page = await family.Guardian.GetAsync($"{BakingFamily.List}/swap/{family.IdOf("Grain from the jar")}");
        using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Instead"] = "Rice", ["Input.ActivityId"] = "" }, within: "#Input_Instead");
        Assert.DoesNotContain("Dove", (await family.ListAsync()).Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_no_other_ingredient_with_it_that_only_sounds_like_it()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Butter", 100, "g", Per.Family)], [],
            [new Ingredient("Butter", [Core.Families.Allergen.Milk]), new Ingredient("Peanut butter", [Core.Families.Allergen.Wheat])]);
        var page = await family.Guardian.GetAsync($"{BakingFamily.List}/swap/{family.IdOf("Butter")}");
        using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Instead"] = "Margarine", ["Input.ActivityId"] = "" }, within: "#Input_Instead");
        var care = (await family.ListAsync()).Text(".note.look");
        Assert.Contains("Peanut butter holds wheat, and Dove is allergic to it: in “Bake rolls”", care, StringComparison.Ordinal);
        Assert.DoesNotContain("Teal", care, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_one_swap_where_two_forms_say_it_at_once()
    {
        var family = await BakingFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync(Swap(family));
        var answers = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ =>
            family.Guardian.SubmitAsync(page, new() { ["Input.Instead"] = "Rice flour", ["Input.ActivityId"] = "" }, within: "#Input_Instead")));
        Assert.Contains(answers, a => a.StatusCode == HttpStatusCode.Redirect);
        Assert.Equal(1, await family.Family.FromDbAsync(db => db.Swaps.CountAsync()));
    }

    [Theory]
    [InlineData("Input.Instead", "")]
    [InlineData("Input.Instead", "flour")]
    [InlineData("Input.Factor", "0")]
    [InlineData("Input.Factor", "half")]
    [InlineData("Input.Quantity", "1/2")]
    public async Task Is_not_saved_while_something_is_amiss(string field, string value)
    {
        var family = await BakingFamily.MakeAsync(server);
        var fill = new Dictionary<string, string?> { ["Input.Instead"] = "Rice flour", ["Input.ActivityId"] = "" };
        fill[field] = value;
        using var answer = await UseAsync(family, fill);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).Fault(field));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Swaps.CountAsync()));
    }

    [Fact]
    public async Task Is_for_activities_of_ones_own_alone()
    {
        var (family, other) = (await BakingFamily.MakeAsync(server), await BakingFamily.MakeAsync(server));
        using var answer = await UseAsync(family, new() { ["Input.Instead"] = "Rice flour", ["Input.ActivityId"] = other.Rolls.ToString() });
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
