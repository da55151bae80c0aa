using CoopLessons.Core.Hours;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>The tables of the hours report that stand below the months.</summary>
internal static class SubjectTables
{
    public static IEnumerable<Slice> Days(HoursReport report, Paper paper, double size)
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
            foreach (var slice in Prose.Paragraph(ReportWords.MetInPassing, paper, size + 1, keepWithNext: true))
                yield return slice;
        }

        foreach (var slice in new PaperTable(columns, rows, paper.Margin, size).Slices(before: 4, paper.WorthKeepingWhole))
            yield return slice;
    }

    public static IEnumerable<Slice> Places(HoursReport report, Paper paper, double size)
    {
        var rows = report.Places.Select(p => new PaperRow([ReportWords.Place(p.Place), p.Total.Clock, ReportWords.Decimal(p.Total)])).ToList();
        rows.Add(new PaperRow(["All places", report.Total.Clock, ReportWords.Decimal(report.Total)], Strong: true));
        yield return Prose.Heading("Where it happened");
        List<PaperColumn> columns = [new("Place", 220, Names: true), new("Hours and minutes", 100, Figures: true), new("Decimal hours", 120, Figures: true)];
        foreach (var slice in new PaperTable(columns, rows, paper.Margin, size).Slices(before: 4, paper.WorthKeepingWhole))
            yield return slice;
    }
}
