using System.Globalization;
using System.Text;
using CoopLessons.Core.Hours;
using CoopLessons.Documents.Reports;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class Hours_as_comma_separated_values
{
    private static readonly HoursReport Report = SampleReports.Year();
    private static readonly byte[] File = HoursCsv.Write(Report);
    private static readonly string[] Header = ["part", "item", "month", "minutes", "hours", "decimal_hours", "days", "days_with_touches", "text"];

    [Fact]
    public void The_file_begins_with_a_byte_order_mark_and_its_records_end_with_carriage_return_and_line_feed()
    {
        Assert.Equal([0xEF, 0xBB, 0xBF], File[..3]);
        var text = Encoding.UTF8.GetString(File[3..]);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.DoesNotContain('\r', text.Replace("\r\n", "", StringComparison.Ordinal));
    }

    // Source: RFC 4180, section 2, rule 4: each line the same number of fields throughout the file.
    [Fact]
    public void Each_record_has_the_fields_of_the_header()
    {
        var rows = SpreadsheetProgram.Rows(File);
        Assert.Equal(Header, rows[0]);
        Assert.All(rows, row => Assert.Equal(Header.Length, row.Length));
    }

    // Source: RFC 4180, section 2, rule 6. A line feed alone counts as a line end for every reader.
    [Fact]
    public void A_line_end_inside_a_field_does_not_end_the_record()
    {
        var report = Report with { Heading = Report.Heading with { CountingPolicy = "lessons\n=1+1" } };
        Assert.Contains("about,counting policy,,,,,,,\"lessons\n=1+1\"\r\n", Encoding.UTF8.GetString(HoursCsv.Write(report)), StringComparison.Ordinal);
    }

    // Source: RFC 4180, section 2, rules 5 to 7.
    [Fact]
    public void Commas_quotes_and_line_ends_inside_a_field_are_quoted()
    {
        var report = Report with { Heading = Report.Heading with { CountingPolicy = "lessons, \"projects\"\r\nand reading" } };
        Assert.Contains("about,counting policy,,,,,,,\"lessons, \"\"projects\"\"\nand reading\"\r\n", Encoding.UTF8.GetString(HoursCsv.Write(report)), StringComparison.Ordinal);
    }

    // Reference program: CsvHelper reads the file back.
    [Fact]
    public void Every_number_of_the_report_is_read_back()
    {
        var rows = SpreadsheetProgram.Rows(File);
        Assert.Equal(
            Report.Subjects.SelectMany(s => Report.Months.Select((m, i) => (s.Subject, m.Month.Iso, s.ByMonth[i].Value))),
            Part(rows, "subject-month").Select(r => (r[1], r[2], Number(r[3]))));
        Assert.Equal(
            Report.Subjects.Select(s => (s.Subject, s.Total.Value, s.Total.Clock, s.StrictDays, s.BroadDays)),
            Part(rows, "subject").Select(r => (r[1], Number(r[3]), r[4], Number(r[6]), Number(r[7]))));
        Assert.Equal(
            Report.Months.Select(m => (m.Month.Iso, m.Total.Value, m.SchoolDays)), Part(rows, "month").Select(r => (r[2], Number(r[3]), Number(r[6]))));
        Assert.Equal(Report.Places.Select(p => p.Total.Value), Part(rows, "place").Select(r => Number(r[3])));
        var total = Assert.Single(Part(rows, "total"));
        Assert.Equal(Report.Total.Value, Number(total[3]));
        Assert.Equal(Report.Total.DecimalHours, decimal.Parse(total[5], CultureInfo.InvariantCulture));
        var days = Assert.Single(Part(rows, "school-days"));
        Assert.Equal((Report.SchoolDays, Report.SchoolDaysBroad), (Number(days[6]), Number(days[7])));
        Assert.Equal(Report.Questions, Part(rows, "question").Select(r => r[8]));
    }

    [Fact]
    public void The_report_says_what_it_is_and_where_it_comes_from()
    {
        var about = Part(SpreadsheetProgram.Rows(File), "about").ToDictionary(r => r[1]);
        Assert.Equal("Alder", about["family"][8]);
        Assert.Equal("Wren", about["learner"][8]);
        Assert.Equal("2026-08-03", about["period first"][8]);
        Assert.Equal("2027-07-30", about["period last"][8]);
        Assert.Equal("2027-08-02", about["made on"][8]);
        Assert.Equal(Report.Heading.CountingPolicy, about["counting policy"][8]);
        Assert.Equal("60", about["minimum day"][3]);
        Assert.Equal(Report.Fingerprint, about["fingerprint"][8]);
        Assert.Equal(Report.Entries, Number(about["entries"][8]));
    }

    // Reference program: LibreOffice Calc adds the minutes up itself, with its own SUMIFS over the file's cells.
    [FactBeside("soffice", "libreoffice")]
    public async Task A_spreadsheet_that_sums_the_minutes_comes_to_the_reports_totals()
    {
        var sums = new StringBuilder();
        string[] conditions = ["", .. Report.Subjects.Select(s => $";B$2:B$999;\"{s.Subject}\"")];
        foreach (var condition in conditions)
        {
            var formula = $"=SUMIFS(D$2:D$999;A$2:A$999;\"subject-month\"{condition})".Replace("\"", "\"\"", StringComparison.Ordinal);
            sums.Append(CultureInfo.InvariantCulture, $"sum,,,,,,,,\"{formula}\"\r\n");
        }

        var sheet = Assert.Single(await SpreadsheetProgram.Open("hours.csv", [.. File, .. Encoding.UTF8.GetBytes(sums.ToString())])).Value;

        Assert.Equal(
            [Report.Total.Value, .. Report.Subjects.Select(s => s.Total.Value)],
            Part(sheet, "sum").Select(r => Number(r[8])));
    }

    // Reference program: LibreOffice Calc, told to work formulas out. The last row is unguarded and shows that it would.
    [FactBeside("soffice", "libreoffice")]
    public async Task A_spreadsheet_runs_nothing_that_a_family_typed()
    {
        string[] hostile = ["=1+1", "+1+1", "-1+1", "@SUM(1,1)", "\t=1+1", "\uFF1D1+1", "=HYPERLINK(\"http://127.0.0.1/\",\"x\")"];
        var report = Report with
        {
            Subjects = [.. hostile.Select(name => new SubjectHours(name, [.. Report.Months.Select(_ => new Minutes(1))], new Minutes(12), 1, 1))],
            Heading = Report.Heading with { Family = "=1+1", Learner = "@SUM(1,1)", CountingPolicy = "\r=1+1" },
        };
        var sheet = Assert.Single(await SpreadsheetProgram.Open("hours.csv", [.. HoursCsv.Write(report), .. "control,=1+1,,,,,,,\r\n"u8])).Value;

        Assert.Equal("2", Assert.Single(Part(sheet, "control"))[1]);
        Assert.Equal(hostile.Select(SpreadsheetText.Guarded), Part(sheet, "subject").Select(r => r[1]));
        var about = Part(sheet, "about").ToDictionary(r => r[1], r => r[8]);
        Assert.Equal(("'=1+1", "'@SUM(1,1)", "'\n=1+1"), (about["family"], about["learner"], about["counting policy"]));
    }

    [Fact]
    public void A_report_without_entries_is_still_a_whole_file()
    {
        var rows = SpreadsheetProgram.Rows(HoursCsv.Write(SampleReports.Empty()));
        Assert.Equal("0", Assert.Single(Part(rows, "total"))[3]);
        Assert.Empty(Part(rows, "subject-month"));
    }

    private static IEnumerable<string[]> Part(IReadOnlyList<string[]> rows, string part) => rows.Where(r => r[0] == part);

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
