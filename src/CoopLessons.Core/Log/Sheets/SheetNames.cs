using System.Globalization;
using System.Text.RegularExpressions;

namespace CoopLessons.Core.Log.Sheets;

/// <summary>The names that a sheet uses for learners and subjects, and what the family says they are.</summary>
/// <param name="Learners">By the name’s folded words.</param>
/// <param name="Subjects">By the name’s folded words.</param>
public sealed record SheetNames(IReadOnlyDictionary<string, Guid> Learners, IReadOnlyDictionary<string, Guid> Subjects);

/// <summary>Takes cells apart that name several learners or subjects.</summary>
public static partial class NamesInCells
{
    private const int HighestWeight = 1000;

    /// <summary>Names parted by comma, semicolon, slash, plus, ampersand, line end or “and”.</summary>
    public static IReadOnlyList<string> Of(string cell) => [.. Between().Split(cell).Select(p => p.Trim()).Where(p => p.Length > 0)];

    /// <summary>
    /// Names as above, each with a weight of its own behind a colon or in brackets where it has one, else 1:
    /// <c>Science: 25, Art: 15</c> or <c>Science (2) / Art</c>. A weight is 1–1000; what is none belongs to the name.
    /// </summary>
    public static IReadOnlyList<(string Name, int Weight)> Weighted(string cell) => [.. Of(cell).Select(part =>
        Weight().Match(part) is { Success: true } m && int.TryParse(m.Groups["w"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var weight) && weight is >= 1 and <= HighestWeight
            ? (m.Groups["n"].Value.Trim(), weight)
            : (part, 1))];

    [GeneratedRegex(@"[,;/+&\n]|\s+and\s+", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex Between();

    [GeneratedRegex(@"^(?<n>.*[^\s:(])\s*(:\s*|\()(?<w>[0-9]{1,4})\s*(min|%)?\)?$", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Weight();
}
