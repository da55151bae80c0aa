using System.Text.RegularExpressions;

namespace CoopLessons.Core.Evidence;

/// <summary>
/// Takes the names of other children out of what somebody outside reads of one child. A name is found as a whole word that
/// begins with a capital or is all capitals, so that a robin in a garden stays one; it is no proof that a text names nobody.
/// </summary>
public sealed class OtherNames
{
    /// <summary>What stands instead of a name.</summary>
    public const string Instead = "[another child]";

    private readonly Regex? _names;

    /// <param name="own">The child who is read of; a name that is alike stays.</param>
    /// <param name="others">Any number, the own one and empty ones among them or not.</param>
    public OtherNames(string own, IEnumerable<string> others)
    {
        var names = others.Select(n => n.Trim()).Where(n => n.Length > 1 && !string.Equals(n, own.Trim(), StringComparison.OrdinalIgnoreCase))
            .SelectMany(n => new[] { n, n.ToUpperInvariant() }).Distinct(StringComparer.Ordinal).OrderByDescending(n => n.Length).ThenBy(n => n, StringComparer.Ordinal).Select(Regex.Escape).ToList();
        if (names.Count > 0)
            _names = new Regex($@"(?<![\p{{L}}\p{{M}}\p{{N}}])(?:{string.Join('|', names)})(?![\p{{L}}\p{{M}}\p{{N}}])", RegexOptions.CultureInvariant);
    }

    public string TakenOut(string text) => _names?.Replace(text, Instead) ?? text;
}
