using System.Text;

namespace CoopLessons.Web.Pages.Families;

/// <summary>Codes by which a bundle's subject is recognised, made from a subject's name.</summary>
public static class SubjectCodes
{
    private const int Longest = 36;

    /// <summary>Lower-case words of plain letters and digits joined by hyphens, unlike every code that is taken.</summary>
    public static string For(string name, IEnumerable<string> taken)
    {
        var words = new StringBuilder();
        foreach (var sign in name.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(sign))
                words.Append(sign);
            else if (words.Length > 0 && words[^1] != '-')
                words.Append('-');
        }

        var code = words.ToString().Trim('-');
        code = code.Length == 0 ? "subject" : code[..Math.Min(code.Length, Longest)].TrimEnd('-');
        var known = taken.ToHashSet(StringComparer.Ordinal);
        return Enumerable.Range(1, known.Count + 1).Select(n => n == 1 ? code : $"{code}-{n}").First(c => !known.Contains(c));
    }
}
