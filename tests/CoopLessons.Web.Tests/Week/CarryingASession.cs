using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Week;

/// <summary>A session is dropped on another day of the week.</summary>
[Collection(PlanningServer.Name)]
public sealed class CarryingASession(TestServer server)
{
    private const string Mill = "w2-02-visit-a-mill";
    private const string Map = "w2-07-wheat-journey-map";
    private static readonly DateOnly Tuesday = AWeekToLayOut.Monday.AddDays(1);

    private Task<AWeekToLayOut> WeekAsync() => AWeekToLayOut.MakeAsync(server, a => a.Week == 1, courses: false);

    /// <summary>As the script of the page does it.</summary>
    private static async Task<HttpResponseMessage> DropAsync(Visitor guardian, Guid session, string day) =>
        await guardian.PostAsync($"/week/drop/{session}", [new("day", day), new("__RequestVerificationToken", await guardian.TokenAsync($"/week/{AWeekToLayOut.Next}"))]);

    private static async Task<string> SaidAsync(AWeekToLayOut week) => (await week.Guardian.GetAsync($"/week/{AWeekToLayOut.Next}")).Text("body");

    [Fact]
    public async Task It_stands_on_the_other_day_at_its_hour_and_is_pinned()
    {
        var week = await WeekAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        Assert.Equal($"/week/{AWeekToLayOut.Next}", await DropAsync(week.Guardian, mill.Id, "2026-03-17").RedirectedAsync());
        var after = await week.SessionOfAsync(Mill);
        Assert.Equal((Tuesday, 9 * 60, true), (after.Date, after.StartsAt, after.Pinned));
        var said = await SaidAsync(week);
        Assert.Contains("“Visit a mill” is planned for Tuesday 17 March.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Mind:", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_places_at_once_are_told_and_not_forbidden()
    {
        var week = await WeekAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        await week.PlanAsync(Map, Tuesday, (9 * 60) + 30, learners: week.Wren);
        await DropAsync(week.Guardian, mill.Id, "2026-03-17").RedirectedAsync();
        Assert.Contains("Mind: On Tuesday at 9:30 Wren would be in two places: “Visit a mill” and “Draw wheat's journey across the world”.", await SaidAsync(week), StringComparison.Ordinal);
        Assert.Equal(Tuesday, (await week.SessionOfAsync(Mill)).Date);
    }

    [Fact]
    public async Task Outside_the_hours_is_told_and_not_forbidden()
    {
        var week = await WeekAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        await week.AppointmentAsync("Swimming", Data.Planning.AppointmentKind.LessonOut, Tuesday, 9 * 60, 60, "", week.Linnet);
        await DropAsync(week.Guardian, mill.Id, "2026-03-17").RedirectedAsync();
        Assert.Contains("Mind: On Tuesday at 9:00 Linnet is not free for the 90 minutes of “Visit a mill”.", await SaidAsync(week), StringComparison.Ordinal);
        Assert.Equal(Tuesday, (await week.SessionOfAsync(Mill)).Date);
    }

    [Fact]
    public async Task A_day_off_is_told_and_not_forbidden()
    {
        var week = await WeekAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        await DropAsync(week.Guardian, mill.Id, "2026-03-21").RedirectedAsync();
        Assert.Contains("is planned for Saturday 21 March, which is not one of your teaching days.", await SaidAsync(week), StringComparison.Ordinal);
        Assert.Equal(new DateOnly(2026, 3, 21), (await week.SessionOfAsync(Mill)).Date);
    }

    [Fact]
    public async Task What_is_done_stays_where_it_was_done()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "Done"));
        await DropAsync(day.Guardian, day.Letters, "2026-03-13").RedirectedAsync();
        var letters = await day.SessionAsync(day.Letters);
        Assert.Equal((TestServer.Today, SessionState.Done, false), (letters.Date, letters.State, letters.Pinned));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Tuesday")]
    [InlineData("2026-02-30")]
    [InlineData("1850-01-01")]
    public async Task A_day_that_is_none_is_refused(string day)
    {
        var week = await WeekAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        using var answer = await DropAsync(week.Guardian, mill.Id, day);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal((AWeekToLayOut.Monday, false), ((await week.SessionOfAsync(Mill)).Date, (await week.SessionOfAsync(Mill)).Pinned));
    }

    [Fact]
    public async Task Of_another_family_it_is_not_there()
    {
        var theirs = await WeekAsync();
        var mill = await theirs.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        var mine = await server.FamilyAsync("Birch");
        using var answer = await DropAsync(mine.Guardian, mill.Id, "2026-03-17");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(AWeekToLayOut.Monday, (await theirs.SessionOfAsync(Mill)).Date);
    }
}
