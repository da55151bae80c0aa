using CoopLessons.Core.Hours;
using CoopLessons.Documents.Pdf;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Reports;

/// <summary>One learner's hours as a tagged PDF on US Letter paper. The same report gives the same bytes.</summary>
public static class HoursPdf
{
    private const double Body = 9.5;
    private const double Figures = 8.5;
    private const double LabelWidth = 118;

    public static byte[] Write(HoursReport report)
    {
        var paper = MonthTables.FitsPortrait(report, Figures) ? Paper.LetterPortrait : Paper.LetterLandscape;
        var page = new List<Slice>();
        page.Add(Prose.Title(ReportWords.Title));
        page.AddRange(new PaperTable(
            [new("", LabelWidth, false), new("", Math.Min(paper.TextWidth - LabelWidth, 460), false)], Facts(report), paper.Margin, Body).Slices(before: 10));

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

        var heading = report.Heading;
        return PaperDocument.Write(paper, page, new DocumentTitles(
            $"{ReportWords.Title}: {ReportWords.Given(heading.Learner)}, {heading.Year}",
            heading.Family,
            $"{ReportWords.Given(PlainText.OneLine(heading.Learner))} · {PlainText.OneLine(heading.Year)} · Made on {ReportWords.Date(heading.MadeOn)} · Fingerprint {report.Fingerprint}",
            heading.MadeOn));
    }

    private static List<PaperRow> Facts(HoursReport report)
    {
        var heading = report.Heading;
        var rows = new List<PaperRow>
        {
            new(["Learner", ReportWords.Given(heading.Learner)]),
            new(["Family", ReportWords.Given(heading.Family)]),
            new(["School year", ReportWords.Given(heading.Year)]),
            new(["Period", report.Period.ToString()]),
            new(["Total", $"{report.Total.Clock} hours and minutes, which is {ReportWords.Decimal(report.Total)} hours"]),
            new(["School days", $"{ReportWords.Days(report.SchoolDays)}\n{ReportWords.StrictMeaning}"]),
        };
        if (report.SchoolDaysBroad != report.SchoolDays)
            rows.Add(new(["Read broadly", $"{ReportWords.Days(report.SchoolDaysBroad)}\n{ReportWords.BroadMeaning}"]));
        rows.Add(new(["Minimum day", $"{report.MinimumDay.Clock} ({ReportWords.Number(report.MinimumDay.Value)} minutes)"]));
        rows.Add(new(["What we count", ReportWords.Given(heading.CountingPolicy)]));
        return rows;
    }

    private static IEnumerable<Slice> Days(HoursReport report, Paper paper)
    {
        if (report.Subjects.Count == 0)
            yield break;
        var broad = report.Subjects.Any(s => s.BroadDays != s.StrictDays);
        List<PaperColumn> columns = [new("Subject", 220, false), new(ReportWords.StrictDays, 90, true)];
        if (broad)
            columns.Add(new(ReportWords.BroadDays, 120, true));
        var rows = report.Subjects.Select(s => new PaperRow(broad
            ? [s.Subject, ReportWords.Number(s.StrictDays), ReportWords.Number(s.BroadDays)]
            : [s.Subject, ReportWords.Number(s.StrictDays)])).ToList();
        yield return Prose.Heading("Days of each subject");
        if (broad)
        {
            foreach (var slice in Prose.Paragraph(ReportWords.MetInPassing, paper, Body, keepWithNext: true))
                yield return slice;
        }

        foreach (var slice in new PaperTable(columns, rows, paper.Margin, Figures).Slices(before: 4))
            yield return slice;
    }

    private static IEnumerable<Slice> Places(HoursReport report, Paper paper)
    {
        var rows = report.Places.Select(p => new PaperRow([ReportWords.Place(p.Place), p.Total.Clock, ReportWords.Decimal(p.Total)])).ToList();
        rows.Add(new PaperRow(["All places", report.Total.Clock, ReportWords.Decimal(report.Total)], Strong: true));
        yield return Prose.Heading("Where it happened");
        List<PaperColumn> columns = [new("Place", 220, false), new("Hours and minutes", 90, true), new("Hours", 120, true)];
        foreach (var slice in new PaperTable(columns, rows, paper.Margin, Figures).Slices(before: 4))
            yield return slice;
    }
}
