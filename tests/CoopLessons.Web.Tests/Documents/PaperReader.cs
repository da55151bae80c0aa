using System.Globalization;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>
/// Reads a PDF as a person does, by where the words stand (reference program: PdfPig). Words on one line of paper make one
/// row; rows run from top to bottom and from sheet to sheet.
/// </summary>
internal static class PaperReader
{
    public static IReadOnlyList<string[]> Rows(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().SelectMany(Rows)];
    }

    public static IReadOnlyList<string[]> Rows(Page page) =>
        [.. page.GetWords()
            .GroupBy(word => Math.Round(word.Letters[0].StartBaseLine.Y, 1))
            .OrderByDescending(line => line.Key)
            .Select(line => line.OrderBy(word => word.BoundingBox.Left).Select(word => word.Text).ToArray())];

    /// <summary>The figures at the end of the rows that begin with a name, in the order in which they stand.</summary>
    public static IEnumerable<string[]> Figures(IEnumerable<string[]> rows, string name)
    {
        var words = name.Split(' ');
        return rows.Where(row => row.Take(words.Length).SequenceEqual(words))
            .Select(row => row.Skip(words.Length).ToArray())
            .Where(rest => rest.Length > 0 && rest.All(word => word.All(c => char.IsAsciiDigit(c) || c is ':' or '.')));
    }

    /// <summary>Minutes of h:mm, worked out here and not by the product.</summary>
    public static int Minutes(string clock)
    {
        var parts = clock.Split(':');
        return int.Parse(parts[0], CultureInfo.InvariantCulture) * 60 + int.Parse(parts[1], CultureInfo.InvariantCulture);
    }

    public static string AllText(byte[] pdf) => string.Join(' ', Rows(pdf).SelectMany(row => row));
}
