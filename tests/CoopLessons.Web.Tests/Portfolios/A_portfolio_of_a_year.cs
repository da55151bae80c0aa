using System.Net;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Evidence;
using CoopLessons.Web.Tests.Records;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace CoopLessons.Web.Tests.Portfolios;

[Collection(PlanningServer.Name)]
public sealed class A_portfolio_of_a_year(TestServer server)
{
    private const string Science = "law-science";

    [Fact]
    public async Task Has_the_totals_of_the_hours_report()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.FillWeekdaysAsync(YearOfWork.September, new(2025, 12, 12), day => 200 + day.Day, "science");
        await year.Log.FillAsync(new(2026, 1, 5), 20, 45, "history");
        var report = await year.Family.FromDbAsync(async db =>
            (await LearnerYear.LoadAsync(db, year.Log.Linnet, (await db.SchoolYears.SingleAsync()).Days, default))!.Report("it", TestServer.Today));
        foreach (var size in new[] { "short", "full" })
        {
            var paper = await year.BytesAsync(year.File(size));
            var rows = PaperReader.Rows(paper);
            Assert.Contains($"Hours {report.Total.Clock} in hours and minutes", PaperReader.AllText(paper), StringComparison.Ordinal);
            Assert.Contains($"School days {report.SchoolDays} days.", PaperReader.AllText(paper), StringComparison.Ordinal);
            Assert.Contains(PaperReader.Figures(rows, "Science"), f => f.Contains(report.Subjects.Single(s => s.Subject == "Science").Total.Clock));
        }

        // Each minute of the log stands in the full one's day by day.
        var lines = PaperReader.Rows(await year.BytesAsync(year.File("full"))).Where(r => r is [_, _, "2025" or "2026", "Read", ..]).ToList();
        Assert.Equal(report.Total.Value, lines.Sum(l => PaperReader.Minutes(l[^1])));
    }

    [Fact]
    public async Task Shows_three_samples_a_subject_from_the_whole_year_until_others_are_chosen()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PhotoAsync(new(2025, 9, 4), caption: "First seeds");
        await year.PhotoAsync(new(2025, 9, 20), caption: "More seeds");
        await year.PhotoAsync(new(2026, 1, 2), caption: "Frost on the pane");
        var last = await year.PhotoAsync(new(2026, 3, 10), caption: "The sprout");
        await year.PhotoAsync(new(2026, 3, 11), caption: "Both of us", who: ["Linnet", "Wren"]);
        await year.PhotoAsync(new(2026, 3, 11), caption: "Wren alone", who: ["Wren"]);
        var text = await year.TextAsync(year.File());
        foreach (var shown in new[] { "Beginning: 4 September 2025 Middle: 2 January 2026 End: 10 March 2026", "“First seeds”", "“Frost on the pane”", "“The sprout”" })
            Assert.Contains(shown, Squeezed(text), StringComparison.Ordinal);
        foreach (var hidden in new[] { "More seeds", "Both of us", "Wren alone" })
            Assert.DoesNotContain(hidden, text, StringComparison.Ordinal);

        var full = await year.TextAsync(year.File("full"));
        Assert.Contains("More seeds", full, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren alone", full, StringComparison.Ordinal);

        using var answer = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync(year.Samples(Science)), new() { ["Chosen"] = null }, more: [new("Chosen", last.ToString())]);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        text = await year.TextAsync(year.File());
        Assert.Contains("The sprout", text, StringComparison.Ordinal);
        Assert.DoesNotContain("First seeds", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holds_the_pictures_themselves_and_none_that_shows_faces()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PhotoAsync(new(2025, 9, 4), caption: "Seeds", size: 240);
        var faces = await year.PhotoAsync(new(2026, 1, 2), caption: "Me and the loaf", facesOut: true, size: 300);
        using var chosen = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync(year.Samples(Science)), more: [new("Chosen", faces.ToString())]);
        foreach (var size in new[] { "short", "full" })
        {
            var paper = await year.BytesAsync(year.File(size));
            using var document = PdfDocument.Open(paper);
            var image = Assert.Single(document.GetPages().SelectMany(p => p.GetImages()));
            Assert.Equal(240, image.WidthInSamples);
            Assert.Contains("A photo, kept by the family: it shows faces.", Squeezed(PaperReader.AllText(paper)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Shows_the_pages_of_a_paper_and_says_that_there_is_a_recording()
    {
        var year = await YearOfWork.OfAsync(server);
        var sheet = SamplePages.Blank(3);
        await year.PieceAsync(sheet, StoredKind.Pdf, PieceKind.Paper, 3, new(2025, 9, 4), "science", "My report");
        await year.PieceAsync("song"u8.ToArray(), StoredKind.Mp3, PieceKind.Sound, 1, new(2026, 2, 4), "science", "The frogs");
        Assert.Contains("(page 1", Squeezed(await year.TextAsync(year.File())), StringComparison.Ordinal);
        var full = Squeezed(await year.TextAsync(year.File("full")));
        Assert.Contains("(page 3 of 3)", full, StringComparison.Ordinal);
        Assert.Contains("A sound recording, kept by the family.", full, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_plainly_what_is_not_there_unless_the_family_leaves_that_out()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 30, [("science", 1)]);
        Assert.Contains("No photo, paper or recording shows Science.", Squeezed(await year.TextAsync(year.File())), StringComparison.Ordinal);
        var page = await year.Guardian.GetAsync(year.Page);
        Assert.Contains("No photo, paper or recording shows Science.", page.QuerySelector($"#{Science}")!.Plain(), StringComparison.Ordinal);
        foreach (var box in page.QuerySelectorAll("input[name='Input.Parts'][value='Missing']"))
            box.RemoveAttribute("checked");
        using var saved = await year.Guardian.SubmitAsync(page, within: "form.wide");
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.DoesNotContain("Not here:", await year.TextAsync(year.File()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holds_what_the_parent_writes_and_offers_the_facts()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 90, [("science", 1)], what: "Soak and sprout");
        var page = await year.Guardian.GetAsync(year.Page);
        var index = page.QuerySelectorAll("input[name$='.Key']").Select(k => k.GetAttribute("value")).ToList().IndexOf(Science);
        using var drafted = await year.Guardian.SubmitAsync(page, new() { [$"Input.Subjects[{index}].Narrative"] = "She asks before she guesses." }, "form.wide", more: [new("draft", Science)]);
        Assert.EndsWith($"#{Science}", drafted.Headers.Location!.OriginalString, StringComparison.Ordinal);
        var text = Squeezed(await year.TextAsync(year.File()));
        Assert.Contains("She asks before she guesses.", text, StringComparison.Ordinal);
        Assert.Contains("Most time went to: Soak and sprout (1:30, one day).", text, StringComparison.Ordinal);

        // Typed twice at the same time: the second is told, and keeps what it typed.
        page = await year.Guardian.GetAsync(year.Page);
        using var first = await year.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = "A good year." }, "form.wide");
        using var second = await year.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = "A long year." }, "form.wide");
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Conflict), (first.StatusCode, second.StatusCode));
        var again = await Visitor.ParseAsync(second);
        Assert.Equal("A long year.", again.QuerySelector("textarea[name='Input.Opening']")!.TextContent.Trim());
        using var tooLong = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync(year.Page), new() { [$"Input.Subjects[{index}].Narrative"] = new string('a', Portfolio.LongestText + 1) }, "form.wide");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, tooLong.StatusCode);
        Assert.Contains("At most 4,000 letters.", (await Visitor.ParseAsync(tooLong)).QuerySelector($"#{Science} .fault")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shows_early_and_late_work_side_by_side_once_the_family_says_so()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PhotoAsync(new(2025, 9, 4), "art", "A bird");
        await year.PhotoAsync(new(2026, 3, 1), "art", "A bird again");
        Assert.DoesNotContain("The same skill", await year.TextAsync(year.File()), StringComparison.Ordinal);
        var page = await year.Guardian.GetAsync(year.Page);
        var pair = await year.Guardian.GetAsync(page.QuerySelector("a[href*='/pair?']")!.GetAttribute("href")!);
        using var nameless = await year.Guardian.SubmitAsync(pair, new() { ["Skill"] = " " });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, nameless.StatusCode);
        using var shown = await year.Guardian.SubmitAsync(pair, new() { ["Skill"] = "Drawing what is there", ["Told"] = "Now I look longer than I draw." });
        Assert.Equal(HttpStatusCode.Redirect, shown.StatusCode);
        var text = Squeezed(await year.TextAsync(year.File()));
        Assert.Contains("The same skill, early and late Drawing what is there", text, StringComparison.Ordinal);
        Assert.Contains("Now I look longer than I draw.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_made_full_on_request_and_fetched_by_its_guardians()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PhotoAsync(new(2025, 9, 4), caption: "Seeds");
        using var early = await year.Guardian.OpenAsync(year.File("full"));
        Assert.Equal(HttpStatusCode.Redirect, early.StatusCode);
        var page = await year.Guardian.GetAsync(early.Headers.Location!.OriginalString);
        Assert.Contains("is to be made first", page.QuerySelector("#said")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("a[href$='portfolio-full.pdf']"));

        await year.MakeFullAsync();
        page = await year.Guardian.GetAsync(year.Page);
        Assert.Contains("Full, made on 12 March", page.QuerySelector($"a[href='{year.File("full")}']")!.TextContent, StringComparison.Ordinal);
        using var made = await year.Guardian.OpenAsync(year.File("full"));
        Assert.Equal("portfolio-full-linnet-2025-26.pdf", made.Content.Headers.ContentDisposition!.FileName);
        using var others = await year.Guardian.OpenAsync(year.File("full", "Wren"));
        Assert.Equal(HttpStatusCode.Redirect, others.StatusCode);
    }

    [Fact]
    public async Task Says_where_its_making_could_not_read_a_file()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PieceAsync("no picture at all"u8.ToArray(), StoredKind.Jpeg, PieceKind.Photo, 1, new(2025, 9, 4), "science", "Seeds");
        await year.MakeFullAsync();
        var page = await year.Guardian.GetAsync(year.Page);
        Assert.Contains("cannot be read any more", page.QuerySelector("section[aria-labelledby='take'] .note[role='status']")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("a[href$='portfolio-full.pdf']"));
    }

    [Fact]
    public async Task Shows_a_sample_once_and_says_where()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PhotoAsync(new(2025, 9, 4), "reading", "The lighthouse");
        var paper = await year.BytesAsync(year.File("full"));
        var text = Squeezed(PaperReader.AllText(paper));
        Assert.Equal(1, text.Split("“The lighthouse”").Length - 1);
        Assert.Contains("Also of this subject, shown under Reading: 4 September 2025.", text, StringComparison.Ordinal);
        using var document = PdfDocument.Open(paper);
        Assert.Single(document.GetPages().SelectMany(p => p.GetImages()));
    }

    [Theory]
    [InlineData("short")]
    [InlineData("full")]
    public async Task Shows_a_picture_that_is_high_upright(string size)
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PhotoAsync(new(2025, 9, 4), size: 240, high: 320);
        using var document = PdfDocument.Open(await year.BytesAsync(year.File(size)));
        var box = Assert.Single(document.GetPages().SelectMany(p => p.GetImages())).BoundingBox;
        Assert.Equal(240.0 / 320, Math.Abs(box.TopRight.X - box.BottomLeft.X) / Math.Abs(box.TopRight.Y - box.BottomLeft.Y), 0.01);
        Assert.Equal(48, box.BottomLeft.X, 0.1);
    }

    [Fact]
    public async Task Is_the_same_file_for_the_same_year_and_day()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 30, [("science", 1)]);
        await year.PhotoAsync(new(2025, 9, 4), caption: "Seeds");
        Assert.Equal(await year.BytesAsync(year.File("full")), await year.BytesAsync(year.File("full")));
    }

    [Fact]
    public async Task Is_refused_for_another_size_and_another_familys_samples()
    {
        var year = await YearOfWork.OfAsync(server);
        var other = await YearOfWork.OfAsync(server);
        var foreign = await other.PhotoAsync(new(2025, 9, 4));
        await year.PhotoAsync(new(2025, 9, 4));
        using var size = await year.Guardian.OpenAsync(year.File("huge"));
        using var taken = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync(year.Samples(Science)), more: [new("Chosen", foreign.ToString())]);
        using var unknown = await year.Guardian.OpenAsync(year.Samples("law-nothing"));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound, HttpStatusCode.NotFound), (size.StatusCode, taken.StatusCode, unknown.StatusCode));
    }

    [Fact]
    public async Task Leads_back_with_a_sentence_where_a_file_cannot_be_read()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.PieceAsync("no picture at all"u8.ToArray(), StoredKind.Jpeg, PieceKind.Photo, 1, new(2025, 9, 4), "science", "Seeds");
        using var answer = await year.Guardian.OpenAsync(year.File());
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("cannot be read any more", (await year.Guardian.GetAsync(answer.Headers.Location!.OriginalString)).QuerySelector("#said")!.TextContent, StringComparison.Ordinal);
    }

    // Reference programs: qpdf checks each stream to its last byte; pdfinfo reads the structure as assistive software would.
    [TheoryBeside("qpdf", "pdfinfo")]
    [InlineData("short")]
    [InlineData("full")]
    public async Task Is_whole_and_tagged(string size)
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.FillWeekdaysAsync(YearOfWork.September, new(2025, 12, 12), _ => 60, "science");
        await year.PhotoAsync(new(2025, 9, 4), caption: "First seeds");
        await year.PhotoAsync(new(2026, 1, 2));
        using var bench = new Workbench();
        var path = bench.Put("portfolio.pdf", await year.BytesAsync(year.File(size)));
        var (code, output, errors) = await ReferenceProgram.Named("qpdf").Run("--check", path);
        Assert.True(code == 0 && errors.Length == 0 && !output.Contains("WARNING", StringComparison.Ordinal), output + errors);
        (_, output, _) = await ReferenceProgram.Named("pdfinfo").Run("-struct-text", path);
        var lines = output.Split('\n').Select(l => l.Trim()).ToList();
        Assert.Single(lines, l => l.StartsWith("H1", StringComparison.Ordinal));
        Assert.Equal(2, lines.Count(l => l.StartsWith("Figure", StringComparison.Ordinal)));
        Assert.Equal(["Photo of 4 September 2025: “First seeds”", "Photo of 2 January 2026, without a caption"], Alternatives(path));
        Assert.Contains("/Scope /Column", lines);
        Assert.Contains("/Scope /Row", lines);
        using var document = PdfDocument.Open(path);
        Assert.True(document.TryGetBookmarks(out var bookmarks));
        Assert.Contains("Work in each subject", bookmarks.Roots.Select(r => r.Title));
        Assert.Contains("Science", bookmarks.Roots.Single(r => r.Title == "Work in each subject").Children.Select(c => c.Title));
    }

    [Fact]
    public async Task Names_on_its_contents_the_sheet_on_which_each_part_begins()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.FillWeekdaysAsync(YearOfWork.September, new(2026, 3, 6), _ => 60, "science");
        using var document = PdfDocument.Open(await year.BytesAsync(year.File("full")));
        Assert.True(document.TryGetBookmarks(out var bookmarks));
        var places = bookmarks.Roots.OfType<UglyToad.PdfPig.Outline.DocumentBookmarkNode>().ToDictionary(r => r.Title, r => r.PageNumber);
        var cover = PaperReader.Rows(document.GetPage(1));
        foreach (var (title, page) in places)
        {
            var row = cover.Single(r => string.Join(' ', r.Take(r.Length - 1)) == title && int.TryParse(r[^1], out _));
            Assert.Equal(page, int.Parse(row[^1], null));
        }
    }

    /// <summary>The words that stand for pictures, in the order in which they are kept (ISO 32000-1, 14.9.3).</summary>
    private static IReadOnlyList<string> Alternatives(string path)
    {
        using var document = PdfSharp.Pdf.IO.PdfReader.Open(path, PdfSharp.Pdf.IO.PdfDocumentOpenMode.Import);
        return [.. document.Internals.GetAllObjects().OfType<PdfSharp.Pdf.PdfDictionary>().Where(d => d.Elements.ContainsKey("/Alt")).Select(d => d.Elements.GetString("/Alt"))];
    }

    private static string Squeezed(string text) => string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
