using System.Net;
using System.Text;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class Reading_lists(TestServer server)
{
    private static async Task<(BookFamily Family, Guid Year)> KeptAsync(TestServer server)
    {
        var family = await BookFamily.MakeAsync(server);
        var (weir, race) = (await family.BookAsync("The Weir", author: "Olive", isbn: "9780110002224"), await family.BookAsync("=The Race"));
        Task Meet(Guid book, MeetingFacts facts) => family.Plan.AddAsync(id => new BookMeeting(id, book, facts));
        await Meet(weir, new([family.Plan.Wren, family.Plan.Linnet], BookUse.Heard, new(2025, 9, 1), new(2025, 10, 3), false, ""));
        await Meet(weir, new([family.Plan.Linnet], BookUse.ReadAlone, new(2026, 3, 2), null, false, ""));
        await Meet(race, new([family.Plan.Wren], BookUse.ReadAlone, new(2025, 11, 3), new(2025, 11, 7), true, "hard for Wren"));
        await Meet(race, new([family.Plan.Wren], BookUse.LookedThrough, new(2024, 11, 3), new(2025, 6, 30), false, ""));
        return (family, await family.Family.FromDbAsync(db => db.SchoolYears.Select(y => y.Id).SingleAsync()));
    }

    [Fact]
    public async Task Hold_what_each_child_met_in_the_year_and_how()
    {
        var (family, year) = await KeptAsync(server);
        async Task<IEnumerable<string>> Of(Guid learner) => (await family.Guardian.GetAsync($"/records/reading?learner={learner}&year={year}")).QuerySelectorAll("#list tbody tr")
            .Select(r => string.Join(" | ", r.Children.Select(c => c.TextContent)));
        Assert.Equal(
            ["The Weir | Olive | heard | 1 September 2025 | 3 October 2025 |  | ", "=The Race |  | read alone | 3 November 2025 | 7 November 2025, put away unfinished |  | hard for Wren"],
            await Of(family.Plan.Wren));
        Assert.Equal(
            ["The Weir | Olive | heard | 1 September 2025 | 3 October 2025 |  | ", "The Weir | Olive | read alone | 2 March 2026 | goes on |  | "],
            await Of(family.Plan.Linnet));
        Assert.NotNull((await family.Guardian.GetAsync($"/records?learner={family.Plan.Wren}&year={year}")).QuerySelector("a[href*='/records/reading']"));
    }

    [Fact]
    public async Task Are_files_of_separated_values()
    {
        var (family, year) = await KeptAsync(server);
        var answer = await family.Guardian.OpenAsync($"/records/{family.Plan.Wren}/{year}/reading.csv");
        Assert.Equal("attachment; filename=reading-wren-2025-26.csv", answer.Content.Headers.ContentDisposition!.ToString());
        Assert.Equal(
            "\uFEFFlearner,year,title,author,isbn,how,begun,ended,unfinished,level,note\r\n" +
            "Wren,2025–26,The Weir,Olive,9780110002224,heard,2025-09-01,2025-10-03,no,,\r\n" +
            "Wren,2025–26,'=The Race,,,read alone,2025-11-03,2025-11-07,yes,,hard for Wren\r\n",
            Encoding.UTF8.GetString(await answer.Content.ReadAsByteArrayAsync()));
    }

    [Fact]
    public async Task Are_papers_to_hand_in()
    {
        var (family, year) = await KeptAsync(server);
        var answer = await family.Guardian.OpenAsync($"/records/{family.Plan.Wren}/{year}/reading.pdf");
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.ToString());
        var text = PaperReader.AllText(await answer.Content.ReadAsByteArrayAsync());
        foreach (var words in new[] { "Reading list", "Wren", "The Weir", "9780110002224", "hard for Wren", "2 books, 1 of them finished" })
            Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_over_as_many_sheets_as_they_need_with_every_book_once()
    {
        var lines = Enumerable.Range(1, 120).Select(i => new ReadingListLine($"Tale{i}", "Olive", "", BookUse.ReadAlone, new DateOnly(2025, 9, 1).AddDays(i), null, false, "", "")).ToList();
        var list = new ReadingList("Alder", "Wren", "2025–26", new(new(2025, 7, 1), new(2026, 6, 30)), new(2026, 3, 12), lines);
        var paper = ReadingListPdf.Write(list);
        Assert.Equal(paper, ReadingListPdf.Write(list));
        using var document = PdfDocument.Open(paper);
        Assert.True(document.NumberOfPages > 2);
        Assert.Equal(lines.Select(l => l.Title), PaperReader.Rows(paper).SelectMany(r => r).Where(w => w.StartsWith("Tale", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("xlsx")]
    [InlineData("PDF")]
    public async Task Come_in_two_forms_only(string ending)
    {
        var (family, year) = await KeptAsync(server);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync($"/records/{family.Plan.Wren}/{year}/reading.{ending}")).StatusCode);
    }

    [Theory]
    [InlineData("Input.BegunOn", "", "Say when it was begun")]
    [InlineData("Input.BegunOn", "1999-01-01", "from the year 2000 on")]
    [InlineData("Input.EndedOn", "2026-03-01", "before it was begun")]
    [InlineData("Input.Unfinished", "true", "on which day it was put away")]
    [InlineData("Input.How", "7", "not understood")]
    [InlineData("Input.Learners", null, "Tick at least one child")]
    public async Task Take_no_line_that_cannot_be(string field, string? value, string why)
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Weir");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/books/{book}/readers/new"),
            new() { ["Input.Learners"] = family.Plan.Wren.ToString(), ["Input.Note"] = "on the stairs", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains(shown.QuerySelectorAll(".field-validation-error, .fault"), f => f.TextContent.Contains(why, StringComparison.Ordinal));
        Assert.Equal("on the stairs", shown.QuerySelector("#Input_Note")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.BookMeetings.CountAsync()));
    }

    [Fact]
    public async Task Take_a_line_once_that_is_sent_twice()
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Weir");
        var page = await family.Guardian.GetAsync($"/week/books/{book}/readers/new");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Learners"] = family.Plan.Wren.ToString() });
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        Assert.Equal(1, await family.Family.FromDbAsync(db => db.BookMeetings.CountAsync()));
    }
}
