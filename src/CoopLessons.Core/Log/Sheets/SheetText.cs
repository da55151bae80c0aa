using System.Text;

namespace CoopLessons.Core.Log.Sheets;

/// <summary>The text of a file of separated values, and in which encoding it was found to be.</summary>
/// <param name="Encoding">As it is said: “UTF-8”, “UTF-16” or “Windows-1252”.</param>
public sealed record SheetText(string Text, string Encoding)
{
    // How many of the first bytes are looked at for the zeros of UTF-16 without a mark.
    private const int Sample = 2_000;
    private static readonly Encoding s_windows = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    /// <summary>
    /// By its byte order mark (RFC 3629 § 6, RFC 2781 § 3.2); without one UTF-16 where every other byte of plain letters is zero,
    /// UTF-8 where all of it is that, and else Windows-1252, which every row of bytes can be.
    /// </summary>
    public static SheetText Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            bytes = bytes[3..];
        else if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return new(System.Text.Encoding.Unicode.GetString(bytes[2..]), "UTF-16");
        else if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return new(System.Text.Encoding.BigEndianUnicode.GetString(bytes[2..]), "UTF-16");
        else if (ZerosAt(bytes, 1))
            return new(System.Text.Encoding.Unicode.GetString(bytes), "UTF-16");
        else if (ZerosAt(bytes, 0))
            return new(System.Text.Encoding.BigEndianUnicode.GetString(bytes), "UTF-16");
        return System.Text.Unicode.Utf8.IsValid(bytes) ? new(System.Text.Encoding.UTF8.GetString(bytes), "UTF-8") : new(s_windows.GetString(bytes), "Windows-1252");
    }

    private static bool ZerosAt(ReadOnlySpan<byte> bytes, int first)
    {
        var (zeros, others) = (0, 0);
        for (var i = 0; i + 1 < Math.Min(bytes.Length, Sample); i += 2)
        {
            zeros += bytes[i + first] == 0 ? 1 : 0;
            others += bytes[i + 1 - first] == 0 ? 1 : 0;
        }

        return others == 0 && zeros > 0 && zeros * 2 >= Math.Min(bytes.Length, Sample) / 2;
    }
}
