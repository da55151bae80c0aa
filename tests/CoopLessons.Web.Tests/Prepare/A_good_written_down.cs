using System.Net;
using CoopLessons.Core.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class A_good_written_down(TestServer server)
{
    private static async Task<HttpResponseMessage> SayAsync(BakingFamily family, string name, Dictionary<string, string?> fill) =>
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/shelf/{family.IdOf(name)}"), fill, within: "#Input_Name");

    // NIST: 5 lb are 2,267.96 g, more than the 550 g needed.
    [Fact]
    public async Task Is_bought_by_its_packs_at_its_place()
    {
        var family = await BakingFamily.MakeAsync(server);
        using var answer = await SayAsync(family, "Flour", new() { ["Input.PackSize"] = "5", ["Input.PackMeasure"] = "lb", ["Input.PackPrice"] = "$3.29", ["Input.Place"] = "Back shelf" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await family.ListAsync();
        Assert.Contains("1 pack of 5 lb $3.29", page.Text("#basket"), StringComparison.Ordinal);
        Assert.Equal(["Back shelf", "Anywhere"], page.QuerySelectorAll("#basket h2").Select(h => h.TextContent));
        Assert.Contains("about $3.29", page.Text(".sub"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Joins_another_name_and_refuses_itself()
    {
        var family = await BakingFamily.MakeAsync(server, [new Supply("Shop flour", 100, "g", Per.Family)], [new Supply("Mill flour", 50, "g", Per.Family)]);
        using var same = await SayAsync(family, "Shop flour", new() { ["Input.SameAs"] = "mill flour" });
        Assert.Equal(HttpStatusCode.Redirect, same.StatusCode);
        Assert.Contains("Mill flour 150 g", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
        foreach (var (name, other) in new[] { ("Mill flour", "Shop flour"), ("Mill flour", "Mill flour"), ("Mill flour", "Sand") })
        {
            using var refused = await SayAsync(family, name, new() { ["Input.SameAs"] = other });
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        }
    }

    [Fact]
    public async Task Is_kept_or_used_up_as_the_family_says()
    {
        var family = await BakingFamily.MakeAsync(server);
        using var used = await SayAsync(family, "Rolling pin", new() { ["Input.After"] = "used" });
        using var kept = await SayAsync(family, "Card", new() { ["Input.AlwaysThere"] = "true" });
        var page = await family.ListAsync();
        Assert.Contains("Rolling pin 1", page.Text("#basket"), StringComparison.Ordinal);
        Assert.DoesNotContain("Card", page.Text("#basket"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Name", "")]
    [InlineData("Input.PackSize", "a bag")]
    [InlineData("Input.PackMeasure", "bag")]
    [InlineData("Input.PackPrice", "1,5")]
    [InlineData("Input.PackPrice", "9999999999999999999999999999")]
    [InlineData("Input.GramsPerCup", "0")]
    [InlineData("Input.After", "eaten")]
    [InlineData("Input.SameAs", "Sand")]
    public async Task Is_not_saved_while_something_is_amiss(string field, string value)
    {
        var family = await BakingFamily.MakeAsync(server);
        var fill = new Dictionary<string, string?> { ["Input.Place"] = "Back shelf", ["Input.PackSize"] = "5" };
        fill[field] = value;
        using var answer = await SayAsync(family, "Flour", fill);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.Fault(field));
        Assert.Equal("Back shelf", shown.QuerySelector("#Input_Place")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Goods.CountAsync()));
    }

    [Fact]
    public async Task Is_not_saved_over_what_somebody_else_wrote_meanwhile()
    {
        var family = await BakingFamily.MakeAsync(server);
        await family.SoldAsync();
        var old = await family.Guardian.GetAsync($"/week/shelf/{family.Flour}");
        using var first = await SayAsync(family, "Flour", new() { ["Input.Place"] = "Back shelf" });
        var shown = await family.Guardian.SubmitAsync(old, new() { ["Input.Place"] = "Front shelf" }, within: "#Input_Name").AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Equal("Front shelf", shown.QuerySelector("#Input_Place")!.GetAttribute("value"));
        Assert.Equal("Back shelf", await family.Family.FromDbAsync(db => db.Goods.Select(g => g.Place).SingleAsync()));
    }

    [Fact]
    public async Task Is_not_saved_over_what_somebody_else_wrote_first()
    {
        var family = await BakingFamily.MakeAsync(server);
        var old = await family.Guardian.GetAsync($"/week/shelf/{family.Flour}");
        using var first = await SayAsync(family, "Flour", new() { ["Input.Place"] = "Back shelf" });
        var shown = await family.Guardian.SubmitAsync(old, new() { ["Input.Place"] = "Front shelf" }, within: "#Input_Name").AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Equal("Front shelf", shown.QuerySelector("#Input_Place")!.GetAttribute("value"));
        Assert.Equal("Back shelf", await family.Family.FromDbAsync(db => db.Goods.Select(g => g.Place).SingleAsync()));
        using var again = await family.Guardian.SubmitAsync(shown, within: "#Input_Name");
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
    }

    [Fact]
    public async Task Is_counted_on_its_page()
    {
        var family = await BakingFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync($"/week/shelf/{family.Flour}");
        using var counted = await family.Guardian.SubmitAsync(page, new() { ["Count.Quantity"] = "1", ["Count.Measure"] = "kg" }, within: "#Count_Quantity");
        Assert.Equal(HttpStatusCode.Redirect, counted.StatusCode);
        Assert.Contains("1 kg on the shelf", (await family.Guardian.GetAsync($"/week/shelf/{family.Flour}")).Text(".sub"), StringComparison.Ordinal);
        var shown = await family.Guardian.SubmitAsync(page, new() { ["Count.Quantity"] = "1.2.3" }, within: "#Count_Quantity").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.NotEmpty(shown.Fault("Count.Quantity"));
    }

    [Fact]
    public async Task Is_added_by_its_name_and_not_found_by_an_id_that_means_nothing()
    {
        var family = await BakingFamily.MakeAsync(server);
        using var added = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/shelf"), new() { ["New.Name"] = "Honey" }, within: "#New_Name");
        Assert.Equal($"/week/shelf/{family.IdOf("Honey")}", added.Headers.Location!.OriginalString);
        using var empty = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/shelf"), new() { ["New.Name"] = "" }, within: "#New_Name");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, empty.StatusCode);
        using var nothing = await family.Guardian.OpenAsync($"/week/shelf/{Guid.CreateVersion7()}");
        Assert.Equal(HttpStatusCode.NotFound, nothing.StatusCode);
    }
}
