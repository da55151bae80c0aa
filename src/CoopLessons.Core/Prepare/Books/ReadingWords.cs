using System.Globalization;

namespace CoopLessons.Core.Prepare.Books;

/// <summary>What the next evening of a book asks, in a sentence.</summary>
public static class ReadingWords
{
    private static readonly string[] Small = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>
    /// Such as "Read two chapters tonight, or the book ends on Thursday instead of Wednesday."; says what is left where no
    /// evening is left, and that it is read where nothing is.
    /// </summary>
    public static string Of(ReadingOutlook outlook, DateOnly today)
    {
        if (outlook.IsRead)
            return "It is read to the end.";
        if (outlook.Next is not { } next)
            return $"{Capital(Chapters(outlook.Left.Count))} {(outlook.Left.Count == 1 ? "is" : "are")} left, and no evening up to the last day. Choose another last day, or read on as it comes.";
        var (planned, when) = (next.Planned.Chapters.Count, next.Planned.Date == today ? "tonight" : "on " + Day(next.Planned.Date, today));
        var last = Day(outlook.Evenings[^1].Date, today);
        if (next.Least == 0)
            return $"Read {Chapters(planned)} {when}; without it, the book can still end by {last}.";
        var end = next.EndsLater is { } later ? $"the book ends on {Day(later, today)} instead of {last}" : $"the book does not end on {last}";
        return next.Least == planned ? $"Read {Chapters(planned)} {when}, or {end}." : $"Read {Chapters(planned)} {when}, {Number(next.Least)} at the least, or {end}.";
    }

    /// <summary><c>one chapter</c>, <c>two chapters</c>, <c>14 chapters</c>.</summary>
    public static string Chapters(int count) => $"{Number(count)} {(count == 1 ? "chapter" : "chapters")}";

    /// <summary>The weekday where it is within the next six days, else with its date.</summary>
    public static string Day(DateOnly date, DateOnly today) =>
        date.ToString(date >= today && date < today.AddDays(7) ? "dddd" : date.Year == today.Year ? "dddd d MMMM" : "dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Number(int count) => count < Small.Length ? Small[count] : count.ToString(CultureInfo.InvariantCulture);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
