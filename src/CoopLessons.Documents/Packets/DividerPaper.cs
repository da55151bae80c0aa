using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Pdf;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Packets;

/// <summary>Lays a divider out: on one side where that can be, in smaller type before it takes a second one.</summary>
public static class DividerPaper
{
    private const double TitleSize = 34;
    private static readonly double[] TypeSizes = [11, 10, 9, 8];

    /// <summary>How many sides the divider takes.</summary>
    /// <returns>1 or more.</returns>
    public static int Sides(Divider divider, PaperSize size) => Laid(divider, PaperOf(size)).Count;

    internal static Paper PaperOf(PaperSize size) => size == PaperSize.A4 ? Paper.A4Portrait : Paper.LetterPortrait;

    internal static IReadOnlyList<IReadOnlyList<Placed>> Laid(Divider divider, Paper paper)
    {
        IReadOnlyList<IReadOnlyList<Placed>> sheets = [];
        foreach (var size in TypeSizes)
        {
            sheets = Flow.Over(paper, [.. Slices(divider, paper, size)]);
            if (sheets.Count == 1)
                break;
        }

        return sheets;
    }

    private static IEnumerable<Slice> Slices(Divider divider, Paper paper, double size)
    {
        foreach (var slice in Prose.Paragraph(divider.Week, paper, 10))
            yield return slice;
        foreach (var slice in Title(divider.Subject, paper))
            yield return slice;
        yield return new Slice(6, (sheet, top) => sheet.Rule(paper.Margin, paper.TextWidth, top + 2, strong: true));
        foreach (var slice in divider.Activities.SelectMany(a => Activity(a, paper, size)))
            yield return slice;
        foreach (var slice in Prose.Paragraph(divider.Judgement, paper, size - 1))
            yield return slice with { Before = slice.Before > 0 ? 14 : 0 };
    }

    private static IEnumerable<Slice> Title(string text, Paper paper)
    {
        var font = NotoSans.Bold(TitleSize);
        var lines = WrappedText.Lines(PrintableText.Of(PlainText.OneLine(text), font), font, paper.TextWidth);
        for (var i = 0; i < lines.Count; i++)
        {
            var (line, first, last) = (lines[i], i == 0, i == lines.Count - 1);
            yield return new Slice(TitleSize * 1.3, (sheet, top) =>
            {
                if (first)
                    sheet.Open(PdfBlockLevelElementTag.Heading1);
                sheet.Text(line, font, paper.Margin, top + TitleSize);
                if (last)
                    sheet.Close();
            })
            { KeepWithNext = true };
        }
    }

    private static IEnumerable<Slice> Activity(DividerActivity activity, Paper paper, double size)
    {
        foreach (var slice in Prose.Subheading(activity.Title, paper, size + 4, PdfBlockLevelElementTag.Heading2))
            yield return slice with { Before = slice.Before > 0 ? 18 : 0 };
        foreach (var slice in Prose.Paragraph($"{activity.When} · {activity.Who}", paper, size))
            yield return slice;
        foreach (var slice in activity.Prints.SelectMany(p => Prose.Paragraph("To print: " + p, paper, size)))
            yield return slice;
        if (activity.Cautions.Count == 0)
            yield break;
        foreach (var slice in Prose.Subheading("Take care", paper, size, PdfBlockLevelElementTag.Heading3))
            yield return slice with { Before = slice.Before > 0 ? 8 : 0 };
        foreach (var caution in activity.Cautions)
        {
            foreach (var slice in Lead(caution, paper, size))
                yield return slice;
        }
    }

    /// <summary>A paragraph that begins in bold.</summary>
    private static IEnumerable<Slice> Lead(DividerCaution caution, Paper paper, double size)
    {
        var (bold, plain) = (NotoSans.Bold(size), NotoSans.Regular(size));
        var lead = PrintableText.Of(PlainText.OneLine(caution.Lead), bold) + ". ";
        var indent = NotoSans.Width(lead, bold);
        var text = PrintableText.Of(PlainText.OneLine(caution.Text), plain);
        var lines = Wrapped(text, plain, Math.Min(paper.TextWidth, 540), indent);
        for (var i = 0; i < lines.Count; i++)
        {
            var (line, first, last) = (lines[i], i == 0, i == lines.Count - 1);
            yield return new Slice(size * 1.4, (sheet, top) =>
            {
                var baseline = top + size * 1.08;
                if (first)
                {
                    sheet.Open(PdfBlockLevelElementTag.Paragraph);
                    sheet.Text(lead, bold, paper.Margin, baseline);
                }

                sheet.Text(line, plain, paper.Margin + (first ? indent : 0), baseline);
                if (last)
                    sheet.Close();
            })
            { Before = first ? 4 : 0, KeepWithNext = !last && lines.Count <= 6 };
        }
    }

    private static List<string> Wrapped(string text, XFont font, double width, double firstIndent)
    {
        if (firstIndent > width * 0.6)
            return ["", .. WrappedText.Lines(text, font, width)];
        var head = WrappedText.Lines(text, font, width - firstIndent)[0];
        var rest = text[Math.Min(text.Length, head.TrimEnd(' ').Length)..].TrimStart(' ');
        return rest.Length == 0 ? [head] : [head, .. WrappedText.Lines(rest, font, width)];
    }

    /// <summary>The foot of a divider: which part of the packet, and which of its sheets.</summary>
    internal static string Foot(PacketPlan plan, int section)
    {
        var first = SheetOf(plan, plan.Starts[section]);
        var last = section + 1 < plan.Starts.Count ? SheetOf(plan, plan.Starts[section + 1] - 1) : plan.Sheets;
        var sheets = first == last ? $"sheet {first}" : $"sheets {first} to {last}";
        return string.Create(CultureInfo.InvariantCulture, $"Part {section + 1} of {plan.Starts.Count} · {sheets} of {plan.Sheets}");
    }

    private static int SheetOf(PacketPlan plan, int side) => plan.BothSides ? (side + 1) / 2 : side;
}
