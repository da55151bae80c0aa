using CoopLessons.Documents.Placing;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>A picture on paper with what is said of it.</summary>
/// <param name="Source">Hash and page of the file; null where there is nothing to be shown, and <paramref name="Instead"/> stands in the box.</param>
/// <param name="Shape">Its width over its height; null where that is not known, and it is fitted into the box.</param>
/// <param name="Alt">What it shows, for who cannot see it.</param>
/// <param name="Head">A short line in bold below it: its day.</param>
/// <param name="Caption">May be empty.</param>
internal sealed record PaperPicture((string Hash, int Page)? Source, double? Shape, string Instead, string Alt, string Head, string Caption);

/// <summary>Pictures beside each other, each row with its words kept on one sheet.</summary>
internal static class PictureRows
{
    private const double Between = 14;
    private const double Pad = 6;

    /// <param name="columns">How many stand in a row.</param>
    /// <param name="height">The most that a picture takes, in points; a row of wide ones takes less.</param>
    public static IEnumerable<Slice> Of(IReadOnlyList<PaperPicture> pictures, Paper paper, int columns, double height, double size)
    {
        var width = (paper.TextWidth - (columns - 1) * Between) / columns;
        var (bold, regular) = (NotoSans.Bold(size), NotoSans.Regular(size));
        var line = size * 1.36;
        foreach (var row in pictures.Chunk(columns))
        {
            var cells = row.Select(p => (Picture: p, Head: Lines(p.Head, bold, width), Caption: p.Caption.Length == 0 ? [] : Lines(p.Caption, regular, width))).ToList();
            var words = cells.Max(c => c.Head.Count + c.Caption.Count) * line;
            var boxes = row.Select(p => Box(p, width, height)).ToList();
            var high = boxes.Max(b => b.Height);
            yield return new Slice(high + Pad + words, (sheet, top) =>
            {
                for (var i = 0; i < cells.Count; i++)
                    Draw(sheet, cells[i].Picture, cells[i].Head, cells[i].Caption, new XRect(new XPoint(paper.Margin + i * (width + Between), top + high - boxes[i].Height), boxes[i]), line, bold, regular);
            })
            { Before = 10 };
        }
    }

    /// <summary>As large as the picture becomes; the whole place where its shape is not known.</summary>
    private static XSize Box(PaperPicture picture, double width, double height) => picture.Shape is not { } shape ? new XSize(width, height)
        : shape * height > width ? new XSize(width, width / shape) : new XSize(shape * height, height);

    private static void Draw(Sheet sheet, PaperPicture picture, IReadOnlyList<string> head, IReadOnlyList<string> caption, XRect box, double line, XFont bold, XFont regular)
    {
        if (picture.Source is { } source)
            sheet.Placed(new PagePlace(source.Hash, source.Page, Colour: true, box.Width, box.Height, Upright: true), box, picture.Alt);
        else
            Empty(sheet, picture.Instead, box, line, regular);
        var y = Words(sheet, head, box.X, box.Bottom + Pad, line, bold);
        if (caption.Count > 0)
            Words(sheet, caption, box.X, y, line, regular);
    }

    /// <summary>A frame with words where nothing can be shown.</summary>
    private static void Empty(Sheet sheet, string words, XRect box, double line, XFont font)
    {
        sheet.Frame(box);
        var lines = Lines(words, font, box.Width - 2 * Pad);
        Words(sheet, lines, box.X + Pad, box.Y + (box.Height - lines.Count * line) / 2, line, font);
    }

    private static double Words(Sheet sheet, IReadOnlyList<string> lines, double x, double top, double line, XFont font)
    {
        sheet.Open(PdfBlockLevelElementTag.Paragraph);
        foreach (var text in lines)
            sheet.Text(text, font, x, (top += line) - line * 0.26);
        sheet.Close();
        return top;
    }

    private static IReadOnlyList<string> Lines(string text, XFont font, double width) => WrappedText.Lines(PrintableText.Of(text, font), font, width);
}
