using CoopLessons.Core.Prepare.Books;
using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>A reading list on a sheet that stands upright.</summary>
internal static class BookTable
{
    public static IEnumerable<Slice> Of(ReadingList list, Paper paper, double body, double size)
    {
        yield return Prose.Heading(ReadingListWords.Title);
        if (list.Lines.Count == 0)
        {
            foreach (var slice in Prose.Paragraph("No book is written down for this year.", paper, body))
                yield return slice;
            yield break;
        }

        foreach (var slice in Prose.Paragraph($"{ReadingListWords.Counted(list)}. {ReadingListWords.Rule}", paper, body, keepWithNext: true))
            yield return slice;
        foreach (var slice in Table(list.Lines, paper, size))
            yield return slice;
    }

    public static IReadOnlyList<Slice> Table(IReadOnlyList<ReadingListLine> lines, Paper paper, double size)
    {
        var width = paper.TextWidth;
        List<PaperColumn> columns = [new("Title", width * 0.31, Names: true), new("Author", width * 0.21), new("How", width * 0.14), new("Begun", width * 0.17), new("Ended", width * 0.17)];
        return new PaperTable(
            columns, [.. lines.Select(l => new PaperRow([ReportWords.Given(l.Title), l.Author, ReadingListWords.How(l), ReportWords.Date(l.BegunOn), ReadingListWords.Ended(l)]))],
            paper.Margin, size).Slices(before: 4, paper.WorthKeepingWhole);
    }
}
