using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class The_bookmark_of_a_course(TestServer server)
{
    private static string Title(AngleSharp.Dom.IDocument page, Guid session) => page.QuerySelector(PlannedDay.Line(session) + " .strip-title")!.TextContent;

    [Fact]
    public async Task Moves_on_with_a_lesson_done_and_back_with_one_taken_back()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        var lesson = await family.LessonAsync(course, TestServer.Today);
        Assert.Equal("Mathematics, lesson 61", Title(await family.TodayAsync(), lesson));
        await family.DoneAsync(lesson);
        Assert.Equal(62, (await family.CourseOf(course)).NextLesson);
        Assert.Equal((SessionState.Done, 61), ((await family.SessionOf(lesson)).State, (await family.SessionOf(lesson)).LessonNumber));
        Assert.Equal("Mathematics, lesson 61", Title(await family.TodayAsync(), lesson));
        var entry = await family.Family.FromDbAsync(db => db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects).SingleAsync());
        Assert.Equal("Mathematics, lesson 61", entry.What);
        Assert.Equal((family.Linnet, 30), entry.Times.Select(t => (t.LearnerId, t.Minutes)).Single());
        Assert.Equal(family.Subjects["mathematics"], Assert.Single(entry.Subjects).SubjectId);

        await family.TakeBackAsync(lesson);
        Assert.Equal(61, (await family.CourseOf(course)).NextLesson);
        Assert.Equal(SessionState.Planned, (await family.SessionOf(lesson)).State);
    }

    [Fact]
    public async Task Moves_once_where_the_tap_is_sent_twice()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        var lesson = await family.LessonAsync(course, TestServer.Today);
        var page = await family.TodayAsync();
        using var first = await family.Guardian.SubmitAsync(page, within: PlannedDay.Form(lesson, "Done"));
        using var second = await family.Guardian.SubmitAsync(page, within: PlannedDay.Form(lesson, "Done"));
        Assert.Equal(62, (await family.CourseOf(course)).NextLesson);
        Assert.Equal(1, await family.Family.FromDbAsync(db => db.LogEntries.CountAsync()));
    }

    [Fact]
    public async Task Follows_an_entry_that_is_removed_and_restored()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        var lesson = await family.LessonAsync(course, TestServer.Today);
        await family.DoneAsync(lesson);
        var path = $"/log/{(await family.SessionOf(lesson)).EntryId}";
        using var removed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), within: "form[action*='handler=Remove']");
        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.Equal(61, (await family.CourseOf(course)).NextLesson);
        using var restored = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), within: "form[action*='handler=Restore']");
        Assert.Equal(HttpStatusCode.Redirect, restored.StatusCode);
        Assert.Equal(62, (await family.CourseOf(course)).NextLesson);
        Assert.Equal((SessionState.Done, 61), ((await family.SessionOf(lesson)).State, (await family.SessionOf(lesson)).LessonNumber));
    }

    [Fact]
    public async Task Stays_where_an_earlier_lesson_is_taken_back()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        var (early, late) = (await family.LessonAsync(course, TestServer.Today), await family.LessonAsync(course, TestServer.Today, 600));
        await family.DoneAsync(early);
        await family.DoneAsync(late);
        Assert.Equal(63, (await family.CourseOf(course)).NextLesson);
        await family.TakeBackAsync(early);
        Assert.Equal(63, (await family.CourseOf(course)).NextLesson);
        await family.TakeBackAsync(late);
        Assert.Equal(62, (await family.CourseOf(course)).NextLesson);
    }

    [Fact]
    public async Task Is_counted_forward_over_the_lessons_that_are_planned_from_today_on()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        await family.LessonAsync(course, TestServer.Today.AddDays(-1));
        await family.LessonAsync(course, TestServer.Today.AddDays(1));
        await family.LessonAsync(course, TestServer.Today);
        var titles = (await family.Guardian.GetAsync("/week/2026-W11")).QuerySelectorAll(".day .row-main a").Select(a => a.TextContent);
        // Wednesday's went by: done now, it would be the next one, as would today's.
        Assert.Equal(["Mathematics, lesson 61", "Mathematics, lesson 61", "Mathematics, lesson 62"], titles);
    }

    [Fact]
    public async Task Stands_still_once_the_last_lesson_is_done()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync(next: 120);
        var (last, more) = (await family.LessonAsync(course, TestServer.Today), await family.LessonAsync(course, TestServer.Today, 600));
        await family.DoneAsync(last);
        Assert.Equal(121, (await family.CourseOf(course)).NextLesson);
        Assert.Equal("Mathematics", Title(await family.TodayAsync(), more));
        await family.DoneAsync(more);
        Assert.Equal(121, (await family.CourseOf(course)).NextLesson);
        await family.TakeBackAsync(more);
        Assert.Equal(121, (await family.CourseOf(course)).NextLesson);
    }

    [Fact]
    public async Task Moves_on_with_a_lesson_done_with_changes()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        var lesson = await family.LessonAsync(course, TestServer.Today);
        var form = await family.Guardian.GetAsync($"/log/new?session={lesson}");
        Assert.Equal("Mathematics, lesson 61", form.QuerySelector("#Input_What")!.GetAttribute("value"));
        using var answer = await family.Guardian.SubmitAsync(form, new() { ["Input.Length"] = "40" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(62, (await family.CourseOf(course)).NextLesson);
    }

    [Fact]
    public async Task Says_the_lesson_and_the_minutes_of_a_shortened_sitting()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var lesson = await family.LessonAsync(await family.CourseAsync(), TestServer.Today);
        await family.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == lesson)).Last(15);
            await db.SaveChangesAsync();
        });
        Assert.Contains("15", (await family.TodayAsync()).QuerySelector(PlannedDay.Line(lesson) + " .strip-who")!.TextContent, StringComparison.Ordinal);
        await family.DoneAsync(lesson);
        Assert.Equal(15, await family.Family.FromDbAsync(db => db.LogRevisions.Select(r => r.Times.Single().Minutes).SingleAsync()));
    }
}
