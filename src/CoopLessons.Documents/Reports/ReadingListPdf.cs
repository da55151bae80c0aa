using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Sealing;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>A reading list as a tagged PDF on US Letter paper. The same list gives the same bytes.</summary>
public static class ReadingListPdf
{
    private const double Body = 9.5;
    private const double Lines = 8.5;
    private const double Label = 92;

    /// <param name="seal">What the paper says of the year's sealing; null in an open year.</param>
    public static byte[] Write(ReadingList list, SealMark? seal = null)
    {
        var paper = Paper.LetterLandscape;
        List<PaperRow> facts =
        [
            new(["Learner", ReportWords.Given(list.Learner)]), new(["Family", ReportWords.Given(list.Family)]), new(["School year", $"{ReportWords.Given(list.Year)}, {list.Period}"]),
            new(["Books", ReadingListWords.Counted(list)]),
        ];
        var page = new List<Slice> { Prose.Title(ReadingListWords.Title) };
        page.AddRange(new PaperTable([new("", Label, Names: true), new("", paper.TextWidth - Label)], facts, paper.Margin, Body).Slices(before: 8, whole: 0));
        page.AddRange(list.Lines.Count == 0
            ? Prose.Paragraph("No book is written down for this year.", paper, Body)
            : new PaperTable(Columns(paper.TextWidth), [.. list.Lines.Select(Row)], paper.Margin, Lines).Slices(before: 14, paper.WorthKeepingWhole));
        page.AddRange(Prose.Paragraph(ReadingListWords.Rule, paper, Body));
        if (seal is not null)
        {
            page.Add(Prose.Heading("About this list"));
            page.AddRange(Prose.Paragraph($"{SealWords.Standing(seal)} Fingerprint {seal.Fingerprint.Groups}. {SealWords.Meaning}", paper, Body));
        }

        return PaperDocument.Write(paper, page, new DocumentTitles(
            $"{ReadingListWords.Title}: {ReportWords.Given(list.Learner)}, {list.Year}", list.Family,
            $"{(seal is null ? "" : SealWords.Foot(seal) + " · ")}Made on {ReportWords.Date(list.MadeOn)} · {PlainText.OneLine(list.Year)} · {ReportWords.Given(PlainText.OneLine(list.Learner))}", list.MadeOn));
    }

    private static List<PaperColumn> Columns(double width) =>
    [
        new("Title", width * 0.21, Names: true), new("Author", width * 0.14), new("How", width * 0.115), new("Begun", width * 0.135), new("Ended", width * 0.145), new("Level", width * 0.105),
        new("Note", width * 0.15),
    ];

    private static PaperRow Row(ReadingListLine line) => new(
    [
        line.Isbn.Length > 0 ? $"{ReportWords.Given(line.Title)}\nISBN {line.Isbn}" : ReportWords.Given(line.Title),
        line.Author, ReadingListWords.How(line), ReportWords.Date(line.BegunOn), ReadingListWords.Ended(line), line.Level, line.Note,
    ]);
}
