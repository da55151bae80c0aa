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
            .SelectMany(Forms).Distinct(StringComparer.Ordinal).OrderByDescending(n => n.Length).ThenBy(n => n, StringComparer.Ordinal).Select(Regex.Escape).ToList();
        if (names.Count > 0)
            _names = new Regex($@"(?<![\p{{L}}\p{{M}}\p{{N}}])(?:{string.Join('|', names)})(?![\p{{L}}\p{{M}}\p{{N}}])", RegexOptions.CultureInvariant);
    }

    /// <summary>As it is typed, unless all in small letters: a text writes it with a capital all the same; with capitals at the beginning of its words, and in capitals alone.</summary>
    private static IEnumerable<string> Forms(string name) =>
        new[] { Words(name, rest => rest), Words(name, rest => rest.ToLowerInvariant()), name.ToUpperInvariant() }.Concat(name.Any(char.IsUpper) || !name.Any(char.IsLower) ? [name] : []);

    private static string Words(string name, Func<string, string> rest) => Regex.Replace(name, @"\p{L}[\p{L}\p{M}]*", w => char.ToUpperInvariant(w.Value[0]) + rest(w.Value[1..]));

    public string TakenOut(string text) => _names?.Replace(text, Instead) ?? text;
}
