using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Families;
using CoopLessons.Data.Credits;
using CoopLessons.Data.Families;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records.Courses;

[Collection(SharedServer.Name)]
public sealed class Marks_descriptions_and_the_transcript(TestServer server)
{
    private static readonly DayRange Year = new(new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30));

    private async Task<(KeptLog Log, string Home, Guid Id)> CourseAsync(Action<HighSchoolCourse>? change = null)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new DateOnly(2026, 3, 2), 60, [("science", 1)], what: "Yeast under the microscope");
        var course = new HighSchoolCourse(Guid.CreateVersion7(), log.Linnet, 0, new CourseTerms("Biology", CourseArea.Science, CourseLevel.Honors, Year, CreditBasis.Hours, new CreditCount(100)));
        course.AddRule(Guid.CreateVersion7(), new CourseRule(log.Subjects["science"], Year));
        change?.Invoke(course);
        await log.AddAsync(course);
        return (log, $"/records/{log.Linnet}/courses/{course.Id}", course.Id);
    }

    private static Task<HighSchoolCourse> RowAsync(KeptLog log) => log.Family.FromDbAsync(db => db.HighSchoolCourses.SingleAsync());

    [Theory]
    [InlineData("Graded", "A", "0.75", 75)]
    [InlineData("Graded", "F", "1", 0)]
    [InlineData("Passed", "", "0.5", 50)]
    [InlineData("NotPassed", "", "1", 0)]
    [InlineData("Open", "A", "1", null)]
    public async Task Give_the_credit_that_goes_with_the_mark(string kind, string mark, string awarded, int? credit)
    {
        var (log, home, _) = await CourseAsync();
        using var answer = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync(home + "/mark"), new() { ["Input.Kind"] = kind, ["Input.Mark"] = mark, ["Input.Awarded"] = awarded });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var row = await RowAsync(log);
        Assert.Equal((kind, kind == "Graded" ? mark : "", credit), (row.Marked.ToString(), row.Mark, row.Awarded));
    }

    [Theory]
    [InlineData("Graded", "", "1", "Choose a mark of your scale")]
    [InlineData("Graded", "Z", "1", "Your scale does not have this mark")]
    [InlineData("Graded", "A", "much", "Write the credit that you award")]
    public async Task Refuse_what_is_no_mark_or_no_credit(string kind, string mark, string awarded, string message)
    {
        var (log, home, _) = await CourseAsync();
        using var answer = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync(home + "/mark"), more: [new("Input.Mark", mark)], fill: new() { ["Input.Kind"] = kind, ["Input.Mark"] = null, ["Input.Awarded"] = awarded });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(message, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Draft_a_description_from_the_log_and_keep_it_only_when_it_is_saved()
    {
        var (log, home, _) = await CourseAsync();
        var page = await log.Guardian.GetAsync(home + "/description");
        Assert.Contains("Biology took 1:00 hours on 1 day from 2 March 2026 to 2 March 2026.", page.QuerySelector("textarea")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Work: Yeast under the microscope.", page.QuerySelector("textarea")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("", (await RowAsync(log)).Description);
        using var answer = await log.Guardian.SubmitAsync(page, new() { ["Text"] = "We looked at yeast.\r\nThen we baked." });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("We looked at yeast.\nThen we baked.", (await RowAsync(log)).Description);
    }

    [Fact]
    public async Task Never_set_a_new_draft_in_the_place_of_what_a_parent_wrote()
    {
        var (log, home, _) = await CourseAsync(c => c.Tell("In my own words."));
        foreach (var (way, text) in new[] { ("", "In my own words."), ("?draft=look", "In my own words."), ("?draft=below", "In my own words.\nBiology took"), ("?draft=instead", "Biology took") })
        {
            var page = await log.Guardian.GetAsync($"{home}/description{way}");
            Assert.StartsWith(text, page.QuerySelector("textarea")!.TextContent.TrimStart('\n').ReplaceLineEndings("\n"), StringComparison.Ordinal);
            Assert.Equal("In my own words.", (await RowAsync(log)).Description);
        }
    }

    [Fact]
    public async Task Make_a_transcript_of_one_page_with_what_the_parent_typed_and_no_more()
    {
        var (log, _, _) = await CourseAsync(c => c.SetMark(MarkKind.Graded, "B", new CreditCount(100)));
        var path = $"/records/{log.Linnet}/transcript";
        using (var answer = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync(path), new() { ["Input.FullName"] = "Linnet Alder", ["Input.School"] = "School at the mill" }))
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await log.Guardian.GetAsync(path);
        Assert.Contains("GPA, unweighted3.00 over 1.00 credits with a mark", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        Assert.Contains("GPA, weighted3.50 over 1.00 credits with a mark", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        using var file = await log.Guardian.OpenAsync(path + ".pdf");
        Assert.Equal("application/pdf", file.Content.Headers.ContentType!.MediaType);
        var text = PaperReader.AllText(await file.Content.ReadAsByteArrayAsync());
        Assert.All(["Linnet Alder", "School at the mill", "Biology", "3.50", "Made on 12 March 2026"], words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.All(["Born", "2016", "Address"], words => Assert.DoesNotContain(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Count_a_mark_that_earns_nothing_over_what_was_attempted()
    {
        var (log, _, _) = await CourseAsync(c => c.SetMark(MarkKind.Graded, "F", CreditCount.Zero));
        var other = new HighSchoolCourse(Guid.CreateVersion7(), log.Linnet, 1, new CourseTerms("Choir", CourseArea.Arts, CourseLevel.Usual, Year, CreditBasis.FinishedWork, new CreditCount(100)));
        other.SetMark(MarkKind.Graded, "A", new CreditCount(100));
        await log.AddAsync(other);
        var page = await log.Guardian.GetAsync($"/records/{log.Linnet}/transcript");
        // (0 × 1 + 4 × 1) ÷ 2; nothing is added for honors to a mark without points.
        Assert.Contains("GPA, weighted2.00 over 2.00 credits with a mark", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Earn_no_credit_any_more_where_the_scale_gives_a_mark_no_points()
    {
        var (log, home, _) = await CourseAsync(c => c.SetMark(MarkKind.Graded, "D", new CreditCount(100)));
        await log.AddAsync(Scale([new("A", 400), new("D", 0), new("F", 0)]));
        var page = (await log.Guardian.GetAsync($"/records/{log.Linnet}/transcript")).QuerySelector("main")!;
        Assert.Equal("0.00", page.QuerySelector("tfoot tr")!.Children[5].Plain());
        Assert.Contains("GPA, unweighted0.00 over 1.00 credits with a mark", page.Plain(), StringComparison.Ordinal);
        Assert.Contains("0.00 awarded", (await log.Guardian.GetAsync(home)).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stand_in_the_year_before_where_a_course_ends_in_the_summer_between_two()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.AddAsync(new SchoolYear(Guid.CreateVersion7(), "Ninth year", new DayRange(new DateOnly(2024, 8, 15), new DateOnly(2025, 5, 30)), Weekdays.MondayToFriday));
        HighSchoolCourse Course(string title, DateOnly last, int order) =>
            new(Guid.CreateVersion7(), log.Linnet, order, new CourseTerms(title, CourseArea.Science, CourseLevel.Usual, new DayRange(new DateOnly(2024, 8, 20), last), CreditBasis.FinishedWork, new CreditCount(100)));
        await log.AddAsync(Course("Weirs in summer", new DateOnly(2025, 6, 20), 1), Course("Biology", new DateOnly(2025, 5, 20), 0));
        var years = (await log.Guardian.GetAsync($"/records/{log.Linnet}/transcript")).QuerySelectorAll("tbody").Select(b => (b.QuerySelector("b")!.Plain(), b.QuerySelectorAll("th[scope='row']").Length));
        Assert.Equal([("Ninth year", 2)], years);
    }

    [Fact]
    public async Task Begin_with_the_credit_that_the_hours_make()
    {
        var (log, home, _) = await CourseAsync();
        await log.WriteAsync(new DateOnly(2026, 3, 3), 11 * 60, [("science", 1)]);
        // Twelve hours of 120.
        Assert.Equal("0.10", (await log.Guardian.GetAsync(home + "/mark")).QuerySelector("[name='Input.Awarded']")!.GetAttribute("value"));
    }

    private static GradingScale Scale(IReadOnlyList<GradeStep> steps)
    {
        var row = new GradingScale();
        row.Describe(new GradeScale(steps, 50, 100), CreditCount.CarnegieUnit, CreditCount.UsualCollegeCredits);
        return row;
    }

    [Fact]
    public async Task Say_that_a_transcript_does_not_fit_rather_than_spill()
    {
        var (log, _, _) = await CourseAsync();
        await log.AddAsync([.. Enumerable.Range(1, 70).Select(n => (object)new HighSchoolCourse(Guid.CreateVersion7(), log.Linnet, n, new CourseTerms($"Course {n}", CourseArea.Other, CourseLevel.Usual, Year, CreditBasis.Hours, new CreditCount(25))))]);
        var path = $"/records/{log.Linnet}/transcript";
        Assert.Contains("It does not fit", (await log.Guardian.GetAsync(path)).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        using var file = await log.Guardian.OpenAsync(path + ".pdf");
        Assert.Equal(path, file.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Follow_a_scale_of_the_familys_own()
    {
        var (log, _, _) = await CourseAsync(c => c.SetMark(MarkKind.Graded, "A", new CreditCount(100)));
        var page = await log.Guardian.GetAsync("/records/marks?begin=plus");
        Assert.Equal("A-", page.QuerySelector("[name='Input.Steps[1].Mark']")!.GetAttribute("value"));
        using (var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.Steps[0].Mark"] = "A+", ["Input.HonorsAdds"] = "1" }))
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var scale = await log.Family.FromDbAsync(db => db.GradingScales.SingleAsync());
        Assert.Equal((12, "A+", 100), (scale.Steps.Count, scale.Steps[0].Mark, scale.HonorsAdds));
        Assert.Contains("Biology: A", (await log.Guardian.GetAsync("/records/marks")).QuerySelector(".note.look")!.Plain(), StringComparison.Ordinal);
        using var faulty = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/marks"), new() { ["Input.Steps[1].Points"] = "many", ["Input.Steps[2].Mark"] = "A+" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, faulty.StatusCode);
        var text = await faulty.Content.ReadAsStringAsync();
        Assert.Contains("Points go from 0 to 10", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stand_on_the_records_page_of_a_learner_in_high_school()
    {
        var (log, _, _) = await CourseAsync();
        Assert.Contains("High school: courses, credits and transcript", (await log.Guardian.GetAsync($"/records?learner={log.Linnet}")).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        var young = await KeptLog.OfAsync(server, "Linnet");
        await young.WriteAsync(new DateOnly(2026, 3, 2), 60, [("science", 1)]);
        var records = (await young.Guardian.GetAsync($"/records?learner={young.Linnet}")).QuerySelector("main")!.Plain();
        Assert.DoesNotContain("High school: courses", records, StringComparison.Ordinal);
        Assert.Contains("Credit before high school", records, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_no_helpers_to_see()
    {
        var (log, home, _) = await CourseAsync();
        var helper = await server.HelperAsync(log.Family);
        foreach (var path in new[] { home, $"/records/{log.Linnet}/transcript.pdf", "/records/marks", $"/records/{log.Linnet}/tests" })
        {
            using var answer = await helper.OpenAsync(path);
            Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        }
    }
}
