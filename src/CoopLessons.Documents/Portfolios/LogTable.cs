using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>Lines of the log on paper.</summary>
internal static class LogTable
{
    public const string Title = "What was done, day by day";

    public static IEnumerable<Slice> Of(IReadOnlyList<LogPaper> log, Paper paper, double size)
    {
        yield return Prose.Heading(Title);
        var rest = paper.TextWidth - 64 - 36;
        List<PaperColumn> columns =
        [
            new("Day", 64, Names: true), new("What", rest * 0.57), new("Subjects", rest * 0.28), new("Where", rest * 0.15), new("Time", 36, Figures: true),
        ];
        var rows = log.Select(l => new PaperRow([l.Date.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture), l.What, l.Subjects, l.Place, l.Minutes.Clock])).ToList();
        foreach (var slice in new PaperTable(columns, rows, paper.Margin, size - 1).Slices(before: 4, whole: 0))
            yield return slice;
    }
}
