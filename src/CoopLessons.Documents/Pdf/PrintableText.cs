using System.Globalization;
using System.Text;
using PdfSharp.Drawing;

namespace CoopLessons.Documents.Pdf;

/// <summary>Text that the typeface can show. What it has no glyph for is named in brackets, so that nothing vanishes unseen.</summary>
internal static class PrintableText
{
    public const char Square = '\u25A1';

    /// <summary>
    /// Marks without a shape of their own (direction marks, joiners, variation selectors) are left out. What the face has no
    /// glyph for is named instead: a run of Hebrew letters, with the spaces in it, becomes <c>[in Hebrew letters]</c>, and a
    /// sequence that makes one sign <c>[sign]</c>. Line feeds stay.
    /// </summary>
    public static string Of(string text, XFont font)
    {
        var clean = PlainText.Clean(text).Normalize(NormalizationForm.FormC);
        var shown = new StringBuilder(clean.Length);
        var named = new Named(shown);
        var signs = StringInfo.GetTextElementEnumerator(clean);
        while (signs.MoveNext())
            AppendSign(named, shown, signs.GetTextElement(), font);
        return shown.ToString();
    }

    private static void AppendSign(Named named, StringBuilder shown, string sign, XFont font)
    {
        var start = shown.Length;
        foreach (var rune in sign.EnumerateRunes())
        {
            if (rune.Value == '\n')
            {
                shown.Append('\n');
                named.End();
            }
            else if (Rune.IsWhiteSpace(rune))
            {
                shown.Append(rune.Value == 0xA0 ? '\u00A0' : ' ');
            }
            else if (IsShapeless(rune))
            {
                continue;
            }
            else if (NotoSans.Has(rune.Value, font))
            {
                shown.Append(rune.ToString());
                named.End();
            }
            else
            {
                shown.Length = start;
                named.Add(WritingSystem.Of(rune));
                return;
            }
        }
    }

    /// <summary>Names a run once, however many letters and spaces it has.</summary>
    private sealed class Named(StringBuilder shown)
    {
        private string? _open;
        private int _end;

        public void End() => _open = null;

        public void Add(string? system)
        {
            var name = system is null ? "[sign]" : $"[in {system} letters]";
            if (_open == name)
            {
                shown.Length = _end;
                return;
            }

            // A combining mark may stand against the letter before it.
            if (shown.Length > 0 && shown[^1] is not (' ' or '\n' or '\u00A0' or '(' or '“' or '"'))
                shown.Append(' ');
            shown.Append(name);
            (_open, _end) = (name, shown.Length);
        }
    }

    internal static bool IsShapeless(Rune rune) =>
        Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format
        || rune.Value is (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF) or 0x034F;
}
