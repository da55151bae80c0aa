using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using CoopLessons.Core.Hours;
using CoopLessons.Documents.Reports;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class Hours_as_a_workbook
{
    private static readonly XNamespace Cells = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly HoursReport Report = SampleReports.Year();

    // Reference program: LibreOffice Calc works the formulas out. What the workbook carries as their results is taken out
    // beforehand, so that nothing but its own arithmetic can agree.
    [FactBeside("soffice", "libreoffice")]
    public async Task A_spreadsheet_that_works_the_sums_out_anew_comes_to_the_reports_totals()
    {
        var sheets = await SpreadsheetProgram.Open("hours.xlsx", SpreadsheetProgram.WithoutResults(await HoursXlsx.WriteAsync(Report, default)));

        var hours = sheets["Hours"];
        Assert.Equal(["Subject (minutes)", .. Report.Months.Select(m => m.Month.Label), "Total minutes", "Total h:mm"], hours[0]);
        foreach (var (subject, row) in Report.Subjects.Zip(hours.Skip(1)))
            Assert.Equal([subject.Subject, .. subject.ByMonth.Select(Number), Number(subject.Total), subject.Total.Clock], row);
        Assert.Equal(["All subjects", .. Report.Months.Select(m => Number(m.Total)), Number(Report.Total), Report.Total.Clock], hours[Report.Subjects.Count + 1]);

        var days = sheets["Days and places"];
        foreach (var (subject, row) in Report.Subjects.Zip(days.Skip(1)))
            Assert.Equal([subject.Subject, Number(subject.StrictDays), Number(subject.BroadDays)], row);
        Assert.Equal(Number(Report.SchoolDays), days.Single(r => r[0] == "All months")[1]);
        Assert.Equal(Number(Report.SchoolDaysBroad), days.Single(r => r[0] == "Read broadly")[1]);
        Assert.Equal(["All places", Number(Report.Total), Report.Total.Clock], days.Single(r => r[0] == "All places"));
        Assert.Equal(
            Report.Places.Select(p => Number(p.Total)), days.SkipWhile(r => r[0] != "Place").Skip(1).Take(Report.Places.Count).Select(r => r[1]));

        Assert.Contains(sheets["About"], r => r[0] == "Fingerprint" && r[1] == Report.Fingerprint);
    }

    [Fact]
    public async Task Minutes_are_numbers_and_sums_are_formulas()
    {
        var sheet = Sheet(await HoursXlsx.WriteAsync(Report, default), 1);
        var rows = sheet.Descendants(Cells + "row").ToList();
        Assert.Equal(Report.Subjects.Count + 2, rows.Count);
        var first = rows[1].Elements(Cells + "c").ToList();
        Assert.All(first.Skip(1).Take(Report.Months.Count), c => Assert.Null(c.Element(Cells + "f")));
        Assert.Equal(
            Report.Subjects[0].ByMonth.Select(Number), first.Skip(1).Take(Report.Months.Count).Select(c => c.Element(Cells + "v")!.Value));
        Assert.Equal("SUM(B2:M2)", first[Report.Months.Count + 1].Element(Cells + "f")!.Value);
        Assert.Equal("SUM(B2:B11)", rows[^1].Elements(Cells + "c").ElementAt(1).Element(Cells + "f")!.Value);
    }

    [Fact]
    public async Task The_headings_stay_in_sight()
    {
        var file = await HoursXlsx.WriteAsync(Report, default);
        Assert.All(Enumerable.Range(1, 3), number =>
        {
            var pane = Assert.Single(Sheet(file, number).Descendants(Cells + "pane"));
            Assert.Equal(("frozen", "1"), (pane.Attribute("state")!.Value, pane.Attribute("ySplit")!.Value));
        });
    }

    [FactBeside("soffice", "libreoffice")]
    public async Task A_spreadsheet_shows_what_a_family_typed_and_runs_none_of_it()
    {
        string[] hostile = ["=1+1", "+1+1", "@SUM(1,1)", "a\u0000\u0007b", "\u202Eright to left", "🍞 דגן", " spaces "];
        var report = Report with
        {
            Subjects = [.. hostile.Select(name => new SubjectHours(name, [.. Report.Months.Select(_ => new Minutes(1))], new Minutes(12), 1, 1))],
            Heading = Report.Heading with { Family = "=1+1", CountingPolicy = new string('x', 10_000) },
        };
        var sheets = await SpreadsheetProgram.Open("hours.xlsx", await HoursXlsx.WriteAsync(report, default));

        Assert.Equal(hostile.Select(SpreadsheetText.Clean), sheets["Hours"].Skip(1).Take(hostile.Length).Select(r => r[0]));
        Assert.Contains(sheets["About"], r => r[0] == "Family" && r[1] == "=1+1");
        Assert.Contains(sheets["About"], r => r[0] == "Counting policy" && r[1].Length == 10_000);
    }

    [Fact]
    public async Task A_text_longer_than_a_cell_goes_on_below()
    {
        var policy = string.Concat(Enumerable.Range(0, 20_000).Select(i => i % 10 == 9 ? "🍞" : "wheat"[(i % 5)..(i % 5 + 1)]));
        var report = Report with { Heading = Report.Heading with { CountingPolicy = string.Concat(Enumerable.Repeat(policy, 4)) } };
        var sheet = Sheet(await HoursXlsx.WriteAsync(report, default), 3);
        var parts = sheet.Descendants(Cells + "row").Select(r => r.Elements(Cells + "c").Select(c => c.Value).ToList())
            .Where(r => r[0] == "Counting policy").Select(r => r[1]).ToList();

        Assert.All(parts, part => Assert.InRange(part.Length, 1, 32_767));
        Assert.Equal(report.Heading.CountingPolicy, string.Concat(parts));
    }

    [Fact]
    public async Task A_report_without_entries_is_still_a_whole_workbook()
    {
        var rows = Sheet(await HoursXlsx.WriteAsync(SampleReports.Empty(), default), 1).Descendants(Cells + "row").ToList();
        Assert.Equal(2, rows.Count);
        Assert.DoesNotContain(rows[1].Descendants(Cells + "f"), f => f.Value.StartsWith("SUM", StringComparison.Ordinal));
    }

    private static string Number(Minutes minutes) => Number(minutes.Value);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static XDocument Sheet(byte[] workbook, int number)
    {
        using var zip = new ZipArchive(new MemoryStream(workbook));
        using var part = zip.GetEntry($"xl/worksheets/sheet{number}.xml")!.Open();
        return XDocument.Load(part);
    }
}
