using CoopLessons.Core.Hours;
using CoopLessons.Documents.Reports;
using UglyToad.PdfPig;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class Hours_on_paper_with_names_nobody_should_type
{
    private const double Margin = 48;
    private static readonly HoursReport Report = SampleReports.Hostile();
    private static readonly byte[] Paper = HoursPdf.Write(Report);

    [Fact]
    public void Nothing_leaves_the_margins()
    {
        using var document = PdfDocument.Open(Paper);
        foreach (var page in document.GetPages())
        {
            // Half a point for side bearings of the first and last letter.
            Assert.All(page.Letters, letter =>
            {
                Assert.InRange(letter.StartBaseLine.X, Margin - 0.5, page.Width - Margin + 0.5);
                Assert.InRange(letter.EndBaseLine.X, Margin - 0.5, page.Width - Margin + 0.5);
                Assert.InRange(letter.StartBaseLine.Y, Margin - 0.5, page.Height - Margin);
            });
        }
    }

    [Fact]
    public void No_two_words_of_a_line_overlap()
    {
        using var document = PdfDocument.Open(Paper);
        foreach (var line in document.GetPages().SelectMany(p => p.Letters.GroupBy(l => (p.Number, Math.Round(l.StartBaseLine.Y, 1)))))
        {
            var letters = line.OrderBy(l => l.StartBaseLine.X).ToList();
            Assert.All(letters.Zip(letters.Skip(1)), pair => Assert.True(pair.First.EndBaseLine.X <= pair.Second.StartBaseLine.X + 0.5, $"{pair.First.Value} and {pair.Second.Value} on page {line.Key.Number}"));
        }
    }

    [Fact]
    public void What_the_typeface_lacks_is_named()
    {
        var learner = string.Join(' ', PaperReader.Rows(Paper).First(row => row[0] == "Learner"));
        Assert.StartsWith("Learner Wren [sign] tfel [in Hebrew letters] � é", learner, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_without_any_visible_sign_is_said_to_be_missing() =>
        Assert.Equal(2, PaperReader.Rows(Paper).Count(row => row is ["(not", "given)", ..]));

    [Fact]
    public void A_long_name_is_wrapped_and_kept_to_its_last_letter()
    {
        using var document = PdfDocument.Open(Paper);
        var letters = string.Concat(document.GetPages().SelectMany(p => p.Letters).Select(l => l.Value));
        // Family and learner; the foot of a sheet shows a shortened repeat.
        Assert.InRange(letters.Count(c => c == 'M'), 240, 400);
        Assert.Contains("…", letters, StringComparison.Ordinal);
        Assert.True(letters.Split("Wheat").Length - 1 == 500);
    }

    [Fact]
    public void Column_headings_are_shown_again_on_each_further_sheet()
    {
        using var document = PdfDocument.Open(Paper);
        var sheets = document.GetPages().Select(p => PaperReader.Rows(p)).Where(rows => rows.Any(row => row.Length == 15 && row[0] == "Subject" && row[^1].Contains(':', StringComparison.Ordinal))).ToList();
        Assert.InRange(sheets.Count, 3, 9);
        Assert.All(sheets, rows => Assert.Contains(rows, row => row is ["Subject", .., "Total"]));
    }

    [Fact]
    public void Every_minute_still_stands_on_the_paper()
    {
        var rows = PaperReader.Rows(Paper);
        foreach (var subject in Report.Subjects.Where(s => s.Subject.StartsWith("Subject ", StringComparison.Ordinal)))
        {
            var figures = PaperReader.Figures(rows, subject.Subject).First(f => f.Length == Report.Months.Count + 1);
            Assert.Equal([.. subject.ByMonth.Select(m => m.Value), subject.Total.Value], figures.Select(PaperReader.Minutes));
        }

        Assert.Equal(Report.Total.Value, PaperReader.Minutes(PaperReader.Figures(rows, "All subjects").Single()[^1]));
    }

    [Fact]
    public void Minutes_of_any_size_stay_on_one_line()
    {
        var year = SampleReports.Year();
        var most = new Minutes(int.MaxValue);
        var pdf = HoursPdf.Write(year with
        {
            Subjects = [new SubjectHours("Reading", [.. year.Months.Select(_ => most)], most, 1, 1)],
            Months = [.. year.Months.Select(m => m with { Total = most })],
            Total = most,
        });
        var figures = PaperReader.Figures(PaperReader.Rows(pdf), "Reading").SelectMany(f => f).Where(f => f.Contains(':', StringComparison.Ordinal));
        Assert.Equal(Enumerable.Repeat(int.MaxValue, 13), figures.Select(PaperReader.Minutes));
    }

    [Fact]
    public void Many_reports_can_be_written_at_the_same_time()
    {
        var papers = new byte[6][];
        Parallel.For(0, papers.Length, i => papers[i] = HoursPdf.Write(SampleReports.Hostile()));
        Assert.All(papers, paper => Assert.Equal(Paper, paper));
    }
}
