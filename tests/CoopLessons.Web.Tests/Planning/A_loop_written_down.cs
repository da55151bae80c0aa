using System.Net;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class A_loop_written_down(TestServer server)
{
    private static Dictionary<string, string?> Two(PlanningFamily family) => new()
    {
        ["Input.Title"] = "Afternoons",
        ["Input.Learners"] = family.Wren.ToString(),
        ["Input.Steps[0].Title"] = "Maps",
        ["Input.Steps[0].SubjectId"] = family.Subjects["geography"].ToString(),
        ["Input.Steps[2].Title"] = "Songs",
        ["Input.Steps[2].SubjectId"] = family.Subjects["music"].ToString(),
        ["Input.Next"] = "2",
    };

    [Fact]
    public async Task Is_added_with_its_steps_and_the_one_that_comes_next()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/loops/new");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, Two(family));
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var loop = await family.Family.FromDbAsync(db => db.Loops.SingleAsync());
        Assert.Equal(["Maps", "Songs"], loop.Steps.Select(s => s.Title));
        Assert.Equal("Songs", loop.StepAhead(0).Title);
        Assert.Contains("next is Songs", (await family.Guardian.GetAsync("/week/plan")).QuerySelector("#loops")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keeps_the_ids_of_steps_that_stay_whatever_their_order()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.LoopAsync();
        var before = (await family.LoopOf(id)).Steps;
        var page = await family.Guardian.GetAsync($"/week/plan/loops/{id}");
        using var answer = await family.Guardian.SubmitAsync(page, new()
        {
            ["Input.Steps[0].Place"] = "3",
            ["Input.Steps[1].Title"] = "",
            ["Input.Steps[3].Title"] = "Letters",
            ["Input.Steps[3].SubjectId"] = family.Subjects["writing"].ToString(),
            ["Input.Steps[3].Place"] = "1",
        });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var loop = await family.LoopOf(id);
        Assert.Equal(["Letters", "Maps", "Birds"], loop.Steps.Select(s => s.Title));
        Assert.Equal([before[0].Id, before[2].Id], loop.Steps.Skip(1).Select(s => s.Id));
        // Songs came next and are gone: Birds came after them.
        Assert.Equal("Birds", loop.StepAhead(0).Title);
    }

    [Theory]
    [InlineData("Input.Title", "")]
    [InlineData("Input.Steps[0].SubjectId", "")]
    [InlineData("Input.Steps[0].Place", "0")]
    [InlineData("Input.Steps[0].Place", "first")]
    [InlineData("Input.Minutes", "1")]
    [InlineData("Input.Next", "third")]
    public async Task Is_not_saved_while_something_is_amiss(string field, string value)
    {
        var family = await PlanningFamily.MakeAsync(server);
        var fill = Two(family);
        fill[field] = value;
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/loops/new"), fill);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.QuerySelectorAll(".field-validation-error, .fault, .validation-summary-errors"));
        Assert.Equal("Songs", shown.QuerySelector("#Input_Steps_2__Title")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Loops.CountAsync()));
    }

    [Fact]
    public async Task Is_not_saved_without_a_step_or_a_child()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/loops/new"), new() { ["Input.Title"] = "Empty" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains("Write at least one step.", shown.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Tick at least one child.", shown.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_no_step_and_no_subject_of_another_family()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        var id = await family.LoopAsync();
        var theirs = (await other.LoopOf(await other.LoopAsync())).Steps[0].Id;
        foreach (var (field, value) in new[] { ("Input.Steps[0].Id", theirs), ("Input.Steps[0].SubjectId", other.Subjects["music"]), ("Input.Learners", other.Wren) })
        {
            using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/plan/loops/{id}"), new() { [field] = value.ToString() });
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Is_removed_with_its_sittings_after_a_question()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.LoopAsync();
        await family.SittingAsync(id, TestServer.Today);
        await family.SittingAsync(id, TestServer.Today.AddDays(1));
        var page = await family.Guardian.GetAsync($"/week/plan/loops/{id}?remove=true");
        Assert.Contains("2 planned sittings go from the plan", page.QuerySelector(".note.loss")!.TextContent, StringComparison.Ordinal);
        using var removed = await family.Guardian.SubmitAsync(page);
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.PlannedSessions.CountAsync()));
        using var twice = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.NotFound, twice.StatusCode);
    }
}
