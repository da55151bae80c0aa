using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Web.Pages.Families.Law;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class The_pathway_of_a_child(TestServer server)
{
    [Fact]
    public async Task Takes_another_day_and_the_goals_that_bind_nobody()
    {
        var (family, path) = await StandingAsync("US-KS", "naps");
        var page = await family.Guardian.GetAsync(path);
        var pathway = Catalog.Of50AndDc["US-KS"]!.Pathway("naps")!;
        var offered = page.QuerySelectorAll("input[name='Input.Goals']").Select(i => i.GetAttribute("value")!).ToList();
        Assert.Equal(SpanChoices.Goals(pathway).Select(g => g.Id), offered);
        Assert.All(offered, id => Assert.False(pathway.AllRequirements.Single(r => r.Id == id).Binds));
        // Somebody else's id among the goals is no goal.
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.From"] = "2025-08-04", ["Input.Because"] = "Changes" }, more: [new("Input.Goals", offered[0]), new("Input.Goals", "no-such")]);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var row = Assert.Single(await family.RowsAsync());
        Assert.Equal((new DateOnly(2025, 8, 4), SpanReason.Changes), (row.From, row.Because));
        Assert.Equal([offered[0]], row.Goals);
        Assert.Equal(offered[0], (await family.Guardian.GetAsync(path)).QuerySelector("input[name='Input.Goals'][checked]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Takes_the_figures_that_are_set_where_the_family_lives()
    {
        var (code, pathway) = LawFamily.First(p => SpanChoices.Local(p).OfType<HoursRequirement>().Any());
        var (family, path) = await StandingAsync(code, pathway.Id);
        Assert.Contains("A figure is set where you live", (await family.Guardian.GetAsync("/family/law")).Body!.TextContent, StringComparison.Ordinal);
        var asked = SpanChoices.Local(pathway).ToList();
        var at = asked.FindIndex(r => r is HoursRequirement);
        var page = await family.Guardian.GetAsync(path);
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { [$"Input.Figures[{at}].Value"] = "912.25" })).StatusCode);
        Assert.Equal(912.25m, Assert.Single(Assert.Single(await family.RowsAsync()).Figures, f => f.Key == asked[at].Id).Value);
        page = await family.Guardian.GetAsync(path);
        Assert.Equal("912.25", page.QuerySelector($"#figure-{at}")!.GetAttribute("value"));
        await family.Guardian.SubmitAsync(page, new() { [$"Input.Figures[{at}].Value"] = "" });
        Assert.Empty(Assert.Single(await family.RowsAsync()).Figures);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-5")]
    [InlineData("9000.25")]
    [InlineData("12.3")]
    [InlineData("many")]
    [InlineData("=1+1")]
    [InlineData("79228162514264337593543950336")]
    public async Task Refuses_figures_that_cannot_be_and_keeps_what_was_typed(string typed)
    {
        var (code, pathway) = LawFamily.First(p => SpanChoices.Local(p).OfType<HoursRequirement>().Any());
        var (family, path) = await StandingAsync(code, pathway.Id);
        var at = SpanChoices.Local(pathway).ToList().FindIndex(r => r is HoursRequirement);
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { [$"Input.Figures[{at}].Value"] = typed });
        await answer.IsRefusedAsync();
        var page = await Visitor.ParseAsync(answer);
        Assert.Equal(typed, page.QuerySelector($"#figure-{at}")!.GetAttribute("value"));
        Assert.NotNull(page.QuerySelector($"#figure-fault-{at}"));
        Assert.Empty(Assert.Single(await family.RowsAsync()).Figures);
    }

    [Fact]
    public async Task Counts_days_in_whole_numbers()
    {
        var (code, pathway) = LawFamily.First(p => SpanChoices.Local(p).OfType<DaysRequirement>().Any());
        var (family, path) = await StandingAsync(code, pathway.Id);
        var at = SpanChoices.Local(pathway).ToList().FindIndex(r => r is DaysRequirement);
        var page = await family.Guardian.GetAsync(path);
        await (await family.Guardian.SubmitAsync(page, new() { [$"Input.Figures[{at}].Value"] = "180.5" })).IsRefusedAsync();
        await (await family.Guardian.SubmitAsync(page, new() { [$"Input.Figures[{at}].Value"] = "367" })).IsRefusedAsync();
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { [$"Input.Figures[{at}].Value"] = "180" })).StatusCode);
    }

    [Theory]
    [InlineData("Input.From", "")]
    [InlineData("Input.From", "2200-01-01")]
    [InlineData("Input.From", "soon")]
    [InlineData("Input.Because", "")]
    [InlineData("Input.Because", "9")]
    public async Task Refuses_days_and_reasons_that_cannot_be(string field, string value)
    {
        var (family, path) = await StandingAsync("US-MO", "home-school");
        await (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { [field] = value })).IsRefusedAsync();
        Assert.Equal(LawFamily.July, Assert.Single(await family.RowsAsync()).From);
    }

    [Fact]
    public async Task Does_not_move_onto_the_first_day_of_another()
    {
        var (family, path) = await StandingAsync("US-MO", "home-school");
        var row = Assert.Single(await family.RowsAsync());
        await family.StandsAsync(row.LearnerId, "US-KS", "naps", new DateOnly(2025, 11, 3));
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { ["Input.From"] = "2025-11-03" });
        await answer.IsRefusedAsync();
        Assert.Equal(2, (await family.RowsAsync()).Select(r => r.From).Distinct().Count());
    }

    [Fact]
    public async Task Is_not_overwritten_from_an_old_page()
    {
        var (family, path) = await StandingAsync("US-MO", "home-school");
        var page = await family.Guardian.GetAsync(path);
        await family.Guardian.SubmitAsync(page, new() { ["Input.From"] = "2025-08-04" });
        var stale = await family.Guardian.SubmitAsync(page, new() { ["Input.From"] = "2025-09-01" });
        await stale.IsRefusedAsync(HttpStatusCode.Conflict);
        Assert.Equal("2025-09-01", (await Visitor.ParseAsync(stale)).QuerySelector("#Input_From")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Conflict, (await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Remove'] button")).StatusCode);
        Assert.Equal(new DateOnly(2025, 8, 4), Assert.Single(await family.RowsAsync()).From);
    }

    [Fact]
    public async Task Is_taken_away_without_touching_anything_else()
    {
        var (family, path) = await StandingAsync("US-MO", "home-school");
        var page = await family.Guardian.GetAsync(path);
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Remove'] button")).StatusCode);
        Assert.Empty(await family.RowsAsync());
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Remove'] button")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync(path)).StatusCode);
    }

    [Fact]
    public async Task That_is_no_longer_in_the_program_is_told_and_can_still_be_taken_away()
    {
        var (family, path) = await StandingAsync("US-MO", "gone-since");
        Assert.Contains("no longer in this program", (await family.Guardian.GetAsync("/family/law")).Body!.TextContent, StringComparison.Ordinal);
        var page = await family.Guardian.GetAsync(path);
        Assert.Contains("no longer in this program", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["Input.From"] = "2025-08-04" })).StatusCode);
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), within: "form[action*='handler=Remove'] button");
        Assert.Empty(await family.RowsAsync());
    }

    private async Task<(TestFamily Family, string Path)> StandingAsync(string code, string pathwayId)
    {
        var family = await server.FamilyAsync();
        return (family, "/family/law/spans/" + await family.StandsAsync(await family.LearnerAsync(), code, pathwayId));
    }
}
