using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Portfolios;

[Collection(PlanningServer.Name)]
public sealed class A_report_on_a_term(TestServer server)
{
    // Source: 8 NYCRR § 100.10(g): four reports a year with the hours of the quarter, the material covered in each subject, a grade
    // or a narrative, and an explanation where less than 80 percent of a subject's plan was covered.
    [Fact]
    public async Task Is_drafted_in_new_yorks_shape_for_the_first_quarter()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        await log.FillWeekdaysAsync(new(2025, 8, 4), new(2025, 9, 26), _ => 90, "science");
        var list = await log.Guardian.GetAsync(log.Terms());
        Assert.Equal(["Quarterly report 1 of 4", "Quarterly report 2 of 4", "Quarterly report 3 of 4", "Quarterly report 4 of 4"], list.Texts("ul.rows h2"));
        var page = await log.DraftAsync(list);
        Assert.Contains("1 July 2025 to 30 September 2025", page.Plain(), StringComparison.Ordinal);
        Assert.Contains("60:00 hours and minutes", page.Plain(), StringComparison.Ordinal);
        Assert.Contains("Linnet worked on: Read and wrote.", page.QuerySelector("#law-science-1-6 textarea")!.TextContent, StringComparison.Ordinal);
        // Source: 8 NYCRR § 100.10(e)(2)(i), the subjects of grades 1 to 6; those that are asked for in every grade stand after them.
        Assert.Equal(
            ["Arithmetic", "Reading", "Spelling", "Writing", "The English language", "Geography", "United States history", "Science", "Health education", "Music", "Visual arts", "Physical education"],
            page.Texts("section.sheet[id^=law-] h2").Take(12));
        var text = await log.PdfAsync(page);
        Assert.Contains("Hours 60:00 in hours and minutes, 60.00 in decimal hours", text, StringComparison.Ordinal);
        Assert.Contains("Asked for by 8 NYCRR § 100.10", text, StringComparison.Ordinal);
        Assert.Contains("Standing Draft, not finished", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Attendance", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Asks_for_an_explanation_where_less_was_covered_than_the_law_lets_pass()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        await PlanAsync(log, done: 3, notDone: 2);
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        var science = page.QuerySelector("#law-science-1-6")!;
        Assert.Contains("Of 5 planned lessons and activities 3 were done: 60 per cent.", science.Plain(), StringComparison.Ordinal);
        var why = science.QuerySelector("textarea[name$=Explanation]")!.GetAttribute("name")!;

        // The fact stands beside the field; the reason is the parent's.
        Assert.Contains("2 of 5 planned lessons and activities were not done in this term.", science.Plain(), StringComparison.Ordinal);
        Assert.Equal("", science.QuerySelector("textarea[name$=Explanation]")!.TextContent.Trim());
        using var unsaid = await log.Guardian.SubmitAsync(page, within: "form.wide", more: [new("finish", "true")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, unsaid.StatusCode);
        Assert.Contains("Less than 80 per cent of the plan was covered: say why.", (await Visitor.ParseAsync(unsaid)).QuerySelector("#law-science-1-6")!.Plain(), StringComparison.Ordinal);

        using var finished = await log.Guardian.SubmitAsync(page, new() { [why] = "The creek was in flood for two weeks." }, "form.wide", more: [new("finish", "true")]);
        Assert.Equal(HttpStatusCode.Redirect, finished.StatusCode);
        var text = await log.PdfAsync(page);
        Assert.Contains("Why less was covered than planned: The creek was in flood for two weeks.", text, StringComparison.Ordinal);
        Assert.Contains("Of 5 planned lessons and activities 3 were done: 60 per cent.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Draft", text, StringComparison.Ordinal);
    }

    // Source: 8 NYCRR § 100.10(e)(1): the dangers of fire are to be taught, in whichever subject; no hours are set for it.
    [Fact]
    public async Task Claims_no_hours_for_a_matter_that_is_taught_within_a_subject()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        await log.WriteAsync(new(2025, 9, 8), 60, [("health", 1)], what: "Teeth");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        Assert.Contains("Linnet worked on: Teeth.", page.QuerySelector("#law-health-1-6 textarea")!.TextContent, StringComparison.Ordinal);
        var fire = page.QuerySelector("#law-fire-safety")!;
        Assert.Contains("Belongs within Health, without hours of its own.", fire.Plain(), StringComparison.Ordinal);
        Assert.Equal("", fire.QuerySelector("textarea")!.TextContent.Trim());
        var text = await log.PdfAsync(page);
        Assert.Contains("Fire and arson prevention and safety (within Health)", text, StringComparison.Ordinal);
        Assert.Equal(1, text.Split("Teeth").Length - 1);
    }

    [Fact]
    public async Task Says_once_what_two_of_its_subjects_share()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        await log.WriteAsync(new(2025, 9, 8), 60, [("writing", 1)], what: "Twelve words");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        Assert.Contains("Linnet worked on: Twelve words.", page.QuerySelector("#law-spelling textarea")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("As under Spelling.", page.QuerySelector("#law-writing textarea")!.TextContent.Trim());
        // Where there is nothing to be said, nothing is referred to.
        log = await server.UnderAsync("US-NY", "home-instruction");
        page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        Assert.Equal("", page.QuerySelector("#law-writing textarea")!.TextContent.Trim());
    }

    // Source: S.C. Code § 59-65-47: twice a year, attendance and the child's progress in each basic subject; no hours are asked for.
    [Fact]
    public async Task Is_drafted_in_south_carolinas_shape_for_the_first_half()
    {
        var log = await server.UnderAsync("US-SC", "option-3-association");
        await log.FillWeekdaysAsync(new(2025, 8, 4), new(2025, 9, 26), _ => 300, "mathematics");
        var list = await log.Guardian.GetAsync(log.Terms());
        Assert.Equal(["Half-yearly report 1 of 2", "Half-yearly report 2 of 2"], list.Texts("ul.rows h2"));
        var page = await log.DraftAsync(list);
        Assert.Equal(5, page.QuerySelectorAll("section.sheet[id^=law-]").Length);
        var text = await log.PdfAsync(page);
        Assert.Contains("Attendance 40 days of school", text, StringComparison.Ordinal);
        Assert.DoesNotContain("decimal hours", text, StringComparison.Ordinal);
        Assert.Contains("Linnet worked on: Read and wrote.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stays_as_it_was_sent_and_says_that_the_log_went_on()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        var id = await log.WriteAsync(new(2025, 9, 8), 60, [("science", 1)], what: "Seeds");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        using var finished = await log.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = "A quiet autumn." }, "form.wide", more: [new("finish", "true")]);
        Assert.Equal(HttpStatusCode.Redirect, finished.StatusCode);
        var sent = await log.BytesAsync(page);
        await log.ChangeAsync(id, new(2025, 9, 8), 75, [("science", 1)], what: "Seeds");
        Assert.Equal(sent, await log.BytesAsync(page));
        var again = await log.Guardian.GetAsync(page.Location.PathName);
        Assert.Contains("it now holds 1:15 hours", again.Plain(), StringComparison.Ordinal);

        // Nor does what the family and the child are called later.
        await log.Family.WithDbAsync(async db =>
        {
            var linnet = await db.Learners.SingleAsync(l => l.Id == log.Linnet);
            linnet.Describe("Linnea", linnet.BirthDate, linnet.Allergies, linnet.AllergyNote);
            await db.SaveChangesAsync();
        });
        Assert.Equal(sent, await log.BytesAsync(page));

        // A page that was left open cannot change it.
        using var late = await log.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = "Otherwise." }, "form.wide");
        Assert.Equal(HttpStatusCode.Redirect, late.StatusCode);
        Assert.Equal(sent, await log.BytesAsync(page));
        using var thrown = await log.Guardian.SubmitAsync(page, within: "form[action$='handler=Remove']");
        Assert.Equal(sent, await log.BytesAsync(page));
    }

    [Fact]
    public async Task Is_thrown_away_unless_somebody_changed_it_meanwhile()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        using (var saved = await log.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = "From the other parent." }, "form.wide"))
            Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        using (var thrown = await log.Guardian.SubmitAsync(page, within: "form[action$='handler=Remove']"))
            Assert.Equal(page.Location.PathName, thrown.Headers.Location!.OriginalString);
        page = await log.Guardian.GetAsync(page.Location.PathName);
        Assert.Contains("it was not thrown away", page.Plain(), StringComparison.Ordinal);
        using (var thrown = await log.Guardian.SubmitAsync(page, within: "form[action$='handler=Remove']"))
            Assert.StartsWith("/records/terms?", thrown.Headers.Location!.OriginalString, StringComparison.Ordinal);
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.TermReports.CountAsync()));
    }

    [Fact]
    public async Task Is_not_finished_before_its_term_is_over()
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()), nth: 2);
        using var answer = await log.Guardian.SubmitAsync(page, within: "form.wide", more: [new("finish", "true")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("It can be finished when it is over.", (await Visitor.ParseAsync(answer)).Plain(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.First", "2025-12-01", "Choose two days of")]
    [InlineData("Input.Title", "", "Say what the report is called.")]
    [InlineData("Input.Subjects[0].PerCent", "140", "A share is 0 to 100 per cent.")]
    [InlineData("Input.Subjects[0].PerCent", "most", "")]
    public async Task Keeps_what_was_typed_where_something_cannot_be(string field, string value, string message)
    {
        var log = await server.UnderAsync("US-NY", "home-instruction");
        var page = await log.DraftAsync(await log.Guardian.GetAsync(log.Terms()));
        using var answer = await log.Guardian.SubmitAsync(page, new() { [field] = value, ["Input.Opening"] = "Typed already." }, "form.wide");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var again = await Visitor.ParseAsync(answer);
        Assert.Contains(message, again.Plain(), StringComparison.Ordinal);
        Assert.Equal("Typed already.", again.QuerySelector("textarea[name='Input.Opening']")!.TextContent.Trim());
    }

    [Fact]
    public async Task Can_be_of_the_familys_own_where_no_law_asks_for_one()
    {
        var log = await server.UnderAsync("US-MO", "home-school");
        var list = await log.Guardian.GetAsync(log.Terms());
        Assert.Contains("asks for no report on terms", list.Plain(), StringComparison.Ordinal);
        using var begun = await log.Guardian.SubmitAsync(list, new() { ["part"] = "1-2" }, "select#part");
        var page = await log.Guardian.GetAsync(begun.Headers.Location!.OriginalString);
        Assert.Equal("Half-yearly report 1 of 2", page.QuerySelector("h1")!.Plain());
        using var twice = await log.Guardian.SubmitAsync(list, new() { ["part"] = "1-2" }, "select#part");
        Assert.Equal(begun.Headers.Location, twice.Headers.Location);
        Assert.Equal(1, await log.Family.FromDbAsync(db => db.TermReports.CountAsync()));
        using var none = await log.Guardian.SubmitAsync(list, new() { ["part"] = "5-4" }, "select#part");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    /// <summary>Lessons in September, so many done and so many not.</summary>
    private static Task PlanAsync(KeptLog log, int done, int notDone) => log.Family.WithDbAsync(async db =>
    {
        var course = new Course(Guid.CreateVersion7(), new CourseFacts("Science", log.Subjects["science"], [log.Linnet], 30, 5, AdultNeed.Alone, null, 1, true));
        db.Add(course);
        for (var i = 0; i < done + notDone; i++)
        {
            var day = new DateOnly(2025, 9, 1).AddDays(i);
            var session = PlannedSession.OfCourse(Guid.CreateVersion7(), course.Id, day, null, i, [log.Linnet]);
            db.Add(session);
            if (i < done)
            {
                var facts = new EntryFacts(day, null, "Lesson", Place.Home, "", [new LearnerTime(log.Linnet, new Minutes(30))], [new SubjectWeight(log.Subjects["science"], 1)], []);
                db.Add(session.MarkDone(Guid.CreateVersion7(), facts, new Author(log.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            }
            else
            {
                session.NotToday();
            }
        }

        await db.SaveChangesAsync();
    });
}
