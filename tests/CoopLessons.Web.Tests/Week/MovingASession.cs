using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class MovingASession(TestServer server)
{
    [Fact]
    public async Task It_gets_another_day_and_time()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/move/{day.Letters}"), new() { ["Input.Date"] = "2026-03-17", ["Input.Start"] = "14:00" });
        Assert.Equal("/week/2026-W12", answer.Headers.Location!.OriginalString);
        var session = await day.SessionAsync(day.Letters);
        Assert.Equal((new DateOnly(2026, 3, 17), 840), (session.Date, session.StartsAt));
    }

    [Fact]
    public async Task Over_a_newer_plan_it_is_held_back_and_what_was_typed_stays()
    {
        var day = await PlannedDay.MakeAsync(server);
        var stale = await day.Guardian.GetAsync($"/week/move/{day.Letters}");
        using var newer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/move/{day.Letters}"), new() { ["Input.Date"] = "2026-03-16" });
        using var answer = await day.Guardian.SubmitAsync(stale, new() { ["Input.Date"] = "2026-03-20" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Contains("Monday 16 March", page.QuerySelector(".sub")!.TextContent, StringComparison.Ordinal);
        using var once = await day.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, once.StatusCode);
        Assert.Equal(new DateOnly(2026, 3, 20), (await day.SessionAsync(day.Letters)).Date);
    }

    [Fact]
    public async Task What_is_done_stays_where_it_was_done()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync($"/week/move/{day.Letters}");
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "Done"));
        using var moved = await day.Guardian.SubmitAsync(form, new() { ["Input.Date"] = "2026-03-17" });
        Assert.Equal(HttpStatusCode.Conflict, moved.StatusCode);
        using var gone = await day.Guardian.SubmitAsync(form, within: "form[action$='handler=LetGo']");
        Assert.Equal(HttpStatusCode.Conflict, gone.StatusCode);
        Assert.Equal((TestServer.Today, SessionState.Done), ((await day.SessionAsync(day.Letters)).Date, (await day.SessionAsync(day.Letters)).State));
    }

    [Fact]
    public async Task Let_go_it_stays_in_its_week_and_can_be_planned_again()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync($"/week/move/{day.Letters}");
        using var gone = await day.Guardian.SubmitAsync(form, within: "form[action$='handler=LetGo']");
        using var twice = await day.Guardian.SubmitAsync(form, within: "form[action$='handler=LetGo']");
        Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        Assert.Contains("let go", (await day.Guardian.GetAsync("/week")).QuerySelector(".day.is-today")!.TextContent, StringComparison.Ordinal);
        Assert.Null((await day.TodayAsync()).QuerySelector(PlannedDay.Line(day.Letters)));
        using var again = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/move/{day.Letters}"));
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.Letters)).State);
    }

    [Fact]
    public async Task Up_and_down_change_the_order_of_those_that_share_a_time()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            foreach (var session in await db.PlannedSessions.ToListAsync())
                session.Place(session.Date, null);
            await db.SaveChangesAsync();
        });
        var page = await day.Guardian.GetAsync($"/week/move/{day.Letters}");
        Assert.Single(page.QuerySelectorAll("form[action$='handler=Order']"));
        using var up = await day.Guardian.SubmitAsync(page, within: "form[action$='handler=Order']");
        using var twice = await day.Guardian.SubmitAsync(page, within: "form[action$='handler=Order']");
        Assert.Equal([day.ReadAloud, day.Letters, day.Sourdough], await OrderAsync(day));
        page = await day.Guardian.GetAsync($"/week/move/{day.Letters}");
        using var first = await day.Guardian.SubmitAsync(page, within: "form[action$='handler=Order']");
        Assert.Equal([day.Letters, day.ReadAloud, day.Sourdough], await OrderAsync(day));
        using var beyond = await day.Guardian.SubmitAsync(page, new() { ["place"] = "3" }, "form[action$='handler=Order']");
        Assert.Equal(HttpStatusCode.BadRequest, beyond.StatusCode);
    }

    [Fact]
    public async Task With_times_of_their_own_nothing_is_offered_to_order()
    {
        var day = await PlannedDay.MakeAsync(server);
        Assert.Empty((await day.Guardian.GetAsync($"/week/move/{day.Sourdough}")).QuerySelectorAll("form[action$='handler=Order']"));
    }

    [Theory]
    [InlineData("Input.Date", "")]
    [InlineData("Input.Date", "1999-12-31")]
    [InlineData("Input.Date", "never")]
    [InlineData("Input.Start", "25:61")]
    [InlineData("Version", "x")]
    public async Task Bad_input_is_refused_and_nothing_moves(string field, string value)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/move/{day.Letters}"), new() { ["Input.Date"] = "2026-03-17", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(TestServer.Today, (await day.SessionAsync(day.Letters)).Date);
    }

    private static async Task<IEnumerable<Guid>> OrderAsync(PlannedDay day) =>
        (await day.TodayAsync()).QuerySelectorAll(".strip-line").Select(l => Guid.ParseExact(l.Id!["line-".Length..], "N"));
}
