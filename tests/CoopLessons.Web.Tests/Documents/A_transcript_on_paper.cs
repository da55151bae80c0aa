using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Reports;
using UglyToad.PdfPig;

namespace CoopLessons.Web.Tests.Documents;

public class A_transcript_on_paper
{
    private static readonly DateOnly MadeOn = new(2026, 11, 24);

    private static TranscriptLine Line(int n) => new(
        $"Course {n} of the mill race and its weather", (CourseArea)(n % 8), (CourseLevel)(n % 3), (CreditBasis)(n % 4), new Minutes(7300), new CreditCount(101), new CreditCount(100), n % 5 == 0 ? "passed" : "A-");

    private static Transcript Of(int courses, string address = "3 Mill Lane, Millrace")
    {
        var average = new GradeAverage(362, 385, new CreditCount(1900), 0);
        var years = Enumerable.Range(0, courses).GroupBy(n => n * 4 / courses).Select(g => new TranscriptYear($"202{g.Key}–2{g.Key + 1}", 9 + g.Key, [.. g.Select(Line)], average));
        var methods = Enum.GetValues<CreditBasis>().Select(b => CreditWords.Method(b, CreditCount.CarnegieUnit, CreditCount.UsualCollegeCredits));
        return new Transcript(
            new TranscriptHeading("Cedar home school", address, "Merlin Cedar", new DateOnly(2011, 2, 26), new DateOnly(2029, 5, 25), "Rowan Cedar, parent"), [.. years],
            GradeScale.WithPlusAndMinus, average, [.. methods], MadeOn);
    }

    [Theory]
    [InlineData(1, PaperSize.Letter)]
    [InlineData(28, PaperSize.Letter)]
    [InlineData(28, PaperSize.A4)]
    public void Has_one_page_with_28_courses(int courses, PaperSize size)
    {
        using var document = PdfDocument.Open(TranscriptPdf.Write(Of(courses), size)!);
        Assert.Equal(1, document.NumberOfPages);
        Assert.Equal(size == PaperSize.A4 ? 842 : 792, document.GetPage(1).Height, 1.0);
    }

    [Fact]
    public void Is_not_written_where_it_would_take_two() => Assert.Null(TranscriptPdf.Write(Of(90), PaperSize.Letter));

    // Reference program: PdfPig reads the words back from where they stand.
    [Fact]
    public void Says_who_what_and_how_it_was_found()
    {
        var text = PaperReader.AllText(TranscriptPdf.Write(Of(28), PaperSize.Letter)!);
        string[] expected =
        [
            "High school transcript", "Merlin Cedar", "Cedar home school", "26 February 2011", "3 Mill Lane, Millrace", "25 May 2029", "grade 9", "Course 27 of the mill race", "28.00 in all",
            "3.62 over 19.00 credits with a mark", "3.85 over 19.00", "A- 3.70", "adds 0.50 for honors and 1.00 for college level", "120 hours of recorded study make 1 credit", "3 college credits make 1 credit",
            "Signature: Rowan Cedar, parent", "Date", "Made on 24 November 2026", "GPA 3.62",
        ];
        Assert.All(expected, words => Assert.Contains(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Says_how_many_marks_are_in_no_average()
    {
        var transcript = Of(4);
        Assert.DoesNotContain("in no average", PaperReader.AllText(TranscriptPdf.Write(transcript, PaperSize.Letter)!), StringComparison.Ordinal);
        var text = PaperReader.AllText(TranscriptPdf.Write(transcript with { Average = transcript.Average with { Unknown = 2 } }, PaperSize.Letter)!);
        Assert.Contains("2 marks are not on this scale and are in no average.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Prints_nothing_that_was_left_empty()
    {
        var transcript = Of(4, address: "");
        var text = PaperReader.AllText(TranscriptPdf.Write(transcript with { Heading = transcript.Heading with { Born = null, Graduated = null } }, PaperSize.Letter)!);
        Assert.All(["Born", "Address", "Graduated"], word => Assert.DoesNotContain(word, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Is_the_same_to_the_byte_each_time() => Assert.Equal(TranscriptPdf.Write(Of(9), PaperSize.Letter), TranscriptPdf.Write(Of(9), PaperSize.Letter));

    // Reference program: qpdf checks the file's syntax, its cross-reference table and each stream to its last byte.
    [FactBeside("qpdf")]
    public async Task Qpdf_finds_nothing_to_say()
    {
        using var bench = new Workbench();
        foreach (var (name, bytes) in new[] { ("transcript.pdf", TranscriptPdf.Write(Of(28), PaperSize.Letter)!), ("none.pdf", TranscriptPdf.Write(Of(1) with { Years = [] }, PaperSize.Letter)!), ("courses.pdf", Descriptions(40)) })
        {
            var (code, output, errors) = await ReferenceProgram.Named("qpdf").Run("--check", bench.Put(name, bytes));
            Assert.True(code == 0, output + errors);
            Assert.DoesNotContain("WARNING", output, StringComparison.Ordinal);
        }
    }

    // Reference program: pdfinfo of poppler-utils reads the structure as assistive software would.
    [FactBeside("pdfinfo")]
    public async Task Is_read_aloud_as_a_heading_three_tables_and_paragraphs()
    {
        using var bench = new Workbench();
        var (_, output, _) = await ReferenceProgram.Named("pdfinfo").Run("-struct-text", bench.Put("transcript.pdf", TranscriptPdf.Write(Of(28), PaperSize.Letter)!));
        var lines = output.Split('\n').Select(l => l.Trim()).ToList();
        Assert.Single(lines, l => l.StartsWith("H1", StringComparison.Ordinal));
        Assert.Equal(3, lines.Count(l => l.StartsWith("Table", StringComparison.Ordinal)));
        Assert.Equal(6, lines.Count(l => l == "/Scope /Column"));
        Assert.Contains(lines, l => l.Contains("Course 27 of the mill race", StringComparison.Ordinal));
    }

    [Fact]
    public void Has_its_descriptions_on_a_paper_of_their_own()
    {
        var text = PaperReader.AllText(Descriptions(2));
        Assert.All(["Course descriptions", "Course 1 of the mill race", "2025–26, 2026–27", "121:40 hours", "Read and wrote.", "Twice a week."], words => Assert.Contains(words, text, StringComparison.Ordinal));
    }

    private static byte[] Descriptions(int count) => CourseDescriptionsPdf.Write(
        new CourseDescriptions(Of(1).Heading, [.. Enumerable.Range(1, count).Select(n => new DescribedCourse(Line(n), ["2025–26", "2026–27"], "Read and wrote.\nTwice a week."))], MadeOn), PaperSize.Letter);
}
