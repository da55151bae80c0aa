using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>What a document says about itself.</summary>
/// <param name="RunningFoot">Shown at the foot of every sheet beside the page number; shortened where it is too long.</param>
internal sealed record DocumentTitles(string Title, string Author, string RunningFoot, DateOnly MadeOn);

/// <summary>Slices laid out, drawn and numbered as one tagged PDF.</summary>
internal static class PaperDocument
{
    private const double FootSize = 8;

    public static byte[] Write(Paper paper, IReadOnlyList<Slice> slices, DocumentTitles titles)
    {
        using var document = new PdfDocument();
        var accessibility = UAManager.ForDocument(document);
        accessibility.SetDocumentLanguage("en-US");
        document.ViewerPreferences.DisplayDocTitle = true;
        var structure = accessibility.StructureBuilder;
        var sheets = Flow.Over(paper, slices);
        for (var i = 0; i < sheets.Count; i++)
        {
            var page = document.AddPage();
            page.Width = XUnit.FromPoint(paper.Width);
            page.Height = XUnit.FromPoint(paper.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            var sheet = new Sheet(paper, graphics, structure, Inks.Usual);
            foreach (var (slice, top) in sheets[i])
                slice.Draw(sheet, top);
            // A paragraph or cell may go on overleaf: the foot, being decoration, also ends its content on this page.
            Foot(sheet, titles.RunningFoot, i + 1, sheets.Count);
        }

        return FinishedPdf.Of(document, titles);
    }

    private static void Foot(Sheet sheet, string running, int number, int count)
    {
        var paper = sheet.Paper;
        var font = NotoSans.Regular(FootSize);
        var page = string.Create(CultureInfo.InvariantCulture, $"Page {number} of {count}");
        var pageWidth = NotoSans.Width(page, font);
        var text = WrappedText.Shortened(PrintableText.Of(running, font), font, paper.TextWidth - pageWidth - 24);
        var baseline = paper.Height - paper.Margin;
        sheet.Rule(paper.Margin, paper.TextWidth, baseline - FootSize - 6);
        sheet.Decoration(() =>
        {
            sheet.Text(text, font, paper.Margin, baseline, quiet: true);
            sheet.Text(page, font, paper.Margin + paper.TextWidth - pageWidth, baseline, quiet: true);
        });
    }
}
