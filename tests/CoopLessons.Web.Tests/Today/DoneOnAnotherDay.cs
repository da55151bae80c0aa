using System.Net;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Today;

/// <summary>A sourdough that was planned for one day and begun on another: its ninety minutes count from the deed.</summary>
[Collection(PlanningServer.Name)]
public sealed class DoneOnAnotherDay(TestServer server)
{
    [Fact]
    public async Task What_was_begun_earlier_than_planned_wants_nobody_on_the_planned_day()
    {
        var day = await LoggedAsync(TestServer.Today, "2026-03-10", "08:00");
        Assert.Empty((await day.TodayAsync()).QuerySelectorAll(".strip-look:not([hidden])"));
        Assert.Contains("Tuesday 10 March, 9:45", (await day.TodayAsync()).QuerySelector(".strip-wait")!.TextContent, StringComparison.Ordinal);
        var look = (await day.Guardian.GetAsync("/today/2026-03-10")).QuerySelector(".strip-look")!;
        Assert.Equal("9:45", look.QuerySelector("time")!.TextContent);
        Assert.DoesNotContain("since", look.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_planned_for_an_earlier_day_wants_somebody_after_the_deed()
    {
        var day = await LoggedAsync(new DateOnly(2026, 2, 2), "2026-03-12", "09:30");
        Assert.Equal("11:15", (await day.TodayAsync()).QuerySelector(".strip-look time")!.TextContent);
        Assert.Empty((await day.Guardian.GetAsync("/today/2026-02-02")).QuerySelectorAll(".strip-look:not([hidden])"));
    }

    [Fact]
    public async Task What_was_planned_for_a_day_to_come_wants_somebody_after_the_deed()
    {
        var day = await LoggedAsync(new DateOnly(2026, 3, 20), "2026-03-12", "09:30");
        Assert.Equal("11:15", (await day.TodayAsync()).QuerySelector(".strip-look time")!.TextContent);
    }

    [Fact]
    public async Task What_was_begun_late_on_the_day_before_says_since_when()
    {
        var day = await LoggedAsync(TestServer.Today, "2026-03-11", "23:00");
        var look = (await day.TodayAsync()).QuerySelector(".strip-look:not([hidden])")!;
        Assert.Equal("0:45", look.QuerySelector("time")!.TextContent);
        Assert.Contains("since Wednesday 11 March", look.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_written_start_it_counts_from_the_tick_and_not_from_the_hour_planned_for_another_day()
    {
        // Ten in the morning in Chicago.
        var day = await LoggedAsync(new DateOnly(2026, 3, 9), "2026-03-12", "");
        Assert.Equal("11:30", (await day.TodayAsync()).QuerySelector(".strip-look time")!.TextContent);
    }

    [Fact]
    public async Task Without_a_written_start_and_written_on_a_later_day_no_moment_is_known()
    {
        var day = await LoggedAsync(TestServer.Today, "2026-03-10", "");
        var page = await day.TodayAsync();
        Assert.Equal("the starter rises: 1\u00a0h\u00a030, then look", page.QuerySelector(".strip-wait")!.TextContent.Trim());
        Assert.Empty(page.QuerySelectorAll(".strip-look:not([hidden])"));
    }

    private async Task<PlannedDay> LoggedAsync(DateOnly planned, string done, string start)
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.Sourdough)).Place(planned, 9 * 60);
            await db.SaveChangesAsync();
        });
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/new?session={day.Sourdough}"), new() { ["Input.Date"] = done, ["Input.Start"] = start });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return day;
    }
}
