namespace CoopLessons.Core.Prepare.Books;

/// <summary>Where a pace comes from.</summary>
public enum PaceFrom { Usual, OfTheFamily, OfTheBook }

/// <summary>What was read in one sitting, and how long it took.</summary>
/// <param name="Tenths">Tenths of a page, 1 or more.</param>
/// <param name="Minutes">1 or more.</param>
public sealed record TimedSitting(int Tenths, int Minutes);

/// <summary>
/// How fast a family reads aloud: the pages of its sittings × 60 ÷ their minutes. The sittings of the book itself tell it
/// from the third on, else those of all books from the third on; until then 30 pages an hour (common practice, no source).
/// </summary>
/// <param name="Tenths">Tenths of a page that were read in …</param>
/// <param name="Minutes">… these minutes.</param>
public sealed record ReadingPace(PaceFrom From, long Tenths, long Minutes)
{
    /// <summary>So many sittings with their minutes make a pace.</summary>
    public const int SittingsNeeded = 3;

    public static ReadingPace Usual { get; } = new(PaceFrom.Usual, 300, 60);

    public static ReadingPace Of(IReadOnlyCollection<TimedSitting> ofTheBook, IReadOnlyCollection<TimedSitting> ofTheFamily)
    {
        if (ofTheBook.Count >= SittingsNeeded)
            return Measured(PaceFrom.OfTheBook, ofTheBook);
        return ofTheFamily.Count >= SittingsNeeded ? Measured(PaceFrom.OfTheFamily, ofTheFamily) : Usual;
    }

    /// <summary>Rounded to a tenth of a page, a half up.</summary>
    public decimal PagesAnHour => Math.Round(Tenths * 6m / Minutes, 1, MidpointRounding.AwayFromZero);

    /// <summary>Minutes that a length takes, begun minutes counted whole. A recorded book takes what it takes.</summary>
    /// <param name="tenths">0 or more.</param>
    public int MinutesFor(int tenths, BookMeasure measure) => measure == BookMeasure.Minutes
        ? (tenths + 9) / 10
        : (int)((tenths * Minutes + Tenths - 1) / Tenths);

    private static ReadingPace Measured(PaceFrom from, IEnumerable<TimedSitting> sittings) =>
        sittings.Aggregate(new ReadingPace(from, 0, 0), (sum, s) => sum with { Tenths = sum.Tenths + s.Tenths, Minutes = sum.Minutes + s.Minutes });
}
