using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Documents.Pdf;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Reports;

/// <summary>One learner's hours as a tagged PDF on US Letter paper. The same report and law give the same bytes.</summary>
public static class HoursPdf
{
    private const double Body = 9.5;
    private const double Figures = 8.5;

    /// <param name="law">Null where no pathway was chosen: the paper then says nothing of the law's figures.</param>
    public static byte[] Write(HoursReport report, LawSection? law = null)
    {
        var paper = MonthTables.FitsPortrait(report, Figures) ? Paper.LetterPortrait : Paper.LetterLandscape;
        var page = new List<Slice>();
        page.Add(Prose.Title(ReportWords.Title));
        page.AddRange(ReportFacts.Of(report, paper, Body));
        page.AddRange(MonthTables.Of(report, paper, Figures));
        page.AddRange(Days(report, paper));
        page.AddRange(Places(report, paper));
        if (report.Questions.Count > 0)
        {
            page.Add(Prose.Heading("Questions still open"));
            page.AddRange(Prose.Paragraph("The minutes in question are counted as they were written.", paper, Body, keepWithNext: true));
            page.AddRange(Prose.List(report.Questions, paper, Body));
        }

        page.Add(Prose.Heading("About this report"));
        page.AddRange(Prose.Paragraph(
            $"Made on {ReportWords.Date(report.Heading.MadeOn)} from {ReportWords.Entries(report.Entries)}. Fingerprint {report.Fingerprint}. {ReportWords.FingerprintMeaning}",
            paper, Body, keepWithNext: true));
        page.AddRange(Prose.Paragraph(ReportWords.Caution, paper, Body));
        if (law is not null)
            page.AddRange(LawPdf.Of(law, paper, Body, Figures));

        var heading = report.Heading;
        return PaperDocument.Write(paper, page, new DocumentTitles(
            $"{ReportWords.Title}: {ReportWords.Given(heading.Learner)}, {heading.Year}",
            heading.Family,
            $"Fingerprint {report.Fingerprint} · Made on {ReportWords.Date(heading.MadeOn)} · {PlainText.OneLine(heading.Year)} · {ReportWords.Given(PlainText.OneLine(heading.Learner))}",
            heading.MadeOn));
    }

    private static IEnumerable<Slice> Days(HoursReport report, Paper paper)
    {
        if (report.Subjects.Count == 0)
            yield break;
        var broad = report.Subjects.Any(s => s.BroadDays != s.StrictDays);
        List<PaperColumn> columns = [new("Subject", 220, Names: true), new(ReportWords.StrictDays, 100, Figures: true)];
        if (broad)
            columns.Add(new(ReportWords.BroadDays, 120, Figures: true));
        var rows = report.Subjects.Select(s => new PaperRow(broad
            ? [ReportWords.Given(s.Subject), ReportWords.Number(s.StrictDays), ReportWords.Number(s.BroadDays)]
            : [ReportWords.Given(s.Subject), ReportWords.Number(s.StrictDays)])).ToList();
        yield return Prose.Heading("Days of each subject");
        if (broad)
        {
            foreach (var slice in Prose.Paragraph(ReportWords.MetInPassing, paper, Body, keepWithNext: true))
                yield return slice;
        }

        foreach (var slice in new PaperTable(columns, rows, paper.Margin, Figures).Slices(before: 4, paper.WorthKeepingWhole))
            yield return slice;
    }

    private static IEnumerable<Slice> Places(HoursReport report, Paper paper)
    {
        var rows = report.Places.Select(p => new PaperRow([ReportWords.Place(p.Place), p.Total.Clock, ReportWords.Decimal(p.Total)])).ToList();
        rows.Add(new PaperRow(["All places", report.Total.Clock, ReportWords.Decimal(report.Total)], Strong: true));
        yield return Prose.Heading("Where it happened");
        List<PaperColumn> columns = [new("Place", 220, Names: true), new("Hours and minutes", 100, Figures: true), new("Decimal hours", 120, Figures: true)];
        foreach (var slice in new PaperTable(columns, rows, paper.Margin, Figures).Slices(before: 4, paper.WorthKeepingWhole))
            yield return slice;
    }
}
