using System.Net;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;

namespace CoopLessons.Web.Tests.Log;

[Collection(SharedServer.Name)]
public sealed class TheLogByWeeks(TestServer server)
{
    [Fact]
    public async Task Entries_stand_by_day_the_newest_first_a_week_at_a_time()
    {
        var day = await PlannedDay.MakeAsync(server);
        foreach (var (date, what) in new[] { ("2026-03-09", "Monday's"), ("2026-03-12", "Thursday's"), ("2026-03-08", "Sunday's") })
            await LogAsync(day, date, what);
        var page = await day.Guardian.GetAsync("/log");
        Assert.Equal(["Thursday 12 March", "Monday 9 March"], page.QuerySelectorAll("section.sheet h2").Select(h => h.TextContent));
        var before = await day.Guardian.GetAsync("/log?week=2026-W10");
        Assert.Contains("Sunday's", before.QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("written on Thursday 12 March", before.QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("written on", page.QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_childs_entries_can_be_had_alone()
    {
        var day = await PlannedDay.MakeAsync(server);
        await LogAsync(day, "2026-03-12", "Without Heron", new() { ["Input.Who[2].There"] = null });
        Assert.Contains("Without Heron", (await day.Guardian.GetAsync($"/log?learner={day.Wren}")).Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Nothing was logged in this week for Heron", (await day.Guardian.GetAsync($"/log?learner={day.Heron}")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("week=2026-W54")]
    [InlineData("week=now")]
    [InlineData("week=9000-W01")]
    [InlineData("learner=wren")]
    public async Task An_address_that_means_nothing_is_answered_with_404(string query)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync("/log?" + query);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private static async Task LogAsync(PlannedDay day, string date, string what, Dictionary<string, string?>? more = null)
    {
        var fill = new Dictionary<string, string?>(more ?? []) { ["Input.What"] = what };
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/new?date={date}"), fill);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }
}
