using CoopLessons.Core.Calendar;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Prepare.Books;

/// <summary>A book on a child's reading list.</summary>
/// <param name="Isbn">Thirteen digits, or empty.</param>
/// <param name="EndedOn">The last day with it; null while it goes on.</param>
/// <param name="Unfinished">It was put away before its end.</param>
/// <param name="Level">As the parent gives it, or empty.</param>
public sealed record ReadingListLine(
    string Title, string Author, string Isbn, BookUse How, DateOnly BegunOn, DateOnly? EndedOn, bool Unfinished, string Level, string Note);

/// <summary>
/// What a child read, heard, listened to and looked through in a school year. A book that lies in two years stands in both,
/// with its dates.
/// </summary>
/// <param name="Lines">By the day on which each was begun.</param>
public sealed record ReadingList(string Family, string Learner, string Year, DayRange Period, DateOnly MadeOn, IReadOnlyList<ReadingListLine> Lines)
{
    public int Finished => Lines.Count(l => l is { EndedOn: not null, Unfinished: false });

    /// <summary>Whether a book with these days belongs to the period.</summary>
    public static bool Holds(DayRange period, DateOnly begun, DateOnly? ended) => begun <= period.Last && (ended is null || ended >= period.First);
}
