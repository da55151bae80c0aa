using System.Net;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class ALostDay(TestServer server)
{
    private const string Lost = "/week/lost/2026-03-12";
    private static readonly DateOnly Friday = new(2026, 3, 13);

    [Fact]
    public async Task Each_undone_session_is_offered_the_next_ten_teaching_days_keeping_and_letting_go()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        var page = await day.Guardian.GetAsync(Lost);
        Assert.Equal(["Start the sourdough", "Letters"], page.QuerySelectorAll("form label").Select(l => l.TextContent));
        var offered = page.QuerySelector("select")!.QuerySelectorAll("option").Select(o => o.GetAttribute("value")!).ToList();
        Assert.Equal(
            ["2026-03-13", "2026-03-16", "2026-03-17", "2026-03-18", "2026-03-19", "2026-03-20", "2026-03-23", "2026-03-24", "2026-03-25", "2026-03-26", "keep", "let-go"], offered);
    }

    [Fact]
    public async Task The_change_is_shown_before_it_is_taken()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var shown = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync(Lost), new() { ["Input[1].To"] = "keep", ["Input[2].To"] = "let-go" });
        Assert.Equal(HttpStatusCode.OK, shown.StatusCode);
        var page = await Visitor.ParseAsync(shown);
        Assert.Equal(["Read aloud: chapter 7 → Friday 13 March", "Letters let go"], page.QuerySelectorAll(".rows > li").Select(l => string.Join(" ", l.Children.Select(c => c.TextContent))));
        Assert.Equal(TestServer.Today, (await day.SessionAsync(day.ReadAloud)).Date);
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.Letters)).State);
    }

    [Fact]
    public async Task Only_what_was_chosen_moves_and_undo_restores_it_all()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        var other = await PlaceAsync(day, Friday);
        var before = await PlanAsync(day);
        using var shown = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync(Lost), new() { ["Input[1].To"] = "let-go" });
        var confirm = await Visitor.ParseAsync(shown);
        using var taken = await day.Guardian.SubmitAsync(confirm);
        Assert.Equal(Lost, taken.Headers.Location!.OriginalString);
        var after = await PlanAsync(day);
        Assert.Equal((Friday, SessionState.Planned), after[day.Sourdough]);
        Assert.Equal((TestServer.Today, SessionState.LetGo), after[day.Letters]);
        Assert.Equal(before[day.ReadAloud], after[day.ReadAloud]);
        Assert.Equal(before[other], after[other]);

        var page = await day.Guardian.GetAsync(Lost);
        Assert.Contains("2 things are changed.", page.QuerySelector(".undo")!.TextContent, StringComparison.Ordinal);
        using var undone = await day.Guardian.SubmitAsync(page, within: ".undo");
        using var twice = await day.Guardian.SubmitAsync(page, within: ".undo");
        Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        Assert.Equal(before, await PlanAsync(day));
    }

    [Fact]
    public async Task Taking_the_same_changes_twice_changes_nothing_more()
    {
        var day = await PlannedDay.MakeAsync(server);
        var confirm = await Visitor.ParseAsync(await day.Guardian.SubmitAsync(await day.Guardian.GetAsync(Lost)));
        using var first = await day.Guardian.SubmitAsync(confirm);
        var after = await PlanAsync(day);
        using var second = await day.Guardian.SubmitAsync(confirm);
        Assert.Equal(first.Headers.Location, second.Headers.Location);
        Assert.Equal(after, await PlanAsync(day));
    }

    [Fact]
    public async Task When_one_change_cannot_be_taken_none_is()
    {
        var day = await PlannedDay.MakeAsync(server);
        var confirm = await Visitor.ParseAsync(await day.Guardian.SubmitAsync(await day.Guardian.GetAsync(Lost)));
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "Done"));
        var before = await PlanAsync(day);
        using var answer = await day.Guardian.SubmitAsync(confirm);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("nothing was moved", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(before, await PlanAsync(day));
    }

    [Fact]
    public async Task A_session_of_another_family_is_not_there()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        var mine = await PlannedDay.MakeAsync(server);
        var choose = await mine.Guardian.GetAsync(Lost);
        var confirm = await Visitor.ParseAsync(await mine.Guardian.SubmitAsync(choose));
        foreach (var page in new[] { choose, confirm })
        {
            using var answer = await mine.Guardian.SubmitAsync(page, new() { ["Input[0].SessionId"] = theirs.ReadAloud.ToString() });
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        using var undo = await mine.Guardian.PostAsync($"{Lost}?handler=Undo",
            [new("__RequestVerificationToken", await mine.Guardian.TokenAsync()), new("Back[0].SessionId", theirs.ReadAloud.ToString()), new("Back[0].From", """{"date":"2026-03-12"}"""), new("Back[0].To", """{"date":"2026-03-12"}""")]);
        Assert.Equal(HttpStatusCode.NotFound, undo.StatusCode);
        Assert.Equal(TestServer.Today, (await theirs.SessionAsync(theirs.ReadAloud)).Date);
    }

    [Theory]
    [InlineData("")]
    [InlineData("2026-03-12")]
    [InlineData("1999-01-01")]
    [InlineData("sometime")]
    public async Task A_choice_that_is_none_is_refused(string to)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync(Lost), new() { ["Input[0].To"] = to });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task Keeping_everything_is_said_to_change_nothing()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync(Lost), new() { ["Input[0].To"] = "keep", ["Input[1].To"] = "keep", ["Input[2].To"] = "keep" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("nothing to change", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_day_with_nothing_left_says_so()
    {
        var family = await server.FamilyAsync();
        Assert.Contains("Nothing left to move", (await family.Guardian.GetAsync(Lost)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_plan_refuses_a_session_that_stands_twice_in_one_proposal()
    {
        var day = await PlannedDay.MakeAsync(server);
        var change = new PlanChange(day.Letters, new PlanPlace(TestServer.Today, Order: 2), new PlanPlace(Friday, Order: 2));
        Assert.Equal(PlanAnswer.Unknown, await day.Family.FromDbAsync(db => Plan.ApplyAsync(db, [change, change], default)));
    }

    private static Task<Dictionary<Guid, (DateOnly, SessionState)>> PlanAsync(PlannedDay day) =>
        day.Family.FromDbAsync(db => db.PlannedSessions.ToDictionaryAsync(s => s.Id, s => (s.Date, s.State)));

    private static async Task<Guid> PlaceAsync(PlannedDay day, DateOnly date)
    {
        var id = Guid.CreateVersion7();
        await day.Family.WithDbAsync(async db =>
        {
            db.PlannedSessions.Add(new PlannedSession(id, day.Mill, date, null, 0, [day.Wren]));
            await db.SaveChangesAsync();
        });
        return id;
    }
}
