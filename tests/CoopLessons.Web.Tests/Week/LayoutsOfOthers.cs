using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Planning;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class LayoutsOfOthers(TestServer server)
{
    private const string Busy = "The server is busy laying out weeks of others. Ask again in a minute.";
    private const string Job = "form[action$='handler=Take'] input[name=job]";
    private static readonly DateOnly Wednesday = new(2026, 3, 18);

    [Fact]
    public async Task Are_not_shown_for_the_same_week_nor_for_the_same_lost_day()
    {
        var theirs = await AWeekToLayOut.TakenAsync(server);
        await theirs.WaysAsync("/week/ways/2026-03-18", FamilyWork.KeyOf(new DayRange(Wednesday, Wednesday)));
        var mine = await server.FamilyAsync("Birch");
        var layout = await mine.Guardian.GetAsync($"/week/layout/{AWeekToLayOut.Next}");
        Assert.Equal("Lay out this week", layout.Text("form[action$='handler=Ask'] .primary"));
        Assert.DoesNotContain("Visit a mill", layout.Text("main"), StringComparison.Ordinal);
        var ways = await mine.Guardian.GetAsync("/week/ways/2026-03-18");
        Assert.Equal("Show three ways on", ways.Text("form[action$='handler=Ask'] .primary"));
    }

    [Fact]
    public async Task Are_not_taken_even_by_their_number()
    {
        var theirs = await AWeekToLayOut.MakeAsync(server);
        var mine = await AWeekToLayOut.MakeAsync(server);
        var (page, other) = (await mine.LayOutAsync(), await theirs.LayOutAsync());
        page.QuerySelector(Job)!.SetAttribute("value", other.QuerySelector(Job)!.GetAttribute("value"));
        var before = (await mine.RowsAsync(), await theirs.RowsAsync());
        var answer = await mine.TakeAsync(page).AnsweredAsync(HttpStatusCode.Conflict);
        Assert.StartsWith("The server no longer knows this layout", answer.Text(".validation-summary-errors"), StringComparison.Ordinal);
        Assert.Equal(before, (await mine.RowsAsync(), await theirs.RowsAsync()));
    }

    [Fact]
    public async Task Leave_their_step_to_themselves()
    {
        var theirs = await AWeekToLayOut.TakenAsync(server);
        var step = await theirs.Family.FromDbAsync(db => db.PlanSteps.Select(s => s.Id).SingleAsync());
        var before = await theirs.RowsAsync();
        var mine = await server.FamilyAsync("Birch");
        using var shown = await mine.Guardian.OpenAsync($"/week/{AWeekToLayOut.Next}?step={step}");
        Assert.Equal(HttpStatusCode.NotFound, shown.StatusCode);
        using var undone = await mine.Guardian.PostAsync("/week/steps?handler=Undo", [new("stepId", step.ToString()), new("__RequestVerificationToken", await mine.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.NotFound, undone.StatusCode);
        Assert.Equal(before, await theirs.RowsAsync());
    }

    [Fact]
    public async Task May_fill_the_line_and_then_one_is_asked_to_come_back()
    {
        await using var own = new OwnServer(new KeyValuePair<string, string>("CoopLessons:LayoutsInLine", "1"));
        var family = await own.FamilyAsync();
        var line = own.Services.GetRequiredService<LayoutLine>();
        // One is worked on, and one fills the line.
        var (running, waiting) = (new LineInThisProcess.Held(), new LineInThisProcess.Held());
        Assert.NotNull(line.Ask(LineInThisProcess.Birch, "week 2026-W12", running.WorkAsync));
        await running.Begun;
        Assert.NotNull(line.Ask(LineInThisProcess.Alder, "week 2026-W12", waiting.WorkAsync));
        foreach (var path in new[] { $"/week/layout/{AWeekToLayOut.Next}", "/week/ways/2026-03-18" })
        {
            var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), within: "form[action$='handler=Ask']").AnsweredAsync(HttpStatusCode.ServiceUnavailable);
            Assert.Equal(Busy, answer.Text(".validation-summary-errors"));
            Assert.NotNull(answer.QuerySelector("form[action$='handler=Ask']"));
        }

        running.End("");
        waiting.End("");
    }

    [Fact]
    public async Task Behind_others_the_page_says_how_many_and_can_be_called_off()
    {
        await using var own = new OwnServer();
        var family = await own.FamilyAsync();
        var line = own.Services.GetRequiredService<LayoutLine>();
        var running = new LineInThisProcess.Held();
        Assert.NotNull(line.Ask(LineInThisProcess.Birch, "week 2026-W12", running.WorkAsync));
        await running.Begun;
        var path = $"/week/layout/{AWeekToLayOut.Next}";
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path)).RedirectedAsync();
        var page = await family.Guardian.GetAsync(path);
        Assert.Equal("This is the next to be laid out.", page.Text("#progress > p:first-child"));
        await family.Guardian.SubmitAsync(page, within: "form[action$='handler=CallOff']").RedirectedAsync();
        Assert.Equal("This was called off.", (await family.Guardian.GetAsync(path)).Text(".note.look"));
        running.End("");
    }

    [Theory]
    [InlineData("/week/layout/2026-W12")]
    [InlineData("/week/ways/2026-03-18")]
    [InlineData("/week/steps")]
    public async Task A_helper_lays_nothing_out(string path)
    {
        var family = await server.FamilyAsync();
        var helper = await server.HelperAsync(family);
        using var shown = await helper.OpenAsync(path);
        Assert.Equal(HttpStatusCode.Forbidden, shown.StatusCode);
        using var asked = await helper.PostAsync(path + "?handler=Ask", [new("__RequestVerificationToken", await helper.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, asked.StatusCode);
    }
}
