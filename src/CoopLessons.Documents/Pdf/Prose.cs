using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>Headings, paragraphs and lists, cut into slices.</summary>
internal static class Prose
{
    private const double Measure = 540;

    public static Slice Title(string text)
    {
        var font = NotoSans.Bold(20);
        return new Slice(26, (sheet, top) =>
        {
            sheet.Open(PdfBlockLevelElementTag.Heading1);
            sheet.Text(text, font, sheet.Paper.Margin, top + 19);
            sheet.Close();
        })
        { KeepWithNext = true };
    }

    public static Slice Heading(string text)
    {
        var font = NotoSans.Bold(12);
        return new Slice(18, (sheet, top) =>
        {
            sheet.Open(PdfBlockLevelElementTag.Heading2);
            sheet.Text(text, font, sheet.Paper.Margin, top + 13);
            sheet.Close();
        })
        { Before = 18, KeepWithNext = true, Bookmark = new Bookmark(text, 1) };
    }

    /// <summary>A heading inside a section, in as many lines as it needs.</summary>
    /// <param name="level">3 or 4.</param>
    public static IEnumerable<Slice> Subheading(string text, Paper paper, int level) =>
        Subheading(text, paper, level == 3 ? 10.5 : 9.5, level == 3 ? PdfBlockLevelElementTag.Heading3 : PdfBlockLevelElementTag.Heading4);

    /// <summary>A heading of a size of its own, in as many lines as it needs.</summary>
    public static IEnumerable<Slice> Subheading(string text, Paper paper, double size, PdfBlockLevelElementTag tag)
    {
        var font = NotoSans.Bold(size);
        var lines = WrappedText.Lines(PrintableText.Of(PlainText.OneLine(text), font), font, Math.Min(paper.TextWidth, Measure));
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            var (first, last) = (i == 0, i == lines.Count - 1);
            yield return new Slice(size * 1.4, (sheet, top) =>
            {
                if (first)
                    sheet.Open(tag);
                sheet.Text(line, font, paper.Margin, top + size * 1.08);
                if (last)
                    sheet.Close();
            })
            { Before = first ? 12 : 0, KeepWithNext = true };
        }
    }

    public static IEnumerable<Slice> Paragraph(string text, Paper paper, double size, bool keepWithNext = false)
    {
        var font = NotoSans.Regular(size);
        var lines = WrappedText.Lines(PrintableText.Of(text, font), font, Math.Min(paper.TextWidth, Measure));
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            var (first, last) = (i == 0, i == lines.Count - 1);
            yield return new Slice(size * 1.4, (sheet, top) =>
            {
                if (first)
                    sheet.Open(PdfBlockLevelElementTag.Paragraph);
                sheet.Text(line, font, paper.Margin, top + size * 1.08);
                if (last)
                    sheet.Close();
            })
            // No line of a paragraph stands alone on a sheet.
            { Before = first ? 4 : 0, KeepWithNext = (keepWithNext && lines.Count <= 6) || (first && !last) || i == lines.Count - 2 };
        }
    }

    /// <summary>A numbered list.</summary>
    /// <param name="items">At least one.</param>
    public static IEnumerable<Slice> List(IReadOnlyList<string> items, Paper paper, double size)
    {
        var font = NotoSans.Regular(size);
        var indent = NotoSans.Width(items.Count.ToString(CultureInfo.InvariantCulture) + ". ", font) + 4;
        for (var i = 0; i < items.Count; i++)
        {
            var lines = WrappedText.Lines(PrintableText.Of(items[i], font), font, Math.Min(paper.TextWidth, Measure) - indent);
            for (var k = 0; k < lines.Count; k++)
            {
                var (item, line) = (i, k);
                yield return new Slice(size * 1.4, (sheet, top) => DrawItem(sheet, top + size * 1.08, lines, line, item, items.Count, font, indent))
                { Before = line == 0 ? 3 : 0 };
            }
        }
    }

    private static void DrawItem(Sheet sheet, double baseline, IReadOnlyList<string> lines, int line, int item, int count, XFont font, double indent)
    {
        if (line == 0)
        {
            if (item == 0)
                sheet.Open(PdfBlockLevelElementTag.List);
            sheet.Open(PdfBlockLevelElementTag.ListItem);
            sheet.Open(PdfBlockLevelElementTag.Label);
            sheet.Text((item + 1).ToString(CultureInfo.InvariantCulture) + ".", font, sheet.Paper.Margin, baseline);
            sheet.Close();
            sheet.Open(PdfBlockLevelElementTag.ListBody);
        }

        sheet.Text(lines[line], font, sheet.Paper.Margin + indent, baseline);
        if (line < lines.Count - 1)
            return;
        sheet.Close();
        sheet.Close();
        if (item == count - 1)
            sheet.Close();
    }
}
