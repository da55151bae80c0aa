using System.Globalization;
using System.Text;
using PdfSharp.Drawing;

namespace CoopLessons.Documents.Pdf;

/// <summary>Text that the typeface can show. What it has no glyph for is shown as an open square, so that nothing vanishes unseen.</summary>
internal static class PrintableText
{
    public const char Square = '\u25A1';

    /// <summary>
    /// Marks without a shape of their own (direction marks, joiners, variation selectors) are left out; every other
    /// character that the face lacks becomes one square, a sequence that makes one sign becoming one square too.
    /// Line feeds stay.
    /// </summary>
    public static string Of(string text, XFont font)
    {
        var clean = PlainText.Clean(text).Normalize(NormalizationForm.FormC);
        var shown = new StringBuilder(clean.Length);
        var signs = StringInfo.GetTextElementEnumerator(clean);
        while (signs.MoveNext())
            AppendSign(shown, signs.GetTextElement(), font);
        return shown.ToString();
    }

    private static void AppendSign(StringBuilder shown, string sign, XFont font)
    {
        var start = shown.Length;
        foreach (var rune in sign.EnumerateRunes())
        {
            if (rune.Value == '\n')
            {
                shown.Append('\n');
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
            }
            else
            {
                shown.Length = start;
                shown.Append(Square);
                return;
            }
        }
    }

    private static bool IsShapeless(Rune rune) =>
        Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format
        || rune.Value is (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF) or 0x034F;
}
