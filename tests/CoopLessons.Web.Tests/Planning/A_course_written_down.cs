using System.Net;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class A_course_written_down(TestServer server)
{
    private static Task<HttpResponseMessage> SendAsync(PlanningFamily family, AngleSharp.Dom.IDocument page, Dictionary<string, string?>? fill = null) =>
        family.Guardian.SubmitAsync(page, new Dictionary<string, string?>(fill ?? [])
        {
            ["Input.Title"] = fill?.GetValueOrDefault("Input.Title", "Mathematics") ?? "Mathematics",
            ["Input.SubjectId"] = fill?.GetValueOrDefault("Input.SubjectId", null) ?? family.Subjects["mathematics"].ToString(),
            ["Input.Learners"] = fill is not null && fill.TryGetValue("Input.Learners", out var learner) ? learner : family.Linnet.ToString(),
        });

    [Fact]
    public async Task Is_added_once_and_stands_in_the_overview()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/courses/new");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await SendAsync(family, page, new() { ["Input.NextLesson"] = "61", ["Input.Lessons"] = "120", ["Input.Need"] = "HandsOn", ["Input.Morning"] = "true" });
            Assert.Equal("/week/plan", answer.Headers.Location!.OriginalString);
        }

        var course = await family.Family.FromDbAsync(db => db.Courses.SingleAsync());
        Assert.Equal((30, 5, AdultNeed.HandsOn, 61, 120, true), (course.Minutes, course.PerWeek, course.Need, course.NextLesson, course.Lessons!.Value, course.Morning));
        Assert.Equal([family.Linnet], course.Learners);
        Assert.Contains("next is lesson 61 of 120", (await family.Guardian.GetAsync("/week/plan")).QuerySelector("#courses")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Title", " ", "Input.Title")]
    [InlineData("Input.Title", "\u200B", "Input.Title")]
    [InlineData("Input.Minutes", "4", "Input.Minutes")]
    [InlineData("Input.Minutes", "241", "Input.Minutes")]
    [InlineData("Input.Minutes", "half an hour", "Input.Minutes")]
    [InlineData("Input.Minutes", "", "Input.Minutes")]
    [InlineData("Input.PerWeek", "0", "Input.PerWeek")]
    [InlineData("Input.PerWeek", "8", "Input.PerWeek")]
    [InlineData("Input.NextLesson", "0", "Input.NextLesson")]
    [InlineData("Input.NextLesson", "122", "Input.NextLesson")]
    [InlineData("Input.Lessons", "1000", "Input.Lessons")]
    [InlineData("Input.Need", "Sometimes", "Input.Need")]
    [InlineData("Input.Learners", null, "Input_Learners-fault")]
    public async Task Is_not_saved_while_something_is_amiss(string field, string? value, string where)
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.CourseAsync();
        var page = await family.Guardian.GetAsync($"/week/plan/courses/{id}");
        using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Title"] = "Sums 🧮", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty((shown.QuerySelector($"[data-valmsg-for='{where}'].field-validation-error") ?? shown.GetElementById(where))!.TextContent);
        if (field != "Input.Title")
            Assert.Equal("Sums 🧮", shown.QuerySelector("#Input_Title")!.GetAttribute("value"));
        Assert.Equal("Mathematics", (await family.CourseOf(id)).Title);
    }

    [Fact]
    public async Task Is_not_saved_without_a_subject()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/courses/new"), new() { ["Input.Title"] = "Sums", ["Input.Learners"] = family.Wren.ToString() });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Choose the subject", (await Visitor.ParseAsync(answer)).QuerySelector("#subject-fault")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_changed_set_aside_and_brought_back()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.CourseAsync();
        using var changed = await SendAsync(family, await family.Guardian.GetAsync($"/week/plan/courses/{id}"), new() { ["Input.Title"] = "Sums", ["Input.SetAside"] = "true", ["Input.NextLesson"] = "121" });
        var course = await family.CourseOf(id);
        Assert.Equal(("Sums", true, 121), (course.Title, course.SetAside, course.NextLesson));
        var overview = (await family.Guardian.GetAsync("/week/plan")).QuerySelector("#courses")!.TextContent;
        Assert.Contains("all 120 lessons are done", overview, StringComparison.Ordinal);
        Assert.Contains("set aside", overview, StringComparison.Ordinal);
        using var back = await SendAsync(family, await family.Guardian.GetAsync($"/week/plan/courses/{id}"), new() { ["Input.SetAside"] = null });
        Assert.False((await family.CourseOf(id)).SetAside);
    }

    [Fact]
    public async Task Keeps_what_was_typed_where_somebody_else_saved_first()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.CourseAsync();
        var (mine, theirs) = (await family.Guardian.GetAsync($"/week/plan/courses/{id}"), await family.Guardian.GetAsync($"/week/plan/courses/{id}"));
        using var first = await SendAsync(family, theirs, new() { ["Input.Title"] = "Theirs" });
        using var second = await SendAsync(family, mine, new() { ["Input.Title"] = "Mine" });
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var shown = await Visitor.ParseAsync(second);
        Assert.Equal("Mine", shown.QuerySelector("#Input_Title")!.GetAttribute("value"));
        Assert.Equal("Theirs", (await family.CourseOf(id)).Title);
        using var meant = await family.Guardian.SubmitAsync(shown);
        Assert.Equal("Mine", (await family.CourseOf(id)).Title);
    }

    [Fact]
    public async Task Takes_no_child_and_no_subject_of_another_family()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        foreach (var foreign in new Dictionary<string, string?>[] { new() { ["Input.Learners"] = other.Linnet.ToString() }, new() { ["Input.SubjectId"] = other.Subjects["mathematics"].ToString() } })
        {
            using var answer = await SendAsync(family, await family.Guardian.GetAsync("/week/plan/courses/new"), foreign);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Courses.CountAsync()));
    }

    [Fact]
    public async Task Is_removed_after_a_question_that_says_what_goes()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.CourseAsync();
        var (done, open) = (await family.LessonAsync(id, TestServer.Today), await family.LessonAsync(id, TestServer.Today.AddDays(1)));
        await family.DoneAsync(done);
        var page = await family.Guardian.GetAsync($"/week/plan/courses/{id}?remove=true");
        var question = page.QuerySelector(".note.loss")!.TextContent;
        Assert.Contains("1 planned lesson goes from the plan", question, StringComparison.Ordinal);
        Assert.Contains("the one that is done stays", question, StringComparison.Ordinal);
        Assert.Equal(2, await family.Family.FromDbAsync(db => db.PlannedSessions.CountAsync()));

        using var changed = await SendAsync(family, await family.Guardian.GetAsync($"/week/plan/courses/{id}"), new() { ["Input.Title"] = "Sums" });
        using var stale = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Conflict, stale.StatusCode);
        using var removed = await family.Guardian.SubmitAsync(await Visitor.ParseAsync(stale));
        Assert.Equal("/week/plan", removed.Headers.Location!.OriginalString);
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.PlannedSessions.CountAsync()));
        Assert.Equal(1, await family.Family.FromDbAsync(db => db.LogEntries.CountAsync()));
        // What was logged opens still, and can be struck out and restored.
        var entry = await family.Family.FromDbAsync(db => db.LogEntries.Select(e => e.Id).SingleAsync());
        using var struck = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/log/{entry}"), within: "form[action*='handler=Remove']");
        Assert.Equal(HttpStatusCode.Redirect, struck.StatusCode);
    }
}
