using System.Globalization;

namespace CoopLessons.Core.Prepare.Printing;

/// <summary>Pages from a first to a last, both included, counted from 1. Without a last: to the end of the file.</summary>
public readonly record struct PageSpan(int First, int? Last)
{
    public override string ToString() => Last == First ? Text(First) : Last is { } last ? $"{Text(First)}-{Text(last)}" : $"{Text(First)}-";

    private static string Text(int page) => page.ToString(CultureInfo.InvariantCulture);
}

/// <summary>
/// Which pages of a file, as somebody writes it: <c>1-3, 5, 8-</c>. Pages are printed in the order in which they are
/// written, each once; nothing written means all of them.
/// </summary>
public sealed class PageRanges : IEquatable<PageRanges>
{
    /// <summary>The most characters that are read.</summary>
    public const int Longest = 120;

    private readonly IReadOnlyList<PageSpan> _spans;

    private PageRanges(IReadOnlyList<PageSpan> spans) => _spans = spans;

    /// <summary>Every page of the file.</summary>
    public static PageRanges All { get; } = new([]);

    public bool IsAll => _spans.Count == 0;

    /// <summary>Reads what somebody wrote.</summary>
    /// <param name="fault">A sentence to stand beside the field; empty where the text was read.</param>
    public static bool TryRead(string? text, out PageRanges ranges, out string fault)
    {
        (ranges, fault) = (All, "");
        text = (text ?? "").Trim();
        if (text.Length == 0)
            return true;
        if (text.Length > Longest)
        {
            fault = $"Please write the pages in at most {Longest} characters.";
            return false;
        }

        var spans = new List<PageSpan>();
        foreach (var part in text.Split([',', ';'], StringSplitOptions.TrimEntries))
        {
            fault = Read(part, spans);
            if (fault.Length > 0)
                return false;
        }

        ranges = new PageRanges(spans);
        return true;
    }

    /// <summary>The pages of a file with so many.</summary>
    /// <param name="pageCount">1 or more.</param>
    /// <param name="pages">At least one where it is true; in the order written.</param>
    /// <param name="fault">A sentence to stand beside the field: a page that the file does not have, or one that is named twice.</param>
    public bool TryIn(int pageCount, out IReadOnlyList<int> pages, out string fault)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pageCount);
        (pages, fault) = ([], "");
        if (IsAll)
        {
            pages = [.. Enumerable.Range(1, pageCount)];
            return true;
        }

        var chosen = new List<int>();
        var seen = new HashSet<int>();
        foreach (var span in _spans)
        {
            var last = span.Last ?? pageCount;
            if (Math.Max(span.First, last) > pageCount)
            {
                fault = string.Create(CultureInfo.InvariantCulture, $"The file has {(pageCount == 1 ? "one page" : $"{pageCount} pages")}; there is no page {Math.Max(span.First, last)}.");
                return false;
            }

            for (var page = span.First; page <= last; page++)
            {
                if (!seen.Add(page))
                {
                    fault = string.Create(CultureInfo.InvariantCulture, $"Page {page} is named twice.");
                    return false;
                }

                chosen.Add(page);
            }
        }

        pages = chosen;
        return true;
    }

    /// <summary>As it is read back: <c>1-3, 5, 8-</c>; empty for all pages.</summary>
    public override string ToString() => string.Join(", ", _spans);

    public bool Equals(PageRanges? other) => other is not null && _spans.SequenceEqual(other._spans);

    public override bool Equals(object? obj) => Equals(obj as PageRanges);

    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    /// <summary>Adds the span; answers with what is wrong, or nothing.</summary>
    private static string Read(string part, List<PageSpan> spans)
    {
        // A dash as people type it: hyphen, en dash, minus.
        var plain = part.Replace('–', '-').Replace('−', '-');
        var ends = plain.Split('-', StringSplitOptions.TrimEntries);
        if (part.Length == 0)
            return "Between two commas stands nothing. Pages are written like 1-3, 5, 8-.";
        if (ends.Length > 2 || !TryNumber(ends[0], out var first))
            return $"“{part}” is not read as pages. They are written like 1-3, 5, 8-.";
        int? last = first;
        if (ends.Length == 2)
        {
            last = null;
            if (ends[1].Length > 0)
            {
                if (!TryNumber(ends[1], out var end))
                    return $"“{part}” is not read as pages. They are written like 1-3, 5, 8-.";
                last = end;
            }
        }

        if (first == 0 || last == 0)
            return "Pages are counted from 1.";
        if (last < first)
            return $"“{part}” runs backwards: the earlier page is written first.";
        spans.Add(new PageSpan(first, last));
        return "";
    }

    private static bool TryNumber(string text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && text.Length <= 5;
}
