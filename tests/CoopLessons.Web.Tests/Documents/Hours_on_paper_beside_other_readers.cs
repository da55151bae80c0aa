using System.Xml.Linq;
using CoopLessons.Core.Hours;
using CoopLessons.Documents.Reports;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class Hours_on_paper_beside_other_readers
{
    // Reference program: qpdf checks the file's syntax, its cross-reference table and each stream to its last byte.
    [FactBeside("qpdf")]
    public async Task Qpdf_finds_nothing_to_say()
    {
        foreach (var report in new[] { SampleReports.Year(), SampleReports.Autumn(), SampleReports.Empty(), SampleReports.Hostile() })
        {
            using var bench = new Workbench();
            var (code, output, errors) = await ReferenceProgram.Named("qpdf").Run("--check", bench.Put("hours.pdf", HoursPdf.Write(report)));
            Assert.True(code == 0, output + errors);
            Assert.Equal("", errors);
            Assert.DoesNotContain("WARNING", output, StringComparison.Ordinal);
        }
    }

    // Reference program: pdfinfo of poppler-utils reads the structure as assistive software would.
    [FactBeside("pdfinfo")]
    public async Task The_structure_is_headings_paragraphs_lists_and_whole_tables()
    {
        var report = SampleReports.Of("Alder", "Wren", [.. Enumerable.Range(1, 60).Select(i => $"Subject {i}")], SampleReports.WholeYear);
        var lines = await Structure(report);

        Assert.Equal("Document", lines[0].Trim());
        Assert.Single(lines, line => line.Trim().StartsWith("H1", StringComparison.Ordinal));
        Assert.Equal(5, lines.Count(line => line.Trim().StartsWith("H2", StringComparison.Ordinal)));
        // Facts in two parts, hours, days, places: the hours run over several sheets and are one table all the same.
        Assert.Equal(5, lines.Count(line => line.Trim().StartsWith("Table", StringComparison.Ordinal)));
        Assert.Equal(5 + 63 + 61 + 6, lines.Count(line => line.Trim() == "TR"));
        Assert.Equal(report.Questions.Count, lines.Count(line => line.Trim().StartsWith("LI", StringComparison.Ordinal)));
        Assert.Equal(13 + 1 + 3 + 3, lines.Count(line => line.Trim() == "/Scope /Column"));
        Assert.Equal(lines.Count(line => line.Trim().StartsWith("TH", StringComparison.Ordinal)), lines.Count(line => line.Trim().StartsWith("/Scope", StringComparison.Ordinal)));
        // Headings that are shown again and feet of sheets are no part of what is read aloud.
        Assert.Single(lines.Zip(lines.Skip(1)), pair => pair is { First: var above, Second: var line } && above.Trim() == "/Scope /Column" && line.Trim() == "\"Total\"");
        Assert.DoesNotContain(lines, line => line.Contains("Page 1 of", StringComparison.Ordinal));
    }

    [FactBeside("pdfinfo")]
    public async Task Lines_that_were_broken_for_the_paper_read_on_as_one_text()
    {
        var policy = string.Join(' ', Enumerable.Range(1, 900).Select(i => $"word{i}"));
        var report = SampleReports.Year();
        var lines = await Structure(report with { Heading = report.Heading with { CountingPolicy = policy } });
        Assert.Contains(policy, string.Concat(lines.Select(line => line.Trim().Trim('"'))), StringComparison.Ordinal);
    }

    // Reference program: pdfinfo of poppler-utils; well-formed XML is the .NET XML reader's judgement.
    [FactBeside("pdfinfo")]
    public async Task The_metadata_is_well_formed_whatever_the_names_are()
    {
        var report = SampleReports.Year();
        var pdf = HoursPdf.Write(report with { Heading = report.Heading with { Learner = "Wren <&> \"Lark\" \u0001\uD800", Family = "Alder & Birch" } });
        using var bench = new Workbench();
        var (code, output, errors) = await ReferenceProgram.Named("pdfinfo").Run("-meta", bench.Put("hours.pdf", pdf));
        Assert.True(code == 0, errors);
        var packet = XDocument.Parse(output[output.IndexOf("<x:xmpmeta", StringComparison.Ordinal)..output.IndexOf("<?xpacket end", StringComparison.Ordinal)]);
        XNamespace dc = "http://purl.org/dc/elements/1.1/";
        Assert.Equal("Hours of instruction: Wren <&> \"Lark\" \uFFFD, 2026–2027", packet.Descendants(dc + "title").Single().Value.Trim());
        Assert.Equal("Alder & Birch", packet.Descendants(dc + "creator").Single().Value.Trim());
    }

    private static async Task<string[]> Structure(HoursReport report)
    {
        using var bench = new Workbench();
        var (code, output, errors) = await ReferenceProgram.Named("pdfinfo").Run("-struct-text", bench.Put("hours.pdf", HoursPdf.Write(report)));
        Assert.True(code == 0 && errors.Length == 0, errors);
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
