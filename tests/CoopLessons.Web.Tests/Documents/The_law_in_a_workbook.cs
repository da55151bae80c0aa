using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Documents.Reports;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class The_law_in_a_workbook
{
    private static readonly HoursReport Report = SampleReports.Year();

    // Reference program: LibreOffice Calc works every h:mm out anew; what the workbook carries as results is taken out before.
    [FactBeside("soffice", "libreoffice")]
    public async Task Every_figure_is_read_back_with_its_source_and_its_hours_worked_out_anew()
    {
        var law = SampleLaw.Move();
        var rows = await Law(law);
        Assert.Equal(["Pathway", "What is counted", "Standing", "Unit", "Logged", "Logged h:mm", "Figure", "Figure h:mm", "Cut down", "Cut down h:mm"], rows[0][..10]);
        var figures = law.Pathways.SelectMany(p => p.Figures.Select(f => (Pathway: p, Figure: f))).ToList();
        foreach (var ((pathway, figure), row) in figures.Zip(rows.Skip(1)))
        {
            Assert.Equal([pathway.Title, figure.Name, figure.Standing.Words()], row[..3]);
            Assert.Equal([.. Shown(figure.Logged), .. Shown(figure.Full), .. Shown(figure.CutDown)], row[4..10]);
            Assert.Equal([figure.Source.Cite, figure.Source.BasisWords, figure.Source.Checked.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), figure.Source.NeedsConfirming ? "confirm this" : ""], row[13..17]);
        }

        Assert.Equal("minutes", rows[1][3]);
        Assert.Contains(rows, r => r[3] == "days");
        Assert.Equal(figures.Count(f => f.Figure.CutDown is not null), rows.Count(r => r[10].Contains("cut down to those days: arithmetic, not law", StringComparison.Ordinal)));
        Assert.Contains(rows, r => r[0] == "What this is not" && r[1].Contains("no legal advice", StringComparison.Ordinal));
    }

    [FactBeside("soffice", "libreoffice")]
    public async Task The_days_and_the_subjects_stand_below()
    {
        var law = SampleLaw.Of("US-NY", "home-instruction", null);
        var sheet = Assert.Single(law.Pathways);
        var rows = await Law(law);
        Assert.Contains(rows, r => r[1] == "1 July 2026 to 30 June 2027, the whole year." && r[3] == "2026-07-01" && r[4] == "2027-06-30");
        var subjects = rows.SkipWhile(r => r[1] != "How our subjects are read").Skip(1).Take(sheet.Subjects.Count);
        Assert.Equal(
            sheet.Subjects.Select(s => (s.Name, s.Family.Count == 0 ? "none" : string.Join(", ", s.Family), s.Source.Cite)), subjects.Select(r => (r[1], r[2], r[3])));
    }

    [FactBeside("soffice", "libreoffice")]
    public async Task A_spreadsheet_shows_what_a_family_typed_and_runs_none_of_it()
    {
        var law = SampleLaw.Hostile();
        var rows = await Law(law);
        var sheet = Assert.Single(law.Pathways);
        Assert.Contains(rows, r => r[1] == "Or: @SUM(1,1)");
        Assert.Contains(rows, r => r[1] == "=1+1");
        Assert.Contains(rows, r => r[0] == SpreadsheetText.Clean(sheet.Title));
        Assert.Contains(rows, r => r[6] == "2100000000" && r[7] == "35000000:00");
    }

    [FactBeside("soffice", "libreoffice")]
    public async Task A_text_longer_than_a_cell_goes_on_below()
    {
        var law = SampleLaw.Of("US-MO", "home-school");
        var cite = string.Concat(Enumerable.Range(0, 50_000).Select(i => (char)('a' + i % 26)));
        var sheet = law.Pathways[0];
        var rows = await Law(law with { Pathways = [sheet with { Figures = [sheet.Figures[0] with { Source = sheet.Figures[0].Source with { Cite = cite } }] }] });
        Assert.Equal(cite, rows[1][13] + rows[2][13]);
        Assert.Equal("", rows[2][4]);
    }

    [Fact]
    public async Task It_is_the_second_sheet_and_the_others_are_as_without_it()
    {
        var (with, without) = (await Parts(SampleLaw.Move()), await Parts(null));
        Assert.Equal(3, without.Count);
        Assert.Equal(4, with.Count);
        Assert.Equal(without, [with[0], with[2], with[3]]);
    }

    [Fact]
    public async Task The_same_log_law_and_day_give_the_same_bytes_at_another_hour()
    {
        var first = await HoursXlsx.WriteAsync(Report, SampleLaw.Move(), default);
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(first));
        Assert.All(zip.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
        using var properties = new StreamReader(zip.GetEntry("docProps/core.xml")!.Open());
        Assert.Contains(">2027-08-02T00:00:00Z<", await properties.ReadToEndAsync(), StringComparison.Ordinal);
        Assert.Equal(first, await HoursXlsx.WriteAsync(SampleReports.Year(), SampleLaw.Move(), default));
    }

    private static async Task<List<string>> Parts(LawSection? law)
    {
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(await HoursXlsx.WriteAsync(Report, law, default)));
        var parts = new List<string>();
        foreach (var entry in zip.Entries.Where(e => e.FullName.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)).OrderBy(e => e.FullName, StringComparer.Ordinal))
        {
            using var text = new StreamReader(entry.Open());
            parts.Add(await text.ReadToEndAsync());
        }

        return parts;
    }

    private static async Task<IReadOnlyList<string[]>> Law(LawSection law) =>
        (await SpreadsheetProgram.Open("hours.xlsx", SpreadsheetProgram.WithoutResults(await HoursXlsx.WriteAsync(Report, law, default))))["Law"];

    // The number, and h:mm worked out here where it is minutes.
    private static string[] Shown(Quantity? quantity) => quantity switch
    {
        null => ["", ""],
        { Measure: Measure.Minutes } minutes => [Number(minutes.Value), string.Create(CultureInfo.InvariantCulture, $"{minutes.Value / 60}:{minutes.Value % 60:00}")],
        { } other => [Number(other.Value), ""],
    };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
