using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class TakingALayout(TestServer server)
{
    private const string Undo = ".undo form";

    [Fact]
    public async Task Each_session_stands_with_its_hour_its_look_and_whose_hands_it_takes()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var iris = await week.AdultAsync("Iris");
        var page = await week.LayOutAsync();
        var laid = week.Laid();
        await week.TakeAsync(page).RedirectedAsync();
        var sessions = (await week.SessionsAsync()).Where(s => s.Date >= AWeekToLayOut.Monday).ToDictionary(s => s.Id);
        Assert.Equal(laid.Plan.Places.Count, sessions.Count);
        Assert.All(laid.Plan.Places, p => Assert.Equal((p.Day, p.StartsAt, p.LooksAt, p.Adult), (sessions[p.SessionId].Date, sessions[p.SessionId].StartsAt, sessions[p.SessionId].LooksAt, sessions[p.SessionId].AdultId)));
        var mill = await week.SessionOfAsync("w2-02-visit-a-mill");
        Assert.Equal((iris, null), (mill.AdultId, mill.LooksAt));
        Assert.Equal([week.Heron, week.Linnet, week.Wren], mill.Learners);
        Assert.NotNull((await week.SessionOfAsync("w2-03-cork-water-wheel")).LooksAt);
    }

    [Fact]
    public async Task A_second_sending_changes_nothing()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync();
        var to = await week.TakeAsync(page).RedirectedAsync();
        var after = await week.RowsAsync();
        Assert.Equal(to, await week.TakeAsync(page).RedirectedAsync());
        Assert.Equal(after, await week.RowsAsync());
        Assert.Equal(1, await week.Family.FromDbAsync(db => db.PlanSteps.CountAsync()));
    }

    [Fact]
    public async Task Undone_on_the_week_everything_is_as_it_was()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        await week.PlanAsync("w2-02-visit-a-mill", AWeekToLayOut.Monday, null);
        await week.PlanAsync("w2-07-wheat-journey-map", AWeekToLayOut.Monday.AddDays(1), 9 * 60);
        var before = await week.RowsAsync();
        var to = await week.TakeAsync(await week.LayOutAsync()).RedirectedAsync();
        Assert.NotEqual(before, await week.RowsAsync());
        var bar = await week.Guardian.GetAsync(to);
        Assert.Equal("Week of 16 March laid out.", bar.Text(".undo > span"));
        Assert.Equal($"/week/{AWeekToLayOut.Next}", await week.Guardian.SubmitAsync(bar, within: Undo).RedirectedAsync());
        Assert.Equal(before, await week.RowsAsync());

        // Sent once more, the undoing finds nothing to undo.
        await week.Guardian.SubmitAsync(bar, within: Undo).RedirectedAsync();
        Assert.Equal(before, await week.RowsAsync());
        Assert.Null((await week.Guardian.GetAsync(to)).QuerySelector(".undo"));
    }

    [Fact]
    public async Task Undone_among_the_steps_everything_is_as_it_was_and_it_can_be_taken_again()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var before = await week.RowsAsync();
        await week.TakeAsync(await week.LayOutAsync()).RedirectedAsync();
        var taken = await week.RowsAsync();
        var steps = await week.Guardian.GetAsync("/week/steps");
        Assert.Contains("Week of 16 March laid out", steps.Text(".row-main"), StringComparison.Ordinal);
        Assert.Equal("/week/steps", await week.Guardian.SubmitAsync(steps).RedirectedAsync());
        Assert.Equal(before, await week.RowsAsync());
        Assert.Equal("undone", (await week.Guardian.GetAsync("/week/steps")).Text(".row-side"));

        await week.TakeAsync(await week.Guardian.GetAsync($"/week/layout/{AWeekToLayOut.Next}")).RedirectedAsync();
        Assert.Equal(taken, await week.RowsAsync());
    }

    [Fact]
    public async Task A_step_of_which_something_is_done_since_cannot_be_undone()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        await week.TakeAsync(await week.LayOutAsync("2026-W11")).RedirectedAsync();
        var line = (await week.SessionsAsync()).First(s => s.Date == TestServer.Today && s.State == SessionState.Planned);
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: PlannedDay.Form(line.Id, "Done")).RedirectedAsync();
        var before = await week.RowsAsync();
        var answer = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/week/steps")).AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Contains("cannot be undone as a whole any more", answer.Text(".validation-summary-errors"), StringComparison.Ordinal);
        Assert.Equal(before, await week.RowsAsync());
        Assert.False(await week.Family.FromDbAsync(db => db.PlanSteps.AnyAsync(s => s.Undone)));
    }

    [Fact]
    public async Task A_step_of_which_something_was_moved_since_cannot_be_undone()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var mill = await week.SessionOfAsync("w2-02-visit-a-mill");
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync($"/week/move/{mill.Id}"), new() { ["Input.Date"] = "2026-03-26" }).RedirectedAsync();
        var before = await week.RowsAsync();
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/week/steps")).AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Equal(before, await week.RowsAsync());
    }
}
