using System.Net;
using AngleSharp.Dom;
using CoopLessons.Core.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class LayingAWeekOut(TestServer server)
{
    [Fact]
    public async Task The_page_first_asks_and_then_shows_the_plan_and_changes_nothing()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var before = await week.RowsAsync();
        var asks = await week.Guardian.GetAsync($"/week/layout/{AWeekToLayOut.Next}");
        Assert.Equal("Lay out this week", asks.Text("form[action$='handler=Ask'] button.primary"));
        Assert.Null(asks.QuerySelector("form[action$='handler=Take']"));

        var page = await week.LayOutAsync();
        var laid = week.Laid();
        // Nine activities of the second week, and ten lessons for each of three children.
        Assert.Equal(9 + 30, laid.Plan.Places.Count + laid.Plan.Misfits.Count);
        Assert.Equal(laid.Plan.Places.Count, page.QuerySelectorAll(".week .day .rows > li:not(.is-look)").Length);
        Assert.Equal(["16", "17", "18", "19", "20"], page.QuerySelectorAll(".week .day h2 .num").Select(d => d.TextContent));
        Assert.NotNull(page.QuerySelector("form[action$='handler=Take']"));
        Assert.Equal(before, await week.RowsAsync());
    }

    [Fact]
    public async Task Every_place_keeps_every_rule()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        await week.LayOutAsync();
        var laid = week.Laid();
        Assert.NotEmpty(laid.Plan.Places);
        Assert.Empty(PlanCheck.Faults(laid.AtHand.Problem, laid.Plan.Places));
    }

    [Fact]
    public async Task The_plan_is_called_the_best_only_where_that_was_proven()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync();
        Assert.Equal(week.Laid().Plan.Proof == Proof.Best, page.Text("main").Contains("best plan", StringComparison.Ordinal));

        // One lesson in a free week can only stand well.
        var small = await AWeekToLayOut.MakeAsync(server, a => a.Code != "w2-06-song-of-the-miller", courses: false);
        var proven = await small.LayOutAsync();
        Assert.Equal(Proof.Best, small.Laid().Plan.Proof);
        Assert.Contains("proven that none is better", proven.Text("main"), StringComparison.Ordinal);
        Assert.Empty(proven.QuerySelectorAll("button[name=longer]"));
    }

    [Fact]
    public async Task What_waits_is_filled_by_other_work()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync();
        var looks = page.QuerySelectorAll(".is-look").Select(l => l.Text(".quiet")).ToList();
        // The water wheel dries for an hour, the gluten rests for half of one; the tiles dry past the week's hours.
        Assert.Equal(2, looks.Count);
        Assert.Contains(looks, l => l.Split("Meanwhile: ") is [_, var meanwhile] && meanwhile.Split("; ").Length >= 2);
    }

    [Fact]
    public async Task What_is_longer_than_any_free_time_has_no_place_and_is_told_why_with_what_can_be_done()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        await week.HoursAsync((540, 615), (630, 705), (780, 840));
        var page = await week.LayOutAsync();
        var mill = page.QuerySelectorAll("section[aria-labelledby=misfits] li").Single(l => l.Text("b") == "Visit a mill");
        Assert.Equal("Needs 90 minutes with Heron, Linnet and Wren; their longest shared free time is 75 on Monday.", mill.Text(".row-main > p"));
        Assert.Equal(["Leave out: Visit a mill", "Do it in 60 min: Visit a mill", "Next week: Visit a mill"], mill.QuerySelectorAll("button").Select(b => b.TextContent.Trim()));
        Assert.Empty(PlanCheck.Faults(week.Laid().AtHand.Problem, week.Laid().Plan.Places));
    }

    [Theory]
    [InlineData("2026-W99")]
    [InlineData("week")]
    public async Task A_week_that_is_none_is_not_there(string name)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync($"/week/layout/{name}");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_week_that_is_over_has_no_day_left()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync("2026-W10");
        Assert.Equal("No day is left", page.Text(".empty h2"));
    }
}
