using System.Net;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Portfolios;

[Collection(PlanningServer.Name)]
public sealed class What_a_report_on_a_term_counts(TestServer server)
{
    private static readonly DateOnly July = new(2025, 7, 1);

    [Fact]
    public async Task Counts_as_done_what_this_childs_log_of_the_term_holds()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren").StandsAsync("US-NY", "home-instruction", July);
        await log.GradeAsync(4);
        var course = Course(log, [log.Linnet, log.Learners["Wren"]]);
        Guid[] both = [log.Linnet, log.Learners["Wren"]];
        PlannedSession Lesson(DateOnly day, int order) => PlannedSession.OfCourse(Guid.CreateVersion7(), course.Id, day, null, order, both);
        var science = log.Subjects["science"];
        await log.AddAsync(
            [course, .. Done(log, Lesson(new(2025, 9, 1), 0), new(2025, 9, 1), "Linnet", science), .. Done(log, Lesson(new(2025, 9, 2), 1), new(2025, 9, 2), "Wren", science),
            .. Done(log, Lesson(new(2025, 9, 30), 2), new(2025, 10, 3), "Linnet", science)]);
        var list = await log.Guardian.GetAsync(log.Terms());
        Assert.Contains("Of 3 planned lessons and activities 1 was done: 33 per cent.", (await log.DraftAsync(list)).QuerySelector("#law-science-1-6")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Counts_a_sitting_of_a_loop_under_the_step_for_which_it_was_meant()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        LoopStep[] steps = [new(Guid.CreateVersion7(), "Clay", log.Subjects["art"]), new(Guid.CreateVersion7(), "Songs", log.Subjects["music"])];
        var loop = new LessonLoop(Guid.CreateVersion7(), new LoopFacts("Afternoons", steps, 30, 2, [log.Linnet], AdultNeed.Alone, false));
        await log.Family.WithDbAsync(async db =>
        {
            db.Add(loop);
            for (var i = 0; i < 8; i++)
            {
                var sitting = PlannedSession.OfLoop(Guid.CreateVersion7(), loop.Id, new DateOnly(2025, 9, 1).AddDays(i), null, i, [log.Linnet]);
                db.Add(sitting);
                // Half of the sittings were held, then none.
                if (i >= 4)
                {
                    sitting.NotToday();
                    continue;
                }

                db.Add(Done(log, sitting, sitting.Date, "Linnet", steps[i % 2].SubjectId)[1]);
                db.Entry(sitting).Property(s => s.StepId).CurrentValue = steps[i % 2].Id;
            }

            await db.SaveChangesAsync();
        });
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        // Where the bookmark stands today changes nothing.
        for (var next = 0; next < 2; next++)
        {
            await log.Family.WithDbAsync(async db =>
            {
                (await db.Loops.SingleAsync()).GoTo(steps[next].Id);
                await db.SaveChangesAsync();
            });
            page = await log.Guardian.GetAsync(page.Location.PathName);
            foreach (var subject in new[] { "#law-visual-arts", "#law-music-1-6" })
                Assert.Contains("Of 4 planned lessons and activities 2 were done: 50 per cent.", page.QuerySelector(subject)!.Plain(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Keeps_in_its_draft_what_was_written_while_the_grade_was_another()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        var field = page.QuerySelector("#law-science-1-6 textarea")!.GetAttribute("name")!;
        using (var saved = await log.Guardian.SubmitAsync(page, new() { [field] = "She drew every seed." }, "form.wide"))
            Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        await SetGradeAsync(log, 7);
        page = await log.Guardian.GetAsync(page.Location.PathName);
        Assert.Null(page.QuerySelector("#law-science-1-6"));
        using (var saved = await log.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = "A quiet autumn." }, "form.wide"))
            Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        await SetGradeAsync(log, 4);
        page = await log.Guardian.GetAsync(page.Location.PathName);
        Assert.Equal("She drew every seed.", page.QuerySelector("#law-science-1-6 textarea")!.TextContent.Trim());
    }

    [Fact]
    public async Task Is_told_under_the_law_that_held_when_its_term_ended()
    {
        var log = await server.UnderAsync("US-SC", "option-3-association");
        await log.StandAsync("US-NY", "home-instruction", new(2026, 2, 1), SpanReason.Moves);
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        Assert.Equal("Half-yearly report 1 of 2", page.QuerySelector("h1")!.Plain());
        Assert.Equal(5, page.QuerySelectorAll("section.sheet[id^=law-]").Length);
        Assert.Contains("South Carolina", await log.PdfAsync(page), StringComparison.Ordinal);
    }

    private static Task SetGradeAsync(KeptLog log, int grade) => log.Family.WithDbAsync(db =>
        db.LearnerGrades.Where(g => g.LearnerId == log.Linnet).ExecuteUpdateAsync(s => s.SetProperty(g => g.Grade, grade)));

    private static Course Course(KeptLog log, IReadOnlyList<Guid> learners) =>
        new(Guid.CreateVersion7(), new CourseFacts("Science", log.Subjects["science"], learners, 30, 5, AdultNeed.Alone, null, 1, true));

    /// <summary>A lesson planned for all of the course, and logged on some day for one child.</summary>
    private static object[] Done(KeptLog log, PlannedSession session, DateOnly loggedOn, string who, Guid subject)
    {
        var facts = new EntryFacts(loggedOn, null, "Lesson", Place.Home, "", [new LearnerTime(log.Learners[who], new Minutes(30))], [new SubjectWeight(subject, 1)], []);
        return [session, session.MarkDone(Guid.CreateVersion7(), facts, new Author(log.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime)];
    }
}
