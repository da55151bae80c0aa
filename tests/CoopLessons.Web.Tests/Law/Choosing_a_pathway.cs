using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class Choosing_a_pathway(TestServer server)
{
    [Fact]
    public async Task Begins_with_the_familys_own_state_and_the_school_years_first_day()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        await family.WithDbAsync(async db =>
        {
            (await db.Families.SingleAsync()).Describe("Alder", "America/Chicago", "MO");
            await db.SaveChangesAsync();
        });
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose");
        Assert.Equal("US-MO", page.QuerySelector("#place option[selected]")!.GetAttribute("value"));
        Assert.Equal(Catalog.Of50AndDc["US-MO"]!.Pathways.Select(p => p.Id), page.QuerySelectorAll("input[name='Input.Pathway']").Select(i => i.GetAttribute("value")));
        Assert.Equal("2025-07-01", page.QuerySelector("#Input_From")!.GetAttribute("value"));
        Assert.Contains("Law changes", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Asks_for_the_place_first_where_none_is_known()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose");
        Assert.Empty(page.QuerySelectorAll("input[name='Input.Pathway']"));
        Assert.Equal(1 + Catalog.Of50AndDc.All.Count + 1, page.QuerySelectorAll("#place option").Length);
        Assert.NotEmpty((await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=us-ks")).QuerySelectorAll("input[name='Input.Pathway']"));
    }

    [Fact]
    public async Task Is_done_once_for_several_children_however_often_it_is_sent()
    {
        var family = await server.FamilyAsync();
        var (wren, linnet, rook) = (await family.LearnerAsync("Wren"), await family.LearnerAsync("Linnet"), await family.LearnerAsync("Rook"));
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=US-MO");
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Input.Pathway"] = "home-school" }, "input[name='Input.Pathway']", more: [new("Input.Others", linnet.ToString())])));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        var rows = await family.RowsAsync();
        Assert.Equal(new[] { wren, linnet }.Order(), rows.Select(r => r.LearnerId).Order());
        Assert.All(rows, r => Assert.Equal(("US-MO", "home-school", LawFamily.July, SpanReason.Begins), (r.Code, r.PathwayId, r.From, r.Because)));
        Assert.DoesNotContain(rows, r => r.LearnerId == rook);
    }

    [Fact]
    public async Task After_a_move_proposes_today_and_says_that_they_moved()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        await family.StandsAsync(wren, "US-MO", "home-school");
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=US-KS");
        Assert.Equal("2026-03-12", page.QuerySelector("#Input_From")!.GetAttribute("value"));
        Assert.Equal("Moves", page.QuerySelector("input[name='Input.Because'][checked]")!.GetAttribute("value"));
        await family.Guardian.SubmitAsync(page, new() { ["Input.Pathway"] = "naps" }, "input[name='Input.Pathway']");
        Assert.Equal(["US-MO", "US-KS"], (await family.RowsAsync()).Select(r => r.Code));
        var overview = await family.Guardian.GetAsync("/family/law");
        Assert.Contains("from 1 July 2025 until 11 March 2026", overview.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_a_pathway_of_ones_own()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        Assert.Contains("No pathway of your own yet", (await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=own")).Body!.TextContent, StringComparison.Ordinal);
        var own = await family.OwnAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=own"), within: "input[name='Input.Pathway']");
        var row = Assert.Single(await family.RowsAsync());
        Assert.Equal(("", own.Id.ToString(), own.Id), (row.Code, row.PathwayId, row.OwnPathwayId!.Value));
    }

    [Fact]
    public async Task Asks_for_the_day_from_which_it_counts_only_where_the_law_has_one()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        var (code, pathway) = LawFamily.First(p => p.CountsFrom is not null);
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose?place={code}");
        Assert.Contains(pathway.CountsFrom!, page.Body!.TextContent, StringComparison.Ordinal);
        await family.Guardian.SubmitAsync(page, new() { ["Input.Pathway"] = pathway.Id, ["Input.CountsFrom"] = "2025-08-20" }, "input[name='Input.Pathway']");
        Assert.Equal(new DateOnly(2025, 8, 20), Assert.Single(await family.RowsAsync()).CountsFrom);
        Assert.Empty((await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=US-MO")).QuerySelectorAll("#Input_CountsFrom"));
    }

    [Theory]
    [InlineData("Input.Pathway", null)]
    [InlineData("Input.Pathway", "no-such")]
    [InlineData("Input.Pathway", "naps")]
    [InlineData("Input.Pathway", "<script>alert(1)</script>")]
    [InlineData("Input.From", "")]
    [InlineData("Input.From", "autumn")]
    [InlineData("Input.From", "1989-12-31")]
    [InlineData("Input.From", "2200-01-01")]
    [InlineData("Input.Because", null)]
    [InlineData("Input.Because", "Whim")]
    [InlineData("Input.Because", "7")]
    [InlineData("Input.CountsFrom", "=1+1")]
    public async Task Is_refused_beside_the_field_where_it_cannot_be(string field, string? value)
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=US-MO");
        var fill = new Dictionary<string, string?> { ["Input.Pathway"] = "home-school" };
        fill[field] = value;
        var answer = await family.Guardian.SubmitAsync(page, fill, "input[name='Input.Pathway']");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Empty(await family.RowsAsync());
    }

    [Fact]
    public async Task Does_not_let_two_begin_on_one_day()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        await family.StandsAsync(wren, "US-KS", "naps");
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=US-MO");
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Pathway"] = "home-school", ["Input.From"] = "2025-07-01" }, "input[name='Input.Pathway']");
        await answer.IsRefusedAsync();
        Assert.Contains("begins on that day", (await Visitor.ParseAsync(answer)).QuerySelector("#from-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("US-KS", Assert.Single(await family.RowsAsync()).Code);
    }

    [Fact]
    public async Task Knows_no_place_and_no_child_but_its_own()
    {
        var (family, other) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var (wren, theirs) = (await family.LearnerAsync(), await other.LearnerAsync());
        await other.OwnAsync("Theirs");
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync($"/family/law/{wren}/choose?place=US-ZZ")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync($"/family/law/{theirs}/choose")).StatusCode);
        Assert.Empty((await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=own")).QuerySelectorAll("input[name='Input.Pathway']"));
        var page = await family.Guardian.GetAsync($"/family/law/{wren}/choose?place=US-MO");
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Pathway"] = "home-school" }, "input[name='Input.Pathway']", more: [new("Input.Others", theirs.ToString())]);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Empty(await family.RowsAsync());
    }
}
