using System.Text;

namespace CoopLessons.Documents.Calendars;

/// <summary>Content lines of iCalendar (RFC 5545 § 3.1): CRLF ends, no line over 75 octets, no character of UTF-8 cut.</summary>
internal static class ContentLines
{
    private const int Octets = 75;
    private const string Fold = "\r\n ";

    /// <summary>
    /// Folds anew a text that was folded without regard to pairs of surrogates, which stand for one character; a fold
    /// inside a pair would make both halves unreadable.
    /// </summary>
    /// <param name="text">Lines with CRLF ends, folded or not.</param>
    public static byte[] Refold(string text)
    {
        var lines = new StringBuilder(text.Length);
        var used = 0;
        foreach (var rune in text.Replace(Fold, "", StringComparison.Ordinal).EnumerateRunes())
        {
            if (rune.Value is '\r' or '\n')
            {
                used = 0;
            }
            else if (used + rune.Utf8SequenceLength > Octets)
            {
                lines.Append(Fold);
                used = 1 + rune.Utf8SequenceLength;
            }
            else
            {
                used += rune.Utf8SequenceLength;
            }

            lines.Append(rune);
        }

        return Encoding.UTF8.GetBytes(lines.ToString());
    }
}
