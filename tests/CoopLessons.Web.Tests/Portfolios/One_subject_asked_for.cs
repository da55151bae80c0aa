using System.Net;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Records;

namespace CoopLessons.Web.Tests.Portfolios;

[Collection(PlanningServer.Name)]
public sealed class One_subject_asked_for(TestServer server)
{
    [Fact]
    public async Task Is_two_taps_from_the_records_and_says_at_once_what_is_missing()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 30, [("health", 1)], what: "Brushing teeth");
        var records = await year.Guardian.GetAsync(year.Log.RecordsPath());
        var choosing = await year.Guardian.GetAsync(records.QuerySelector("a[href*='/records/subject']")!.GetAttribute("href")!);
        var health = await year.Guardian.GetAsync(Href(choosing, "Health"));
        Assert.Contains("No photo, paper or recording shows Health.", health.Texts("section.note li"));
        Assert.Contains("Brushing teeth", health.QuerySelector("#entries")!.ParentElement!.Plain(), StringComparison.Ordinal);
        var text = await year.TextAsync(Href(health, "PDF"));
        Assert.Contains("No photo, paper or recording shows Health.", text, StringComparison.Ordinal);
        Assert.Contains("Time 0:30 in hours and minutes", text, StringComparison.Ordinal);
    }

    // Source: 8 NYCRR § 100.10(e)(1): fire safety is taught, in whichever subject; the log has no minutes of it alone.
    [Fact]
    public async Task Claims_no_time_for_a_matter_that_is_taught_within_a_subject()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-NY", "home-instruction", new(2025, 7, 1));
        await log.GradeAsync(4);
        await log.WriteAsync(new(2025, 9, 8), 60, [("health", 1)], what: "Teeth");
        var page = await log.Guardian.GetAsync($"/records/subject?learner={log.Linnet}&year={log.YearId}&show=law-fire-safety");
        Assert.Equal(["Days, minutes and entries of this alone: the log does not tell them apart from Health."], page.Texts("section.note li"));
        Assert.Null(page.QuerySelector("#entries"));
        var text = PaperReader.AllText(await (await log.Guardian.OpenAsync(Href(page, "PDF"))).Content.ReadAsByteArrayAsync());
        Assert.Contains("the log does not tell them apart from Health", text, StringComparison.Ordinal);
        Assert.All(["Teeth", "Time ", "1:00"], words => Assert.DoesNotContain(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Is_shown_between_two_dates()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 30, [("science", 1)], what: "Seeds");
        await year.Log.WriteAsync(new(2025, 10, 8), 50, [("science", 1)], what: "Sprouts");
        await year.PhotoAsync(new(2025, 10, 9), caption: "Two leaves");
        await year.PhotoAsync(new(2025, 11, 9), caption: "Four leaves");
        var days = "&show=law-science&from=2025-10-01&to=2025-10-31";
        var page = await year.Guardian.GetAsync(year.Subject(days));
        Assert.Equal(["Sprouts 8 October 2025", "0:50"], page.Texts("#entries + ul :is(.row-main, .row-side)"));
        Assert.Contains("Two leaves", page.Plain(), StringComparison.Ordinal);
        Assert.DoesNotContain("Four leaves", page.Plain(), StringComparison.Ordinal);
        var text = await year.TextAsync(Href(page, "PDF"));
        Assert.Contains("1 October 2025 to 31 October 2025", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Seeds", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lists_books_on_paper_where_the_subject_is_read_as_reading_and_nowhere_else()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Family.WithDbAsync(async db =>
        {
            var book = new BookTitle(Guid.CreateVersion7(), new BookFacts("Fables", "Aesop", "", BookMeasure.Pages, null, "", BookSource.Own, "", null, ""));
            db.Books.Add(book);
            db.BookMeetings.Add(new BookMeeting(Guid.CreateVersion7(), book.Id, new MeetingFacts([year.Log.Linnet], BookUse.ReadAlone, new(2025, 9, 8), new(2025, 10, 1), false, "")));
            await db.SaveChangesAsync();
        });
        Assert.Contains("Fables Aesop", await year.TextAsync(Href(await year.Guardian.GetAsync(year.Subject("&show=law-language-arts")), "PDF")), StringComparison.Ordinal);
        Assert.DoesNotContain("Fables", await year.TextAsync(Href(await year.Guardian.GetAsync(year.Subject("&show=law-science")), "PDF")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("&from=2025-10-31&to=2025-10-01")]
    [InlineData("&from=2024-10-31")]
    [InlineData("&to=soon")]
    public async Task Asks_for_days_of_the_year_again_where_they_are_none(string days)
    {
        var year = await YearOfWork.OfAsync(server);
        using var answer = await year.Guardian.OpenAsync(year.Subject("&show=law-science" + days));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.StartsWith("Choose two days of", (await Visitor.ParseAsync(answer)).QuerySelector("#days-fault")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_not_found_where_nobody_has_such_a_subject()
    {
        var year = await YearOfWork.OfAsync(server);
        using var page = await year.Guardian.OpenAsync(year.Subject("&show=law-alchemy"));
        using var file = await year.Guardian.OpenAsync($"/records/{year.Log.Linnet}/{year.Log.YearId}/subject.pdf?show=law-alchemy");
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (page.StatusCode, file.StatusCode));
    }

    private static string Href(AngleSharp.Dom.IDocument page, string words) => page.QuerySelectorAll("a").First(a => a.Plain() == words).GetAttribute("href")!;
}
