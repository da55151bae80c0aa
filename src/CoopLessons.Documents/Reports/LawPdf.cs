using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>The report's section on the law, on paper.</summary>
internal static class LawPdf
{
    private const double Label = 92;
    private const double Indent = 10;

    // A table of figures or subjects up to this share of a sheet is not cut: more would leave sheets half white.
    private const double WorthKeepingWhole = 0.4;

    public static IEnumerable<Slice> Of(LawSection law, Paper paper, double body, double figures)
    {
        yield return Prose.Heading(LawWords.Title);
        foreach (var slice in Prose.Paragraph(LawWords.Opening(law), paper, body, keepWithNext: true))
            yield return slice;
        // Before the figures: nobody meets them without it, and it never fills a last sheet alone.
        foreach (var slice in Prose.Paragraph(LawWords.Caution, paper, body, keepWithNext: true))
            yield return slice;
        foreach (var slice in law.Unread.SelectMany(words => Prose.Paragraph(words, paper, body, keepWithNext: true)))
            yield return slice;
        foreach (var slice in law.Pathways.SelectMany(p => Pathway(p, paper, body, figures)))
            yield return slice;
    }

    private static IEnumerable<Slice> Pathway(PathwaySheet pathway, Paper paper, double body, double figures)
    {
        foreach (var slice in Prose.Subheading(pathway.Title, paper, 3))
            yield return slice;
        List<PaperRow> facts = [new(["Counted over", pathway.Days]), .. pathway.Sources.Select(s => new PaperRow([s.Of, LawWords.Source(s.Source)]))];
        foreach (var slice in Table([new("", Label, Names: true), new("", paper.TextWidth - Label)], facts, paper, figures))
            yield return slice;
        foreach (var slice in pathway.Figures.Count == 0 ? Prose.Paragraph(LawWords.NoFigures, paper, body) : Figures(pathway, paper, figures))
            yield return slice;
        foreach (var slice in Prose.Subheading(LawWords.Subjects, paper, 4))
            yield return slice;
        foreach (var slice in pathway.Subjects.Count == 0 ? Prose.Paragraph(LawWords.NoSubjects, paper, body) : Subjects(pathway, paper, body, figures))
            yield return slice;
    }

    private static IReadOnlyList<Slice> Figures(PathwaySheet pathway, Paper paper, double size)
    {
        var rest = paper.TextWidth;
        List<PaperColumn> columns =
        [
            new("What is counted", rest * 0.29, Names: true), new("Logged", rest * 0.12), new("Figure", rest * 0.2), new("Standing", rest * 0.11), new("Source", rest * 0.28),
        ];
        var rows = pathway.Figures.Select(f => new PaperRow(
            [Lines(ReportWords.Given(f.Name), f.Status, f.Remark), f.Logged?.ToString() ?? "", Target(f), f.Standing.Words(), LawWords.Source(f.Source)], Indent: f.Depth * Indent));
        return Table(columns, [.. rows], paper, size);
    }

    private static string Target(FigureLine figure) =>
        Lines(LawWords.Full(figure), figure.CutDown is { } part ? $"{part} {LawWords.CutDown}" : "");

    // Subjects of one statute mostly share one source: it is then said once.
    private static IEnumerable<Slice> Subjects(PathwaySheet pathway, Paper paper, double body, double size)
    {
        var sources = pathway.Subjects.Select(s => s.Source).Distinct().ToList();
        if (sources.Count > 1)
        {
            List<PaperColumn> three = [new("Subject", paper.TextWidth * 0.34, Names: true), new("Our subjects", paper.TextWidth * 0.3), new("Source", paper.TextWidth * 0.36)];
            return Table(three, [.. pathway.Subjects.Select(s => new PaperRow([LawWords.Subject(s), LawWords.Family(s), LawWords.Source(s.Source)]))], paper, size);
        }

        List<PaperColumn> two = [new("Subject", paper.TextWidth * 0.5, Names: true), new("Our subjects", paper.TextWidth * 0.5)];
        return Prose.Paragraph($"Source of these subjects: {LawWords.Source(sources[0])}.", paper, body, keepWithNext: true)
            .Concat(Table(two, [.. pathway.Subjects.Select(s => new PaperRow([LawWords.Subject(s), LawWords.Family(s)]))], paper, size));
    }

    private static IReadOnlyList<Slice> Table(IReadOnlyList<PaperColumn> columns, IReadOnlyList<PaperRow> rows, Paper paper, double size) =>
        new PaperTable(columns, rows, paper.Margin, size).Slices(before: 4, (paper.Bottom - paper.Margin) * WorthKeepingWhole);

    private static string Lines(params string[] lines) => string.Join('\n', lines.Where(l => l.Length > 0));
}
