using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Core.Requirements;
using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>One subject of a report on a term.</summary>
/// <param name="ReadAs">The family's subjects that are read as it; may be empty.</param>
/// <param name="PerCent">As the parent says it; null for what the plan says.</param>
/// <param name="Topic">A matter within other subjects, without figures of its own.</param>
public sealed record TermSubjectPaper(string Name, string ReadAs, Minutes Minutes, int Days, MaterialCovered Covered, int? PerCent, string Mark, string Narrative, string Explanation, bool Topic = false)
{
    public int? Share => PerCent ?? Covered.PerCent;
}

/// <summary>A report on a term or a year as a reader asked for it.</summary>
/// <param name="Draft">Not finished: said on every sheet.</param>
/// <param name="Cite">Where it is asked for; may be empty.</param>
public sealed record TermPapers(
    string Title, bool Draft, string Family, string Learner, string Year, DayRange Days, string Grade, string Place, string Cite, IReadOnlyList<ReportPart> Parts, string Opening,
    Minutes Total, int SchoolDays, int Entries, string Fingerprint, DateOnly MadeOn, IReadOnlyList<TermSubjectPaper> Subjects, PaperSize Paper);

/// <summary>A report on a term as a tagged PDF. The same report gives the same bytes.</summary>
public static class TermReportPdf
{
    private const double Body = SubjectSection.Body;
    private const double Figures = 8.5;
    private const double Label = 92;

    public static byte[] Write(TermPapers papers)
    {
        var paper = PortfolioPdf.PaperOf(papers.Paper);
        var title = ReportWords.Given(PlainText.OneLine(papers.Title));
        var learner = ReportWords.Given(PlainText.OneLine(papers.Learner));
        var page = new List<Slice> { Prose.Title(WrappedText.Shortened(PrintableText.Of(title, NotoSans.Bold(20)), NotoSans.Bold(20), paper.TextWidth)) };
        page.AddRange(Facts(papers, paper));
        page.AddRange(SubjectSection.Own(papers.Opening, paper).Select(s => s with { Before = s.Before > 0 ? 8 : 0 }));
        page.AddRange(Table(papers, paper));
        if (papers.Parts.Contains(ReportPart.Progress) || papers.Subjects.Any(s => s.Explanation.Length > 0))
        {
            page.Add(Prose.Heading("Each subject"));
            page.AddRange(papers.Subjects.Where(s => !s.Topic || s.Narrative.Length + s.Explanation.Length > 0).SelectMany(s => Subject(s, papers, paper)));
        }

        page.Add(Prose.Heading("About this report"));
        page.AddRange(Prose.Paragraph(
            $"{(papers.Draft ? "A draft of" : "Finished on")} {ReportWords.Date(papers.MadeOn)} from {ReportWords.Entries(papers.Entries)}. Fingerprint {papers.Fingerprint}. {ReportWords.FingerprintMeaning}",
            paper, Figures, keepWithNext: true));
        page.AddRange(Prose.Paragraph(ReportWords.Caution, paper, Figures));
        return PaperDocument.Write(paper, page, new DocumentTitles(
            $"{title}: {learner}, {PlainText.OneLine(papers.Year)}", papers.Family,
            $"{(papers.Draft ? "Draft · " : "")}Fingerprint {papers.Fingerprint} · {ReportWords.Date(papers.MadeOn)} · {title} · {learner}", papers.MadeOn));
    }

    private static IReadOnlyList<Slice> Facts(TermPapers papers, Paper paper)
    {
        List<(string Name, string Value)> facts =
        [
            ("Learner", ReportWords.Given(papers.Learner)), ("Family", ReportWords.Given(papers.Family)), ("School year", ReportWords.Given(papers.Year)), ("Days", papers.Days.ToString()),
            ("Grade", papers.Grade), ("Taught under", papers.Place), ("Asked for by", papers.Cite),
            ("Hours", papers.Parts.Contains(ReportPart.Hours) ? $"{papers.Total.Clock} in hours and minutes, {ReportWords.Decimal(papers.Total)} in decimal hours" : ""),
            ("Attendance", papers.Parts.Contains(ReportPart.Attendance) ? ReportWords.Days(papers.SchoolDays) + " of school" : ""),
            ("Standing", papers.Draft ? "Draft, not finished" : ""),
        ];
        return new PaperTable(
            [new("", Label, Names: true), new("", paper.TextWidth - Label)], [.. facts.Where(f => f.Value.Length > 0).Select(f => new PaperRow([f.Name, f.Value]))], paper.Margin, Body).Slices(before: 8, whole: 0);
    }

    private static IEnumerable<Slice> Table(TermPapers papers, Paper paper)
    {
        var (hours, material, marks) = (papers.Parts.Contains(ReportPart.Hours), papers.Parts.Contains(ReportPart.Material) && papers.Subjects.Any(s => s.Share is not null), papers.Subjects.Any(s => s.Mark.Length > 0));
        if (!hours && !material && !marks)
            yield break;
        List<PaperColumn> columns = [new("Subject", 210, Names: true)];
        if (hours)
            columns.AddRange([new("Hours and minutes", 80, Figures: true), new("Days", 50, Figures: true)]);
        if (material)
            columns.Add(new("Of the plan", 84, Figures: true));
        if (marks)
            columns.Add(new("Mark", 80));
        var counted = papers.Subjects.Where(s => !s.Topic || s.Share is not null || s.Mark.Length > 0).ToList();
        var rows = counted.Select(s =>
        {
            List<string> cells = [ReportWords.Given(s.Name)];
            if (hours)
                cells.AddRange(s.Topic ? ["", ""] : [s.Minutes.Clock, ReportWords.Number(s.Days)]);
            if (material)
                cells.Add(s.Share is { } share ? $"{share} %" : "not said");
            if (marks)
                cells.Add(s.Mark);
            return new PaperRow(cells);
        }).ToList();
        yield return Prose.Heading(hours ? "Hours of each subject" : "Each subject at a glance");
        if (hours && papers.Subjects.Any(s => !s.Topic && s.ReadAs.Length > 0))
        {
            foreach (var slice in Prose.Paragraph("A subject of ours may be read as more than one of these, so the rows need not add up to the total.", paper, Body, keepWithNext: true))
                yield return slice;
        }

        foreach (var slice in new PaperTable(columns, rows, paper.Margin, Figures).Slices(before: 4, paper.WorthKeepingWhole))
            yield return slice;
        var within = papers.Subjects.Except(counted).Select(s => ReportWords.Given(s.Name) + (s.ReadAs.Length > 0 ? $" (within {s.ReadAs})" : "")).ToList();
        if (within.Count == 0)
            yield break;
        foreach (var slice in Prose.Paragraph($"Within other subjects, without hours of their own: {string.Join("; ", within)}.", paper, Body))
            yield return slice with { Before = slice.Before > 0 ? 8 : 0 };
    }

    private static IEnumerable<Slice> Subject(TermSubjectPaper subject, TermPapers papers, Paper paper)
    {
        var told = new List<string>();
        if (papers.Parts.Contains(ReportPart.Material))
            told.Add(subject.PerCent is { } share ? $"{share} per cent of what was planned was covered." : subject.Covered.Planned > 0 ? subject.Covered.Sentence : "");
        if (papers.Parts.Contains(ReportPart.Progress))
            told.Add(subject.Narrative);
        if (subject.Explanation.Length > 0)
            told.Add($"Why less was covered than planned: {subject.Explanation}");
        told.RemoveAll(t => t.Length == 0);
        if (told.Count == 0)
            told.Add(subject.Minutes == Minutes.Zero ? "Nothing was logged in this term." : "Nothing is written of it.");
        var name = ReportWords.Given(PlainText.OneLine(subject.Name));
        foreach (var slice in Prose.Subheading(subject.ReadAs.Length > 0 ? $"{name} ({(subject.Topic ? "within" : "ours")}: {subject.ReadAs})" : name, paper, 3))
            yield return slice;
        foreach (var slice in told.SelectMany(t => SubjectSection.Own(t, paper)))
            yield return slice;
    }
}
