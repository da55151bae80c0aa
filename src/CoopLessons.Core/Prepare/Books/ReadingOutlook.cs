namespace CoopLessons.Core.Prepare.Books;

/// <summary>One evening of reading aloud; without chapters it stays free.</summary>
public sealed record ReadingEvening(DateOnly Date, IReadOnlyList<NumberedChapter> Chapters)
{
    public int Tenths => Chapters.Sum(c => c.Tenths);
}

/// <summary>What the next evening decides.</summary>
/// <param name="Planned">Chapters of the even plan.</param>
/// <param name="Least">Fewest chapters with which the book still ends in time, no later evening longer than the plan's longest; 0 where the evening may be left out.</param>
/// <param name="EndsLater">When it ends with one chapter fewer than the least, later evenings as long as the plan's longest; null where the least is 0 or no evening is left for it.</param>
public sealed record NextEvening(ReadingEvening Planned, int Least, DateOnly? EndsLater);

/// <summary>A book that is read aloud: what is left of it over the evenings that are left, by <see cref="LinearPartition"/>.</summary>
/// <param name="Left">Chapters that were not read, in order.</param>
/// <param name="Evenings">Evenings up to the last day, ascending; those that went by or were used are not among them.</param>
/// <param name="Later">Evenings after the last day, ascending: where a book goes on that does not end in time.</param>
public sealed record ReadingOutlook(IReadOnlyList<NumberedChapter> Left, IReadOnlyList<ReadingEvening> Evenings, IReadOnlyList<DateOnly> Later)
{
    /// <param name="evenings">Ascending; may be none.</param>
    /// <param name="later">Ascending, after them.</param>
    public static ReadingOutlook Of(IReadOnlyList<NumberedChapter> left, IReadOnlyList<DateOnly> evenings, IReadOnlyList<DateOnly> later)
    {
        if (evenings.Count == 0)
            return new ReadingOutlook(left, [], later);
        var from = 0;
        var sizes = LinearPartition.Of([.. left.Select(c => c.Tenths)], evenings.Count);
        return new ReadingOutlook(left, [.. evenings.Zip(sizes, (date, size) => new ReadingEvening(date, [.. left.Skip((from += size) - size).Take(size)]))], later);
    }

    public bool IsRead => Left.Count == 0;

    /// <summary>Length of the longest evening; 0 without any.</summary>
    public int Longest => Evenings.Select(e => e.Tenths).DefaultIfEmpty(0).Max();

    /// <summary>The evening on which the last chapter is read; null where no evening is left or nothing is left to read.</summary>
    public DateOnly? Ends => Evenings.LastOrDefault(e => e.Chapters.Count > 0)?.Date;

    /// <summary>What the next evening decides; null where no evening is left or nothing is left to read.</summary>
    public NextEvening? Next
    {
        get
        {
            if (Ends is null)
                return null;
            var limit = Longest;
            var weights = Left.Select(c => c.Tenths).ToList();
            var least = Enumerable.Range(0, Evenings[0].Chapters.Count + 1).First(n => LinearPartition.DaysUnder(weights.Skip(n), limit) <= Evenings.Count - 1);
            if (least == 0)
                return new NextEvening(Evenings[0], 0, null);
            var needed = LinearPartition.DaysUnder(weights.Skip(least - 1), limit);
            return new NextEvening(Evenings[0], least, Evenings.Skip(1).Select(e => e.Date).Concat(Later).Cast<DateOnly?>().ElementAtOrDefault(needed - 1));
        }
    }

    /// <summary>When the book ends with so many chapters each evening; null where nothing is left, or no evening is left for it.</summary>
    /// <param name="chapters">1 or more.</param>
    public DateOnly? EndsWith(int chapters) => IsRead ? null
        : Evenings.Select(e => e.Date).Concat(Later).Cast<DateOnly?>().ElementAtOrDefault((Left.Count + chapters - 1) / chapters - 1);
}
