using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Documents.Reports;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class Hours_on_paper
{
    private static readonly HoursReport Report = SampleReports.Year();
    private static readonly byte[] Paper = HoursPdf.Write(Report);

    // Reference program: PdfPig reads the words back from where they stand; the sums below are made here.
    [Fact]
    public void Every_minute_of_the_report_stands_on_the_paper()
    {
        var rows = PaperReader.Rows(Paper);
        var read = new List<int[]>();
        foreach (var subject in Report.Subjects)
        {
            var minutes = PaperReader.Figures(rows, subject.Subject).First().Select(PaperReader.Minutes).ToArray();
            Assert.Equal([.. subject.ByMonth.Select(m => m.Value), subject.Total.Value], minutes);
            Assert.Equal(minutes[..^1].Sum(), minutes[^1]);
            read.Add(minutes);
        }

        var sums = PaperReader.Figures(rows, "All subjects").Single().Select(PaperReader.Minutes).ToArray();
        Assert.Equal([.. Report.Months.Select(m => m.Total.Value), Report.Total.Value], sums);
        Assert.Equal(Enumerable.Range(0, sums.Length).Select(i => read.Sum(row => row[i])), sums);
    }

    [Fact]
    public void The_days_and_the_places_stand_on_the_paper()
    {
        var rows = PaperReader.Rows(Paper);
        Assert.Contains([.. Report.Months.Select(m => Number(m.SchoolDays)), Number(Report.SchoolDays)], PaperReader.Figures(rows, "School days"));
        foreach (var subject in Report.Subjects)
            Assert.Equal([Number(subject.StrictDays), Number(subject.BroadDays)], PaperReader.Figures(rows, subject.Subject).Last());
        string[] places = ["At home", "At another home", "At the co-op", "Elsewhere"];
        foreach (var (name, place) in places.Zip(Report.Places))
        {
            var figures = Assert.Single(PaperReader.Figures(rows, name));
            Assert.Equal(place.Total.Value, PaperReader.Minutes(figures[0]));
            Assert.Equal(place.Total.DecimalHours, decimal.Parse(figures[1], CultureInfo.InvariantCulture));
        }

        Assert.Equal(Report.Total.Value, PaperReader.Minutes(Assert.Single(PaperReader.Figures(rows, "All places"))[0]));
    }

    [Fact]
    public void The_paper_says_who_when_and_by_which_rule()
    {
        var text = PaperReader.AllText(Paper);
        string[] expected =
        [
            "Hours of instruction", "Wren", "Alder", "2026–2027", "3 August 2026 to 30 July 2027", $"{Report.Total.Clock} in hours and minutes",
            $"{Report.SchoolDays} days", $"{Report.SchoolDaysBroad} days", "1:00 (60 minutes)", Report.Heading.CountingPolicy,
            $"Made on 2 August 2027 from {Report.Entries} log entries", Report.Fingerprint, "made from the family's own log", .. Report.Questions,
        ];
        Assert.All(expected, words => Assert.Contains(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_broad_count_is_left_out_where_it_is_the_same()
    {
        var text = PaperReader.AllText(HoursPdf.Write(Report with { SchoolDaysBroad = Report.SchoolDays }));
        Assert.DoesNotContain("Read broadly", text, StringComparison.Ordinal);
        Assert.Contains("Read broadly", PaperReader.AllText(Paper), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_sheet_carries_its_number_and_the_fingerprint()
    {
        using var document = PdfDocument.Open(Paper);
        Assert.InRange(document.NumberOfPages, 2, 4);
        foreach (var page in document.GetPages())
        {
            var foot = string.Join(' ', PaperReader.Rows(page)[^1]);
            Assert.EndsWith($"Page {page.Number} of {document.NumberOfPages}", foot, StringComparison.Ordinal);
            Assert.Contains(Report.Fingerprint, foot, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Figures_of_a_column_end_on_one_line()
    {
        using var document = PdfDocument.Open(Paper);
        var figures = document.GetPage(1).GetWords().Where(w => w.Text.Contains(':', StringComparison.Ordinal) && w.Text.All(c => char.IsAsciiDigit(c) || c == ':'));
        var ends = figures.Select(w => Math.Round(w.Letters[^1].EndBaseLine.X, 0)).GroupBy(x => x).Where(g => g.Count() >= Report.Subjects.Count);
        Assert.Equal(Report.Months.Count + 1, ends.Count());
    }

    [Fact]
    public void The_same_report_gives_the_same_bytes() => Assert.Equal(Paper, HoursPdf.Write(SampleReports.Year()));

    [Fact]
    public void A_change_in_the_report_changes_the_files_identifier()
    {
        var other = HoursPdf.Write(Report with { Heading = Report.Heading with { CountingPolicy = "We count lessons." } });
        Assert.NotEqual(Identifier(Paper), Identifier(other));
    }

    // Source: ISO 32000-1, 14.7, 14.8 and 14.9.2: a tagged document names its language; DisplayDocTitle is 12.2.
    [Fact]
    public void The_document_names_its_language_its_title_and_its_structure()
    {
        using var document = PdfDocument.Open(Paper);
        var catalog = document.Structure.Catalog.CatalogDictionary;
        Assert.Equal("en-US", Assert.IsType<StringToken>(catalog.Data["Lang"]).Data);
        Assert.True(catalog.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.Equal("Hours of instruction: Wren, 2026–2027", document.Information.Title);
        Assert.Equal("Alder", document.Information.Author);
        Assert.Equal("D:20270802", document.Information.CreationDate);
        Assert.All(document.GetPages().SelectMany(p => p.Letters), letter => Assert.Contains("NotoSans", letter.FontName!.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1, 612)]
    [InlineData(4, 612)]
    [InlineData(12, 792)]
    [InlineData(13, 792)]
    [InlineData(30, 792)]
    public void The_sheet_is_turned_when_the_months_need_it(int months, double width)
    {
        var first = new DateOnly(2026, 8, 1);
        var report = SampleReports.Of("Alder", "Wren", SampleReports.EverydaySubjects, new DayRange(first, first.AddMonths(months).AddDays(-1)));
        var pdf = HoursPdf.Write(report);
        using var document = PdfDocument.Open(pdf);
        Assert.All(document.GetPages(), page => Assert.Equal(width, page.Width));

        var rows = PaperReader.Rows(pdf);
        foreach (var subject in report.Subjects)
        {
            // A longer period is laid out in several tables, the days of the subject in one more.
            var minutes = PaperReader.Figures(rows, subject.Subject).SelectMany(f => f).Where(f => f.Contains(':', StringComparison.Ordinal)).Select(PaperReader.Minutes);
            Assert.Equal([.. subject.ByMonth.Select(m => m.Value), subject.Total.Value], minutes);
        }
    }

    [Fact]
    public void A_report_without_entries_fits_one_sheet_and_says_so()
    {
        var pdf = HoursPdf.Write(SampleReports.Empty());
        using var document = PdfDocument.Open(pdf);
        Assert.Equal(1, document.NumberOfPages);
        Assert.Contains("from 0 log entries", PaperReader.AllText(pdf), StringComparison.Ordinal);
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Identifier(byte[] pdf)
    {
        var text = System.Text.Encoding.Latin1.GetString(pdf);
        return text[text.LastIndexOf("/ID[<", StringComparison.Ordinal)..];
    }
}
