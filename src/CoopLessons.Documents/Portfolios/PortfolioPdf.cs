using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Packets;
using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>One learner's portfolio as a tagged PDF. The same year, choices and day give the same bytes.</summary>
public static class PortfolioPdf
{
    private const double Body = SubjectSection.Body;
    private const double Figures = 8.5;
    private const double Label = 92;

    /// <exception cref="SourceUnreadableException">A sample's file is not what it was when it was brought.</exception>
    public static void Write(PortfolioPapers papers, PaperFiles files, CancellationToken ct) => RoomyThread.Run(() =>
    {
        var paper = PaperOf(papers.Paper);
        var heading = papers.Report.Heading;
        var learner = ReportWords.Given(PlainText.OneLine(heading.Learner));
        var titles = new DocumentTitles(
            $"Portfolio: {learner}, {PlainText.OneLine(heading.Year)}", heading.Family,
            $"{SealWords.Foot(papers.Report.Fingerprint, papers.Seal)} · Made on {ReportWords.Date(heading.MadeOn)} · {PlainText.OneLine(heading.Year)} · {learner}", heading.MadeOn);
        PaperDocument.Write(paper, WithContents(papers, paper, new PictureShapes(files.Sources)), titles, Writing(files), ct);
    });

    internal static Paper PaperOf(PaperSize size) => DividerPaper.PaperOf(size);

    internal static PictureWriting Writing(PaperFiles files) => new(files.To, files.Aside, files.Sources, files.Tell);

    /// <summary>The list of contents names sheets that are known once everything is laid out; it takes as many lines either way.</summary>
    private static List<Slice> WithContents(PortfolioPapers papers, Paper paper, PictureShapes shapes)
    {
        var rest = Chapters(papers, paper, shapes).ToList();
        var names = rest.Where(s => s.Bookmark is { Level: 1 }).Select(s => s.Bookmark!.Title).ToList();
        var laid = Flow.Over(paper, [.. Cover(papers, paper, names, new int[names.Count]), .. rest]);
        var sheets = laid.SelectMany((sheet, i) => sheet.Where(p => p.Slice.Bookmark is { Level: 1 } b && names.Contains(b.Title)).Select(_ => i + 1)).ToList();
        return [.. Cover(papers, paper, names, sheets), .. rest];
    }

    private static IEnumerable<Slice> Cover(PortfolioPapers papers, Paper paper, List<string> chapters, IReadOnlyList<int> sheets)
    {
        var (report, heading) = (papers.Report, papers.Report.Heading);
        yield return Prose.Title("Portfolio");
        List<(string Name, string Value)> facts =
        [
            ("Learner", ReportWords.Given(heading.Learner)), ("Family", ReportWords.Given(heading.Family)), ("School year", $"{ReportWords.Given(heading.Year)}, {report.Period}"),
            ("Grade", papers.Grade), ("Taught under", papers.Place), ("Made for", papers.Reader),
            ("Hours", $"{report.Total.Clock} in hours and minutes, {ReportWords.Decimal(report.Total)} in decimal hours"),
            ("School days", $"{ReportWords.Days(report.SchoolDays)}. {ReportWords.StrictMeaning} The minimum day is {report.MinimumDay.Clock}."),
            ("What we count", ReportWords.Given(heading.CountingPolicy)),
        ];
        List<PaperRow> rows = [.. facts.Where(f => f.Value.Length > 0).Select(f => new PaperRow([f.Name, f.Value]))];
        foreach (var slice in new PaperTable([new("", Label, Names: true), new("", paper.TextWidth - Label)], rows, paper.Margin, Body).Slices(before: 8, whole: 0))
            yield return slice;
        foreach (var slice in SubjectSection.Own(papers.Opening, paper))
            yield return slice with { Before = slice.Before > 0 ? 8 : 0 };
        if (chapters.Count < 2)
            yield break;
        yield return Prose.Heading("Contents") with { Bookmark = null };
        List<PaperColumn> columns = [new("Part", 300, Names: true), new("Page", 60, Figures: true)];
        foreach (var slice in new PaperTable(columns, [.. chapters.Select((c, i) => new PaperRow([c, ReportWords.Number(sheets[i])]))], paper.Margin, Figures).Slices(before: 2, paper.WorthKeepingWhole))
            yield return slice;
    }

    private static IEnumerable<Slice> Chapters(PortfolioPapers papers, Paper paper, PictureShapes shapes)
    {
        foreach (var slice in Hours(papers, paper))
            yield return slice;
        if (papers.Days is { Count: > 0 } days)
        {
            yield return Prose.Heading("School days");
            List<PaperColumn> columns = [new("Month", 90, Names: true), new("Dates that count", paper.TextWidth - 134), new("Days", 44, Figures: true)];
            foreach (var slice in new PaperTable(columns, [.. days.Select(Dates)], paper.Margin, Figures).Slices(before: 4, paper.WorthKeepingWhole))
                yield return slice;
        }

        if (papers.Reading is { } reading)
        {
            foreach (var slice in BookTable.Of(reading, paper, Body, Figures))
                yield return slice;
        }

        if (papers.Subjects.Count > 0)
        {
            yield return Prose.Heading("Work in each subject") with { OpensSheet = true, Before = 0 };
            foreach (var slice in papers.Subjects.SelectMany(s => SubjectSection.Of(s, paper, shapes, papers.Full)))
                yield return slice;
        }

        foreach (var slice in Pairs(papers, paper, shapes))
            yield return slice;
        if (papers.Log is { Count: > 0 } log)
        {
            foreach (var slice in LogTable.Of(log, paper, Figures))
                yield return slice;
        }

        if (papers.Law is { } law)
        {
            foreach (var slice in LawPdf.Of(law, paper, Body, Figures))
                yield return slice;
        }

        yield return Prose.Heading("About this portfolio");
        foreach (var slice in Prose.Paragraph(
            $"Made on {ReportWords.Date(papers.Report.Heading.MadeOn)} from {ReportWords.Entries(papers.Report.Entries)}. {SealWords.RestsOn(papers.Report.Fingerprint, papers.Seal)}",
            paper, Body, keepWithNext: true))
            yield return slice;
        foreach (var slice in Prose.Paragraph(ReportWords.Caution, paper, Body))
            yield return slice;
    }

    private static IEnumerable<Slice> Hours(PortfolioPapers papers, Paper paper)
    {
        var report = papers.Report;
        if (papers.Months)
            return MonthTables.Of(report, paper, Figures).Concat(SubjectTables.Days(report, paper, Figures)).Concat(SubjectTables.Places(report, paper, Figures));
        List<PaperColumn> columns = [new("Subject", 220, Names: true), new("Hours and minutes", 110, Figures: true), new("Days with minutes", 110, Figures: true)];
        List<PaperRow> rows =
        [
            .. report.Subjects.Select(s => new PaperRow([ReportWords.Given(s.Subject), s.Total.Clock, ReportWords.Number(s.StrictDays)])),
            new(["All subjects", report.Total.Clock, ""], Strong: true),
        ];
        return new PaperTable(columns, rows, paper.Margin, Figures).Slices(before: 4, paper.WorthKeepingWhole).Prepend(Prose.Heading("Hours of each subject"));
    }

    private static PaperRow Dates(MonthOfDays month) => new(
    [
        month.Month.Days.First.ToString("MMMM yyyy", CultureInfo.InvariantCulture), string.Join(", ", month.Days.Select(ReportWords.Number)), ReportWords.Number(month.Days.Count),
    ]);

    private static IEnumerable<Slice> Pairs(PortfolioPapers papers, Paper paper, PictureShapes shapes)
    {
        if (papers.Pairs.Count == 0)
            yield break;
        yield return Prose.Heading("The same skill, early and late");
        foreach (var pair in papers.Pairs)
        {
            foreach (var slice in Prose.Subheading(ReportWords.Given(pair.Skill), paper, 3))
                yield return slice;
            foreach (var slice in PictureRows.Of([SubjectSection.Picture(pair.Early, shapes), SubjectSection.Picture(pair.Late, shapes)], paper, 2, papers.Full ? 230 : 170, Figures))
                yield return slice with { KeepWithNext = pair.Words.Length > 0 };
            foreach (var slice in SubjectSection.Own(pair.Words, paper))
                yield return slice;
        }
    }
}
