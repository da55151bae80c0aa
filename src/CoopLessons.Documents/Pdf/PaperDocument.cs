using System.Globalization;
using CoopLessons.Documents.Placing;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>What a document says about itself.</summary>
/// <param name="RunningFoot">Shown at the foot of every sheet beside the page number; shortened where it is too long.</param>
internal sealed record DocumentTitles(string Title, string Author, string RunningFoot, DateOnly MadeOn);

/// <summary>Where a document with pictures is written to, and what it takes them from.</summary>
/// <param name="To">Written from front to end; need not be able to seek.</param>
/// <param name="Aside">An empty file for the time of writing: can be written, read and sought in.</param>
/// <param name="Sources">The files by the hash that the places name.</param>
/// <param name="Tell">Told how far it is.</param>
internal sealed record PictureWriting(Stream To, Stream Aside, IReadOnlyDictionary<string, PageSource> Sources, Action<PaperProgress>? Tell = null);

/// <summary>Slices laid out, drawn and numbered as one tagged PDF.</summary>
internal static class PaperDocument
{
    private const double FootSize = 8;

    /// <summary>Where all sheets are drawn and the pictures are put in.</summary>
    public const double DrawnShare = 0.5;

    public static byte[] Write(Paper paper, IReadOnlyList<Slice> slices, DocumentTitles titles)
    {
        using var document = Drawn(paper, slices, titles, null, null, CancellationToken.None);
        return FinishedPdf.Of(document, titles);
    }

    /// <summary>The same with pictures from other files, of which no more than one is in memory at a time.</summary>
    /// <exception cref="SourceUnreadableException">A file is not what it was when it was checked.</exception>
    public static void Write(Paper paper, IReadOnlyList<Slice> slices, DocumentTitles titles, PictureWriting writing, CancellationToken ct)
    {
        PagePlaces? places = null;
        using var document = Drawn(paper, slices, titles, d => places = new PagePlaces(d), writing.Tell, ct);
        var carried = new CarriedStreams(writing.Aside);
        FinishedPdf.Write(document, titles, writing.To, whole => new PlacedPages(whole, places!, carried).Fill(writing.Sources, writing.Tell, ct), carried, ct);
    }

    private static PdfDocument Drawn(
        Paper paper, IReadOnlyList<Slice> slices, DocumentTitles titles, Func<PdfDocument, PagePlaces>? pictures, Action<PaperProgress>? tell, CancellationToken ct)
    {
        var document = new PdfDocument();
        var accessibility = UAManager.ForDocument(document);
        accessibility.SetDocumentLanguage("en-US");
        document.ViewerPreferences.DisplayDocTitle = true;
        var places = pictures?.Invoke(document);
        var bookmarks = new Bookmarks(document);
        var sheets = Flow.Over(paper, slices);
        for (var i = 0; i < sheets.Count; i++)
        {
            ct.ThrowIfCancellationRequested();
            var page = document.AddPage();
            page.Width = XUnit.FromPoint(paper.Width);
            page.Height = XUnit.FromPoint(paper.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            var sheet = new Sheet(paper, graphics, accessibility.StructureBuilder, Inks.Usual, places);
            foreach (var (slice, top) in sheets[i])
            {
                if (slice.Bookmark is { } bookmark)
                    bookmarks.Add(bookmark, page, paper.Height - top);
                slice.Draw(sheet, top);
            }

            // A paragraph or cell may go on overleaf: the foot, being decoration, also ends its content on this page.
            Foot(sheet, titles.RunningFoot, i + 1, sheets.Count);
            tell?.Invoke(new PaperProgress(string.Create(CultureInfo.InvariantCulture, $"Sheet {i + 1} of {sheets.Count} is drawn"), DrawnShare * (i + 1) / sheets.Count));
        }

        return document;
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

    /// <summary>The list of a document's places (ISO 32000-1, 12.3.3), shown opened.</summary>
    private sealed class Bookmarks(PdfDocument document)
    {
        private PdfOutline? _last;

        /// <param name="top">From the bottom of the sheet.</param>
        public void Add(Bookmark bookmark, PdfPage page, double top)
        {
            var outline = new PdfOutline(PlainText.OneLine(bookmark.Title), page, opened: true) { PageDestinationType = PdfPageDestinationType.Xyz, Top = top };
            if (bookmark.Level > 1 && _last is not null)
            {
                _last.Outlines.Add(outline);
                return;
            }

            document.Outlines.Add(outline);
            _last = outline;
        }
    }
}
