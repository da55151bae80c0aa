using System.Text;
using PdfSharp.Drawing;

namespace CoopLessons.Documents.Pdf;

/// <summary>Breaks printable text into lines that fit a width.</summary>
internal static class WrappedText
{
    /// <summary>
    /// Lines break at spaces and at line feeds, and inside a word only where the word alone is wider than the line.
    /// A line that broke at a space keeps it, so that the words stay apart when the text is read back.
    /// </summary>
    /// <returns>At least one line.</returns>
    public static IReadOnlyList<string> Lines(string text, XFont font, double width)
    {
        var lines = new List<string>();
        var paragraphs = text.Split('\n');
        for (var i = 0; i < paragraphs.Length; i++)
            Break(paragraphs[i], font, width, i < paragraphs.Length - 1, lines);
        return lines;
    }

    /// <summary>One line, shortened with an ellipsis where it does not fit. For repeats of text that stands in full elsewhere.</summary>
    public static string Shortened(string text, XFont font, double width)
    {
        var line = text.Replace('\n', ' ');
        if (NotoSans.Width(line, font) <= width)
            return line;
        var room = width - NotoSans.Width("…", font);
        var (kept, _) = Fitting(line, font, room);
        return kept.TrimEnd() + "…";
    }

    private static void Break(string paragraph, XFont font, double width, bool another, List<string> lines)
    {
        var space = NotoSans.Width(" ", font);
        var line = new StringBuilder();
        var used = 0.0;
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            var wide = NotoSans.Width(rest, font);
            if (line.Length > 0 && used + wide > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            while (wide > width)
            {
                var (kept, left) = Fitting(rest, font, width);
                lines.Add(kept);
                rest = left;
                wide = NotoSans.Width(rest, font);
            }

            line.Append(rest).Append(' ');
            used += wide + space;
        }

        lines.Add(another ? line.ToString() : line.ToString().TrimEnd(' '));
    }

    /// <summary>As many characters as fit, at least one, and the rest.</summary>
    private static (string Kept, string Left) Fitting(string text, XFont font, double width)
    {
        var used = 0.0;
        var length = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            used += NotoSans.Width(rune.ToString(), font);
            if (used > width && length > 0)
                break;
            length += rune.Utf16SequenceLength;
        }

        return (text[..length], text[length..]);
    }
}
