using System.Globalization;
using System.Text.RegularExpressions;

namespace CoopLessons.Core.Prepare.Books;

/// <summary>
/// Chapters as a parent writes them down from a table of contents. A line of numbers is that many chapters, each with its
/// pages or minutes; any other line is a chapter's name with its length behind it; <c>12 x 10</c> is twelve of ten.
/// </summary>
public static partial class ChapterText
{
    public const int MostChapters = 200;
    public const int LongestName = 80;
    public const int MostTenths = 9990;
    private const int InALine = 10;

    /// <param name="fault">What is amiss and in which line, for the person who typed it; empty where the text is right.</param>
    /// <returns>False where a line cannot be read or there are too many chapters. No text at all is no chapters.</returns>
    public static bool TryRead(string? text, out IReadOnlyList<BookChapter> chapters, out string fault)
    {
        var read = new List<BookChapter>();
        (chapters, fault) = ([], "");
        foreach (var (line, number) in (text ?? "").ReplaceLineEndings("\n").Split('\n').Select((l, i) => (l.Trim(), i + 1)).Where(l => l.Item1.Length > 0))
        {
            if (LineFault(line, read) is { } amiss)
            {
                fault = $"Line {number}: {amiss}";
                return false;
            }
        }

        if (read.Count > MostChapters)
        {
            fault = $"A book has at most {MostChapters} chapters here; these are {read.Count}.";
            return false;
        }

        chapters = read;
        return true;
    }

    /// <summary>The chapters as they are written, ten numbers a line where they have no names.</summary>
    public static string Of(IReadOnlyList<BookChapter> chapters)
    {
        var lines = new List<string>();
        var bare = 0;
        foreach (var chapter in chapters)
        {
            var length = LengthWords.Number(chapter.Tenths);
            if (chapter.Name.Length == 0 && bare % InALine > 0)
                lines[^1] += " " + length;
            else
                lines.Add(chapter.Name.Length == 0 ? length : $"{chapter.Name} {length}");
            bare = chapter.Name.Length == 0 ? bare + 1 : 0;
        }

        return string.Join("\n", lines);
    }

    private static string? LineFault(string line, List<BookChapter> read)
    {
        if (Times().Match(line) is { Success: true } times)
        {
            var count = int.TryParse(times.Groups["count"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var c) ? c : MostChapters + 1;
            if (count is 0 or > MostChapters)
                return $"a book has from 1 to {MostChapters} chapters.";
            return Add(read, "", times.Groups["length"].Value, count);
        }

        if (Numbers().IsMatch(line))
            return line.Split([' ', '\t', ',', ';'], StringSplitOptions.RemoveEmptyEntries).Select(n => Add(read, "", n)).FirstOrDefault(f => f is not null);
        if (Named().Match(line) is not { Success: true } named)
            return "write the pages or minutes behind the name, as in “The mill wheel 14”.";
        var name = named.Groups["name"].Value;
        return name.Length > LongestName ? $"a chapter's name has at most {LongestName} signs." : Add(read, name, named.Groups["length"].Value);
    }

    private static string? Add(List<BookChapter> read, string name, string length, int count = 1)
    {
        if (!decimal.TryParse(length, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || value * 10 is < 1 or > MostTenths || value * 10 % 1 != 0)
            return $"“{length}” is no length from 0.1 to 999, with at most one place after the point.";
        read.AddRange(Enumerable.Repeat(new BookChapter(name, (int)(value * 10)), count));
        return null;
    }

    [GeneratedRegex(@"^(?<count>[0-9]{1,9})\s*[x×]\s*(?<length>[0-9.]+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Times();

    [GeneratedRegex(@"^[0-9.,;\s]+$")]
    private static partial Regex Numbers();

    [GeneratedRegex(@"^(?<name>.*?\S)\s*[:\s]\s*(?<length>[0-9.]+)$")]
    private static partial Regex Named();
}
