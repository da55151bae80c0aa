using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace CoopLessons.Core.Prepare.Books;

/// <summary>
/// The number of an edition of a book (ISO 2108), checked and kept in its form of thirteen digits. One of ten signs is the
/// same number with 978 before it and another check digit; a number that begins with 979 has no form of ten.
/// </summary>
/// <remarks>
/// Check digits as the ISBN Users' Manual of the International ISBN Agency reckons them: of thirteen, the digits weighed
/// 1 and 3 in turn add up to a multiple of 10; of ten, weighed 10 down to 1, to a multiple of 11, an X standing for 10.
/// </remarks>
public sealed partial record Isbn
{
    private const string Bookland = "978";

    private Isbn(string digits) => Digits = digits;

    /// <summary>Thirteen digits without hyphens.</summary>
    public string Digits { get; }

    /// <summary>Ten signs without hyphens, the last perhaps an X; null where the number begins with 979.</summary>
    public string? Ten => Digits.StartsWith(Bookland, StringComparison.Ordinal) ? Digits[3..12] + CheckOfTen(Digits[3..12]) : null;

    /// <summary>Reads a number of ten or thirteen as it is printed: hyphens, blanks and the letters ISBN before it are passed over.</summary>
    /// <param name="fault">What is amiss, as a sentence for the person who typed it; empty where the number is right.</param>
    public static bool TryRead(string? text, [NotNullWhen(true)] out Isbn? isbn, out string fault)
    {
        var signs = Between().Replace(Before().Replace(text ?? "", ""), "").ToUpperInvariant();
        fault = FaultOf(signs);
        isbn = fault.Length > 0 ? null : new Isbn(signs.Length == 13 ? signs : Thirteen(signs[..9]));
        return isbn is not null;
    }

    public override string ToString() => Digits;

    private static string FaultOf(string signs)
    {
        foreach (var odd in signs.EnumerateRunes().Where(s => s.Value is not ('X' or >= '0' and <= '9')))
            return $"An ISBN is made of digits, with hyphens or blanks between them; “{odd}” is none.";
        if (signs.Length is not (10 or 13))
            return $"An ISBN has 10 or 13 digits; here {(signs.Length == 1 ? "is 1" : $"are {signs.Length}")}.";
        if (signs.IndexOf('X', StringComparison.Ordinal) is >= 0 and var at && (signs.Length == 13 || at != 9))
            return "An X stands only as the last sign of an ISBN of 10.";
        if (signs.Length == 13 && !signs.StartsWith(Bookland, StringComparison.Ordinal) && !signs.StartsWith("979", StringComparison.Ordinal))
            return "An ISBN of 13 digits begins with 978 or 979.";
        var right = signs.Length == 13 ? CheckOfThirteen(signs[..12]) : CheckOfTen(signs[..9]);
        return signs[^1] == right ? "" : "This number does not add up: one digit is wrong, or two are swapped.";
    }

    private static string Thirteen(string nine) => Bookland + nine + CheckOfThirteen(Bookland + nine);

    private static char CheckOfThirteen(string twelve)
    {
        var sum = twelve.Select((d, i) => (d - '0') * (i % 2 == 0 ? 1 : 3)).Sum();
        return (char)('0' + (10 - sum % 10) % 10);
    }

    private static char CheckOfTen(string nine)
    {
        var sum = nine.Select((d, i) => (d - '0') * (10 - i)).Sum();
        var check = (11 - sum % 11) % 11;
        return check == 10 ? 'X' : check.ToString(CultureInfo.InvariantCulture)[0];
    }

    [GeneratedRegex(@"^\s*ISBN(?:-1[03](?=[:\s]))?[:\s]*", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Before();

    // Blanks of any kind, and the hyphens and dashes that a keyboard or a copied page may bring.
    [GeneratedRegex(@"[\s\p{Pd}\u2212\u00AD]")]
    private static partial Regex Between();
}
