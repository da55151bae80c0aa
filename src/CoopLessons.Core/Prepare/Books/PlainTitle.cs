using System.Text;

namespace CoopLessons.Core.Prepare.Books;

/// <summary>Titles and names as they are held against each other: whether two people mean the same book.</summary>
public static class PlainTitle
{
    private static readonly string[] Articles = ["the ", "a ", "an "];

    /// <summary>Small letters and digits with single blanks; signs and an English article at the beginning are passed over. A text of signs alone stays as it is.</summary>
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            // An apostrophe belongs to its word; every other sign parts words.
            if (rune.Value is '\'' or '\u2019')
                continue;
            if (Rune.IsLetterOrDigit(rune))
                plain.Append(Rune.ToLowerInvariant(rune).ToString());
            else if (plain.Length > 0 && plain[^1] != ' ')
                plain.Append(' ');
        }

        var line = plain.ToString().TrimEnd();
        var article = Articles.FirstOrDefault(a => line.StartsWith(a, StringComparison.Ordinal) && line.Length > a.Length);
        line = article is null ? line : line[article.Length..];
        return line.Length > 0 ? line : text.Trim();
    }

    /// <summary>
    /// Whether two books are the same: by their numbers where both have one, else by title, and by author where both name one.
    /// </summary>
    public static bool Same((string Title, string Author, string Isbn) one, (string Title, string Author, string Isbn) other)
    {
        if (one.Isbn.Length > 0 && other.Isbn.Length > 0)
            return one.Isbn == other.Isbn;
        var (author, another) = (Of(one.Author), Of(other.Author));
        return Of(one.Title) == Of(other.Title) && (author.Length == 0 || another.Length == 0 || author == another);
    }
}
