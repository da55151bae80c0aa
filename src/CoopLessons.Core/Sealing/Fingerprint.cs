using System.Security.Cryptography;
using System.Text;

namespace CoopLessons.Core.Sealing;

/// <summary>A SHA-256 digest (FIPS 180-4): of a record's text in UTF-8, or of a file's bytes.</summary>
public readonly record struct Fingerprint
{
    /// <summary>Digits of the short form.</summary>
    public const int ShortDigits = 12;

    private const int AllDigits = 64;

    private Fingerprint(string hex) => Hex = hex;

    /// <summary>64 hexadecimal digits in small letters.</summary>
    public string Hex { get; }

    /// <summary>Sixteen groups of four digits, parted by single blanks.</summary>
    public string Groups => string.Join(' ', Hex.Chunk(4).Select(g => new string(g)));

    /// <summary>The first twelve digits in groups of four, parted by hyphens: for a sheet's foot.</summary>
    public string ShortForm => ShortOf(Hex);

    public static Fingerprint Of(string text) => Of(Encoding.UTF8.GetBytes(text));

    public static Fingerprint Of(ReadOnlySpan<byte> bytes) => new(Convert.ToHexStringLower(SHA256.HashData(bytes)));

    /// <summary>One that was kept as its 64 digits.</summary>
    /// <exception cref="ArgumentException">Other than 64 hexadecimal digits in small letters.</exception>
    public static Fingerprint Kept(string hex) => hex.Length == AllDigits && hex.All(char.IsAsciiHexDigitLower)
        ? new(hex)
        : throw new ArgumentException("A fingerprint is 64 hexadecimal digits in small letters.", nameof(hex));

    /// <summary>
    /// Reads what somebody typed or pasted from a paper: blanks, line ends, hyphens and other marks between digits are passed
    /// over, and letters may be large.
    /// </summary>
    /// <param name="digits">All 64 digits, or the first twelve or more where not all were given.</param>
    /// <returns>False for fewer than twelve digits, more than 64, or a letter that is none of a to f.</returns>
    public static bool TryRead(string? typed, out string digits)
    {
        digits = "";
        var read = new StringBuilder();
        foreach (var rune in (typed ?? "").EnumerateRunes())
        {
            if (rune.IsAscii && char.IsAsciiHexDigit((char)rune.Value))
                read.Append(char.ToLowerInvariant((char)rune.Value));
            else if (Rune.IsLetterOrDigit(rune))
                return false;
        }

        if (read.Length is < ShortDigits or > AllDigits)
            return false;
        digits = read.ToString();
        return true;
    }

    public override string ToString() => Hex;

    private static string ShortOf(string hex) => $"{hex[..4]}-{hex[4..8]}-{hex[8..12]}";
}
