using System.Net;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

/// <summary>Something changed between the layout and its taking.</summary>
[Collection(PlanningServer.Name)]
public sealed class ALayoutGrownStale(TestServer server)
{
    [Fact]
    public async Task After_a_session_was_moved_it_is_not_taken()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var mill = await week.PlanAsync("w2-02-visit-a-mill", AWeekToLayOut.Monday, null);
        var page = await week.LayOutAsync();
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync($"/week/move/{mill.Id}"), new() { ["Input.Date"] = "2026-03-20" }).RedirectedAsync();
        await RefusedAsync(week, page, "Something of this week was changed since it was laid out.");
    }

    [Fact]
    public async Task After_an_activity_was_added_it_is_not_taken()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync();
        var science = await week.Family.SubjectAsync("science");
        await week.Family.WithDbAsync(async db =>
        {
            var unit = await db.Units.Include(u => u.Subjects).Include(u => u.Activities).SingleAsync();
            unit.Add(new Activity(Guid.CreateVersion7(), "sieve", new ActivityFacts(2, 10, "Sieve the bran", ActivityKind.Making, "Sieve.", AdultNeed.Beside, 20, 0, ""), UnitSamples.Counting((science, 1))));
            await db.SaveChangesAsync();
        });
        await RefusedAsync(week, page, "Something of this week was changed since it was laid out.");
    }

    [Fact]
    public async Task After_an_appointment_came_it_is_not_taken()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync();
        await week.AppointmentAsync("Swimming", Data.Planning.AppointmentKind.LessonOut, AWeekToLayOut.Monday, 540, 60, "", week.Wren);
        await RefusedAsync(week, page, "Something of this week was changed since it was laid out.");
    }

    [Fact]
    public async Task A_layout_that_the_server_does_not_know_is_not_taken()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var page = await week.LayOutAsync();
        page.QuerySelector("form[action$='handler=Take'] input[name=job]")!.SetAttribute("value", Guid.CreateVersion7().ToString());
        await RefusedAsync(week, page, "The server no longer knows this layout");
    }

    [Fact]
    public async Task A_layout_of_another_week_is_not_taken_for_this_one()
    {
        var week = await AWeekToLayOut.MakeAsync(server);
        var other = await week.LayOutAsync("2026-W11");
        var page = await week.LayOutAsync();
        page.QuerySelector("form[action$='handler=Take'] input[name=job]")!.SetAttribute("value", other.QuerySelector("form[action$='handler=Take'] input[name=job]")!.GetAttribute("value"));
        await RefusedAsync(week, page, "The server no longer knows this layout");
    }

    private static async Task RefusedAsync(AWeekToLayOut week, AngleSharp.Html.Dom.IHtmlDocument page, string sentence)
    {
        var before = await week.RowsAsync();
        var answer = await week.TakeAsync(page).AnsweredAsync(HttpStatusCode.Conflict);
        Assert.StartsWith(sentence, answer.Text(".validation-summary-errors"), StringComparison.Ordinal);
        Assert.Equal(before, await week.RowsAsync());
        Assert.False(await week.Family.FromDbAsync(db => db.PlanSteps.AnyAsync()));
    }
}
