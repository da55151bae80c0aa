using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Placing;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Packets;

/// <summary>
/// A week's packet as one tagged PDF, a page of it for each side of the plan. Every page of a source is in the file once,
/// however many copies there are, and no more than one source is in memory at a time.
/// </summary>
public static class PacketPdf
{
    // Printers leave about a sixth of an inch unprinted; a name stands above the pages.
    private const double Edge = 14.4;
    private const double Head = 14;
    private const double NameSize = 10;
    private const double FootSize = 8;

    /// <param name="to">Written from front to end; need not be able to seek.</param>
    /// <param name="aside">An empty file for the time of writing: can be written, read and sought in.</param>
    /// <exception cref="SourceUnreadableException">A file is not what it was when it was checked.</exception>
    public static void Write(PacketPapers papers, Stream to, Stream aside, CancellationToken ct) => RoomyThread.Run(() => WriteHere(papers, to, aside, ct));

    private static void WriteHere(PacketPapers papers, Stream to, Stream aside, CancellationToken ct)
    {
        using var document = new PdfDocument();
        var accessibility = UAManager.ForDocument(document);
        accessibility.SetDocumentLanguage("en-US");
        document.ViewerPreferences.DisplayDocTitle = true;
        var paper = DividerPaper.PaperOf(papers.Paper);
        var dividers = papers.Dividers.Select(d => DividerPaper.Laid(d, paper)).ToList();
        var places = new PagePlaces(document);
        foreach (var side in papers.Plan.Sides)
        {
            ct.ThrowIfCancellationRequested();
            var page = document.AddPage();
            page.Width = XUnit.FromPoint(paper.Width);
            page.Height = XUnit.FromPoint(paper.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            var sheet = new Sheet(paper, graphics, accessibility.StructureBuilder, Inks.Grey);
            if (side is PacketSide.Divider divider)
                Draw(sheet, dividers[divider.Section][divider.Number], DividerPaper.Foot(papers.Plan, divider.Section));
            else if (side is PacketSide.Copy copy)
                Draw(sheet, page, copy, places);
        }

        var carried = new CarriedStreams(aside);
        var titles = new DocumentTitles(papers.Title, papers.Family, "", papers.MadeOn);
        FinishedPdf.Write(document, titles, to, whole => new PlacedPages(whole, places, carried).Fill(papers.Sources, null, ct), carried, ct);
    }

    private static void Draw(Sheet sheet, IReadOnlyList<Placed> slices, string foot)
    {
        foreach (var (slice, top) in slices)
            slice.Draw(sheet, top);
        var paper = sheet.Paper;
        sheet.Decoration(() => sheet.Text(foot, NotoSans.Regular(FootSize), paper.Margin, paper.Height - paper.Margin, quiet: true));
    }

    private static void Draw(Sheet sheet, PdfPage page, PacketSide.Copy copy, PagePlaces places)
    {
        var paper = sheet.Paper;
        if (copy.For.Name is { } name)
        {
            var font = NotoSans.Bold(NameSize);
            sheet.Open(PdfBlockLevelElementTag.Paragraph);
            sheet.Text(WrappedText.Shortened(PrintableText.Of(PlainText.OneLine(name), font), font, paper.Width - 2 * Edge - 8), font, Edge + 4, Edge + NameSize);
            sheet.Close();
        }

        var (width, height) = (paper.Width - 2 * Edge, (paper.Height - 2 * Edge - Head) / copy.Piece.Up);
        for (var i = 0; i < copy.Pages.Count; i++)
        {
            var box = new XRect(Edge, Edge + Head + i * height, width, height);
            var place = places.Of(new PagePlace(copy.Piece.FileHash, copy.Pages[i], copy.Piece.Colour, width, height));
            sheet.Picture(place, box, InWords(copy, copy.Pages[i]));
            places.Note(page);
        }
    }

    private static string InWords(PacketSide.Copy copy, int page)
    {
        var which = copy.Piece.Pages.Count == 1 && page == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", page {page}");
        return PlainText.OneLine(copy.Piece.Printable) + which + (copy.For.Name is { } name ? ", for " + PlainText.OneLine(name) : "");
    }
}
