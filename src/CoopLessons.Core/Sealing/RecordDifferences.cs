using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Sealing;

/// <summary>What two records of one learner's year say of the same thing.</summary>
/// <param name="About">Such as <c>3 March 2027, Baked bread</c>.</param>
/// <param name="Was">Such as <c>40 minutes</c>.</param>
/// <param name="Now">Such as <c>41</c>.</param>
/// <param name="Follows">A sum that follows from other differences.</param>
public sealed record RecordDifference(string About, string Was, string Now, bool Follows = false)
{
    /// <summary>Where the first is the sealed record and the second is made from the log as it stands.</summary>
    public string Sentence => $"{About}: {Was} in the sealed record, {Now} in the log now";
}

/// <summary>Holds two records of one learner's year beside each other, entry by entry and field by field.</summary>
public static class RecordDifferences
{
    private const string Missing = "nothing";

    /// <returns>Empty where both say the same; an amendment's own story is no difference. In the order of a record.</returns>
    public static IReadOnlyList<RecordDifference> Between(YearRecord was, YearRecord now)
    {
        var found = new List<RecordDifference>();
        Say("Family", was.Family, now.Family);
        Say("Learner", was.Learner, now.Learner);
        Say("School year", Year(was.Year), Year(now.Year));
        Say("What we count", Quoted(was.CountingPolicy), Quoted(now.CountingPolicy));
        Say("Minimum day", Minutes(was.MinimumDay), Minutes(now.MinimumDay));
        Say("Subjects in the family's order", List(was.Subjects), List(now.Subjects));
        Entries(was.Entries, now.Entries, found);
        Beside(was.DayMarks, now.DayMarks, m => m.Date, m => m.Date.Plain(), m => m?.Counts switch { true => "marked as a school day", false => "marked as no school day", _ => "no mark" }, found);
        Beside(was.Reading, now.Reading, b => (b.Title, b.Author, b.Begun, b.How), b => $"{b.Title}, begun {b.Begun.Plain()}", Book, found);
        Beside(was.Pieces, now.Pieces, p => (p.Sha256, p.Date), p => $"{p.Date.Plain()}, a piece {Named(p)}", p => p is null ? Missing : $"content {p.Sha256[..Math.Min(p.Sha256.Length, Fingerprint.ShortDigits)]}, {Quoted(p.Caption)}", found);
        for (var i = 0; i < Math.Max(was.Pathways.Count, now.Pathways.Count); i++)
            Say($"Pathway {i + 1}", Pathway(was.Pathways.ElementAtOrDefault(i)), Pathway(now.Pathways.ElementAtOrDefault(i)));
        Totals(was.Totals, now.Totals, found);
        return found;

        void Say(string about, string before, string after)
        {
            if (before != after)
                found.Add(new RecordDifference(about, before, after));
        }
    }

    private static void Entries(IReadOnlyList<RecordEntry> was, IReadOnlyList<RecordEntry> now, List<RecordDifference> found)
    {
        foreach (var (before, after) in Pairs(was, now, e => e.Id).OrderBy(p => (p.Was ?? p.Now)!.Date))
        {
            if (before is null || after is null)
            {
                found.Add(new RecordDifference(About((before ?? after)!), Whole(before), Whole(after)));
                continue;
            }

            var about = About(before);
            var count = found.Count;
            if (before.Minutes != after.Minutes)
                found.Add(new RecordDifference(about, Minutes(before.Minutes), Number(after.Minutes)));
            Say(about, before.Date.Plain(), after.Date.Plain());
            Say(about, Quoted(before.What), Quoted(after.What));
            Say(about, Start(before), Start(after));
            Say(about, Where(before.Place), Where(after.Place));
            // Other minutes alone divide otherwise; that is said already.
            if (before.Minutes == after.Minutes || !before.Split.Select(s => (s.Subject, s.Weight)).SequenceEqual(after.Split.Select(s => (s.Subject, s.Weight))))
                Say(about, Split(before), Split(after));
            Say(about, $"met in passing: {List(before.Touches)}", $"met in passing: {List(after.Touches)}");
            Say(about, $"written {before.WrittenAt}", $"written {after.WrittenAt}", quiet: found.Count > count);
            Say(about, $"noted {before.NotedAt ?? "at once"}", $"noted {after.NotedAt ?? "at once"}", quiet: found.Count > count);
            Say(about, $"writing {Number(before.Revision)}", $"writing {Number(after.Revision)}", quiet: found.Count > count);
        }

        void Say(string about, string before, string after, bool quiet = false)
        {
            // A late writing of an entry differs in its number and instant by itself: only a difference that stands alone is worth a word.
            if (before != after && !quiet)
                found.Add(new RecordDifference(about, before, after));
        }
    }

    private static void Totals(RecordTotals was, RecordTotals now, List<RecordDifference> found)
    {
        if (was.Minutes != now.Minutes)
            found.Add(new RecordDifference("In all", Minutes(was.Minutes), Number(now.Minutes), Follows: true));
        foreach (var (before, after) in Pairs(was.BySubject, now.BySubject, s => s.Subject).Where(p => p.Was?.Minutes != p.Now?.Minutes))
            found.Add(new RecordDifference($"{(before ?? after)!.Subject} in all", Minutes(before?.Minutes ?? 0), Number(after?.Minutes ?? 0), Follows: true));
        if (was.SchoolDays != now.SchoolDays)
            found.Add(new RecordDifference("In all", was.SchoolDays == 1 ? "1 school day" : $"{Number(was.SchoolDays)} school days", Number(now.SchoolDays), Follows: true));
    }

    private static void Beside<T, TKey>(IReadOnlyList<T> was, IReadOnlyList<T> now, Func<T, TKey> key, Func<T, string> about, Func<T?, string> says, List<RecordDifference> found)
        where T : class
        where TKey : notnull
    {
        foreach (var (before, after) in Pairs(was, now, key).Where(p => !Equals(p.Was, p.Now)))
            found.Add(new RecordDifference(about((before ?? after)!), says(before), says(after)));
    }

    // What is there twice under one key is paired in its order.
    private static List<(T? Was, T? Now)> Pairs<T, TKey>(IReadOnlyList<T> was, IReadOnlyList<T> now, Func<T, TKey> key)
        where T : class
        where TKey : notnull
    {
        var left = now.GroupBy(key).ToDictionary(g => g.Key, g => new Queue<T>(g));
        var pairs = was.Select(w => (Was: (T?)w, Now: left.TryGetValue(key(w), out var same) && same.Count > 0 ? same.Dequeue() : null)).ToList();
        pairs.AddRange(left.Values.SelectMany(rest => rest).Select(n => ((T?)null, (T?)n)));
        return pairs;
    }

    private static string Year(RecordYear year) => $"{year.Name}, {new DayRange(year.First, year.Last)}";

    private static string About(RecordEntry entry) => $"{entry.Date.Plain()}, {entry.What}";

    private static string Whole(RecordEntry? entry) => entry is null ? Missing : $"{Minutes(entry.Minutes)}, {Split(entry)}";

    private static string Start(RecordEntry entry) => entry.Start is { } start ? $"began {start}" : "began at no time";

    private static string Split(RecordEntry entry) => "counted as " + string.Join(", ", entry.Split.Select(s => $"{s.Subject} {Number(s.Minutes)}"));

    private static string Minutes(int minutes) => minutes == 1 ? "1 minute" : $"{Number(minutes)} minutes";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Quoted(string text) => text.Length == 0 ? "no words" : $"“{text}”";

    private static string List(IReadOnlyList<string> names) => names.Count == 0 ? "none" : string.Join(", ", names);

    private static string Named(RecordPiece piece) => piece.Caption.Length == 0 ? "without a caption" : $"with the caption {Quoted(piece.Caption)}";

    private static string Book(RecordBook? book) => book is null ? Missing
        : $"{(book.Ended is { } ended ? $"ended {ended.Plain()}" : "went on after the year")}{(book.Unfinished ? ", put away before its end" : "")}{(book.Isbn.Length > 0 ? $", ISBN {book.Isbn}" : "")}";

    private static string Pathway(RecordPathway? pathway) => pathway is null ? Missing
        : $"{pathway.Place}: {pathway.Name}, {pathway.Days} {string.Join("; ", pathway.Figures.Select(f => $"{f.Name}: {f.Logged ?? "–"} of {f.Asked ?? "–"}, {f.Standing}"))}".TrimEnd();

    private static string Where(Place place) => place switch
    {
        Place.Home => "at home",
        Place.AnotherHome => "at another home",
        Place.Coop => "at the co-op",
        _ => "elsewhere",
    };
}
