using System.Globalization;
using System.Text;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// Text on its way into a spreadsheet. A file of separated values has no types: a spreadsheet takes a cell that begins
/// like a formula for one and runs it. Such a cell gets an apostrophe before it, which a spreadsheet reads as "this is text".
/// </summary>
public static class SpreadsheetText
{
    /// <summary>
    /// For a cell with a type of its own, where text is text: control characters other than the line feed go (a tab
    /// becomes a space), all line ends become a line feed, and what is no Unicode text becomes U+FFFD.
    /// </summary>
    public static string Clean(string text) => PlainText.Clean(text);

    /// <summary>
    /// For a cell without a type. Cleaned as by <see cref="Clean"/>, and with an apostrophe before it where it began with
    /// = + - @ (or one of these in full width), a tab or a line end, before or after cleaning, or where only white space
    /// and marks without a shape stand before such a sign.
    /// </summary>
    public static string Guarded(string text)
    {
        var clean = Clean(text);
        return BeginsLikeFormula(text) || BeginsLikeFormula(clean) ? "'" + clean : clean;
    }

    private static bool BeginsLikeFormula(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is '\t' or '\r' or '\n' or '=' or '+' or '-' or '@' or 0xFF1D or 0xFF0B or 0xFF0D or 0xFF20)
                return true;
            if (!Rune.IsWhiteSpace(rune) && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.Control))
                return false;
        }

        return false;
    }
}
