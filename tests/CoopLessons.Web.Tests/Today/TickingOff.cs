using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Today;

[Collection(PlanningServer.Name)]
public sealed class TickingOff(TestServer server)
{
    [Fact]
    public async Task Done_for_two_children_takes_opening_the_day_and_one_tap()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Sourdough, "Done"));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        foreach (var learner in new[] { day.Wren, day.Linnet })
        {
            var ledger = await day.LedgerAsync(learner);
            Assert.Equal(15, ledger.Total.Value);
            Assert.Equal(10, ledger.In(day.Subjects["science"]).Value);
            Assert.Equal(5, ledger.In(day.Subjects["home-arts"]).Value);
            Assert.Equal(day.Subjects["history"], Assert.Single(ledger.Touches).SubjectId);
        }

        Assert.Equal(0, (await day.LedgerAsync(day.Heron)).Total.Value);
        var session = await day.SessionAsync(day.Sourdough);
        Assert.Equal(SessionState.Done, session.State);
        var page = await day.Guardian.GetAsync(answer.Headers.Location!.OriginalString.Split('#')[0]);
        Assert.Contains("Start the sourdough is done.", page.QuerySelector($"{PlannedDay.Line(day.Sourdough)} .undo")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_subject_that_was_left_out_is_touched_and_the_rest_takes_the_minutes()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var unit = await db.Units.Include(u => u.Subjects).SingleAsync(u => u.Id == day.Unit);
            unit.LeaveOut(day.Subjects["home-arts"]);
            await db.SaveChangesAsync();
        });
        using var answer = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Sourdough, "Done"));
        var ledger = await day.LedgerAsync(day.Wren);
        Assert.Equal(15, ledger.In(day.Subjects["science"]).Value);
        Assert.Contains(ledger.Touches, t => t.SubjectId == day.Subjects["home-arts"]);
    }

    [Fact]
    public async Task The_swap_brings_the_line_its_waiting_and_the_standing()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Sourdough, "Done"), htmx: true);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var swap = await Visitor.ParseAsync(answer);
        Assert.Contains("is-done", swap.QuerySelector(PlannedDay.Line(day.Sourdough))!.ClassName!, StringComparison.Ordinal);
        Assert.Equal("true", swap.QuerySelector("#standing")!.GetAttribute("hx-swap-oob"));
        Assert.Contains("Linnet: 0:15 this year, 0:15 this week", swap.QuerySelector("#standing")!.TextContent, StringComparison.Ordinal);
        Assert.False(swap.QuerySelector($"#look-{day.Sourdough:N}")!.HasAttribute("hidden"));
        Assert.Null(swap.QuerySelector("h1"));
    }

    [Fact]
    public async Task A_double_tap_writes_one_entry_and_is_answered_twice_alike()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.TodayAsync();
        using var first = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.ReadAloud, "Done"));
        using var second = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(first.Headers.Location, second.Headers.Location);
        Assert.Equal(1, await day.EntriesAsync());
        Assert.Equal(30, (await day.LedgerAsync(day.Linnet)).Total.Value);
    }

    [Fact]
    public async Task Taps_that_arrive_together_write_one_entry_and_are_answered_alike()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.TodayAsync();
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.ReadAloud, "Done"))));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task Two_people_who_tick_the_same_line_off_write_one_entry()
    {
        var day = await PlannedDay.MakeAsync(server);
        var helper = await server.HelperAsync(day.Family);
        var mine = await day.TodayAsync();
        using var first = await helper.SubmitAsync(await helper.GetAsync("/today"), within: PlannedDay.Form(day.ReadAloud, "Done"));
        using var second = await day.Guardian.SubmitAsync(mine, within: PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(HttpStatusCode.Redirect, second.StatusCode);
        Assert.Equal(1, await day.EntriesAsync());
        var line = (await day.TodayAsync()).QuerySelector($"{PlannedDay.Line(day.ReadAloud)} .state")!;
        Assert.Equal("done, Basil", line.TextContent.Trim());
        Assert.Equal("done", (await helper.GetAsync("/today")).QuerySelector($"{PlannedDay.Line(day.ReadAloud)} .state")!.TextContent.Trim());
    }

    [Fact]
    public async Task Undo_takes_the_minutes_out_keeps_the_history_and_plans_again()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        using var undone = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Undo"));
        Assert.Equal(HttpStatusCode.Redirect, undone.StatusCode);
        Assert.Equal(0, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.ReadAloud)).State);
        var removed = await day.Family.FromDbAsync(db => db.LogRevisions.OrderBy(r => r.Number).Select(r => r.Removed).ToListAsync());
        Assert.Equal([false, true], removed);
    }

    [Fact]
    public async Task A_replay_after_undo_is_answered_calmly_and_brings_nothing_back()
    {
        var day = await PlannedDay.MakeAsync(server);
        var before = await day.TodayAsync();
        using var done = await day.Guardian.SubmitAsync(before, within: PlannedDay.Form(day.ReadAloud, "Done"));
        var ticked = await day.TodayAsync();
        using var undone = await day.Guardian.SubmitAsync(ticked, within: PlannedDay.Form(day.ReadAloud, "Undo"));
        using var replay = await day.Guardian.SubmitAsync(before, within: PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(HttpStatusCode.Redirect, replay.StatusCode);
        using var again = await day.Guardian.SubmitAsync(ticked, within: PlannedDay.Form(day.ReadAloud, "Undo"));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal(1, await day.EntriesAsync());
        Assert.Equal(2, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));
        Assert.Equal(0, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.ReadAloud)).State);
        // A fresh tap has an id of its own.
        using var fresh = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(30, (await day.LedgerAsync(day.Linnet)).Total.Value);
    }

    [Fact]
    public async Task A_replay_of_undo_after_a_restore_takes_nothing_back()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        var ticked = await day.TodayAsync();
        var id = (await day.SessionAsync(day.ReadAloud)).EntryId!.Value;
        using var undone = await day.Guardian.SubmitAsync(ticked, within: PlannedDay.Form(day.ReadAloud, "Undo"));
        using var restored = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), within: "form[action$='handler=Restore']");
        using var replay = await day.Guardian.SubmitAsync(ticked, within: PlannedDay.Form(day.ReadAloud, "Undo"), htmx: true);
        Assert.Equal(HttpStatusCode.OK, replay.StatusCode);
        Assert.Contains("Read aloud: chapter 7 is done.", (await Visitor.ParseAsync(replay)).QuerySelector(".undo")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(30, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.ReadAloud)).State);
        // The line as it stands now can be taken back.
        using var fresh = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Undo"));
        Assert.Equal(0, (await day.LedgerAsync(day.Linnet)).Total.Value);
    }

    [Fact]
    public async Task Not_today_offers_another_day_and_letting_go_and_each_has_a_way_back()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var not = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Sourdough, "NotToday"));
        var page = await day.TodayAsync();
        var line = page.QuerySelector(PlannedDay.Line(day.Sourdough))!;
        Assert.Contains("not done", line.QuerySelector(".state")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Move to tomorrow, Friday 13 March", line.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll(".strip-wait:not([hidden]), .strip-look:not([hidden])"));

        using var gone = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.Sourdough, "LetGo"));
        Assert.Equal(SessionState.LetGo, (await day.SessionAsync(day.Sourdough)).State);
        var after = await day.Guardian.GetAsync(gone.Headers.Location!.OriginalString.Split('#')[0]);
        using var back = await day.Guardian.SubmitAsync(after, within: PlannedDay.Form(day.Sourdough, "PlanAgain"));
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.Sourdough)).State);
    }

    [Fact]
    public async Task Moving_a_line_to_the_next_teaching_day_can_be_undone()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var year = await db.SchoolYears.Include(y => y.Breaks).SingleAsync();
            year.AddBreak(Guid.CreateVersion7(), "Mill repair", new(new DateOnly(2026, 3, 13), new DateOnly(2026, 3, 17)));
            await db.SaveChangesAsync();
        });
        using var not = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "NotToday"));
        var page = await day.TodayAsync();
        using var moved = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.Letters, "Move"));
        using var twice = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.Letters, "Move"));
        Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        var session = await day.SessionAsync(day.Letters);
        Assert.Equal((new DateOnly(2026, 3, 18), SessionState.Planned), (session.Date, session.State));
        var after = await day.Guardian.GetAsync(moved.Headers.Location!.OriginalString.Split('#')[0]);
        Assert.Contains("Letters is moved to Wednesday 18 March.", after.Body!.TextContent, StringComparison.Ordinal);
        using var back = await day.Guardian.SubmitAsync(after, within: PlannedDay.Form(day.Letters, "Move"));
        Assert.Equal(TestServer.Today, (await day.SessionAsync(day.Letters)).Date);
    }

    [Fact]
    public async Task A_day_still_to_come_cannot_be_done()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.TodayAsync();
        await day.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.Letters)).MoveTo(new DateOnly(2026, 3, 13));
            await db.SaveChangesAsync();
        });
        using var answer = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.Letters, "Done"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("still to come", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await day.EntriesAsync());
        Assert.Empty((await day.Guardian.GetAsync("/today/2026-03-13")).QuerySelectorAll("form.strip-act"));
    }

    [Theory]
    [InlineData("Done")]
    [InlineData("Undo")]
    [InlineData("NotToday")]
    [InlineData("LetGo")]
    [InlineData("PlanAgain")]
    [InlineData("Move")]
    public async Task Another_familys_session_is_not_there(string handler)
    {
        var theirs = await PlannedDay.MakeAsync(server);
        var mine = await PlannedDay.MakeAsync(server);
        var answer = await mine.Guardian.PostAsync($"/today?handler={handler}", await FieldsAsync(mine, theirs.ReadAloud));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(SessionState.Planned, (await theirs.SessionAsync(theirs.ReadAloud)).State);
    }

    [Fact]
    public async Task Another_familys_entry_is_not_taken_back()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        using var done = await theirs.Guardian.SubmitAsync(await theirs.TodayAsync(), within: PlannedDay.Form(theirs.ReadAloud, "Done"));
        var entry = (await theirs.SessionAsync(theirs.ReadAloud)).EntryId!.Value;
        var mine = await PlannedDay.MakeAsync(server);
        using var answer = await mine.Guardian.PostAsync("/today?handler=Undo", await FieldsAsync(mine, mine.ReadAloud, entry));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(30, (await theirs.LedgerAsync(theirs.Linnet)).Total.Value);
    }

    [Fact]
    public async Task Another_familys_entry_id_serves_as_a_new_one()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        using var done = await theirs.Guardian.SubmitAsync(await theirs.TodayAsync(), within: PlannedDay.Form(theirs.ReadAloud, "Done"));
        var entry = (await theirs.SessionAsync(theirs.ReadAloud)).EntryId!.Value;
        var mine = await PlannedDay.MakeAsync(server);
        using var answer = await mine.Guardian.PostAsync("/today?handler=Done", await FieldsAsync(mine, mine.ReadAloud, entry));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(1, await mine.EntriesAsync());
        Assert.Equal(1, await theirs.EntriesAsync());
    }

    [Theory]
    [InlineData("sessionId", "seven")]
    [InlineData("entryId", "seven")]
    [InlineData("entryId", "00000000-0000-0000-0000-000000000000")]
    public async Task A_tap_that_is_no_tap_is_refused(string field, string value)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.TodayAsync(), new() { [field] = value }, PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task A_post_without_the_pages_token_is_refused()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.TodayAsync(), new() { ["__RequestVerificationToken"] = null }, PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(0, await day.EntriesAsync());
    }

    private static async Task<List<KeyValuePair<string, string>>> FieldsAsync(PlannedDay day, Guid session, Guid? entry = null) =>
    [
        new("__RequestVerificationToken", await day.Guardian.TokenAsync()),
        new("sessionId", session.ToString()),
        new("entryId", (entry ?? Guid.CreateVersion7()).ToString()),
        new("from", "2026-03-12"),
        new("to", "2026-03-13"),
    ];
}
