using System.Globalization;
using System.Text;

namespace CoopLessons.Documents;

/// <summary>Text as people typed it, made safe to write into a file: nothing invisible that could break the file stays.</summary>
internal static class PlainText
{
    /// <summary>
    /// Line ends become one line feed, other control characters go, and what is no Unicode text
    /// (half a surrogate pair, a noncharacter) becomes U+FFFD.
    /// </summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        var afterReturn = false;
        foreach (var rune in text.EnumerateRunes())
        {
            var lineEnd = rune.Value is '\n' or '\r' or 0x85 or 0x2028 or 0x2029;
            if (lineEnd)
            {
                if (rune.Value != '\n' || !afterReturn)
                    clean.Append('\n');
            }
            else if (rune.Value == '\t')
            {
                clean.Append(' ');
            }
            else if (Rune.GetUnicodeCategory(rune) != UnicodeCategory.Control)
            {
                clean.Append(IsNoncharacter(rune.Value) ? "\uFFFD" : rune.ToString());
            }

            afterReturn = rune.Value == '\r';
        }

        return clean.ToString();
    }

    /// <summary>The same on one line: line feeds become spaces, and marks that turn the direction of what follows go.</summary>
    public static string OneLine(string text)
    {
        var line = Clean(text).Where(c => c is not ((>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069')));
        return string.Concat(line).Replace('\n', ' ').Trim();
    }

    private static bool IsNoncharacter(int codePoint) => (codePoint & 0xFFFE) == 0xFFFE || codePoint is >= 0xFDD0 and <= 0xFDEF;
}
