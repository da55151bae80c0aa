using System.Globalization;

namespace CoopLessons.Core.Calendar;

/// <summary>Days from a first to a last, both included: "on holiday from Monday to Friday" holds Friday.</summary>
public readonly record struct DayRange
{
    /// <exception cref="ArgumentException">The last day is before the first.</exception>
    public DayRange(DateOnly first, DateOnly last)
    {
        if (last < first)
            throw new ArgumentException("A range of days ends on or after the day on which it begins.", nameof(last));
        First = first;
        Last = last;
    }

    public DateOnly First { get; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; }

    public int Count => Last.DayNumber - First.DayNumber + 1;

    public bool Contains(DateOnly date) => date >= First && date <= Last;

    public bool Overlaps(DayRange other) => First <= other.Last && other.First <= Last;

    public IEnumerable<DateOnly> Days()
    {
        for (var number = First.DayNumber; number <= Last.DayNumber; number++)
            yield return DateOnly.FromDayNumber(number);
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{First:d MMMM yyyy} to {Last:d MMMM yyyy}");
}
