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

    /// <summary>
    /// Quarters, halves or terms: whole months where the range is made of whole months that can be divided so, else
    /// stretches of days that differ by one day at most, the longer ones first.
    /// </summary>
    /// <returns>As many as asked for, fewer where there are not so many days.</returns>
    public IReadOnlyList<DayRange> EvenParts(int parts)
    {
        var (first, last) = (First, Last);
        var months = (last.Year - first.Year) * 12 + last.Month - first.Month + 1;
        if (first.Day == 1 && last.AddDays(1).Day == 1 && months % parts == 0)
            return [.. Enumerable.Range(0, parts).Select(p => new DayRange(first.AddMonths(p * (months / parts)), first.AddMonths((p + 1) * (months / parts)).AddDays(-1)))];

        var ranges = new List<DayRange>();
        for (var part = 0; part < parts && first <= last; part++)
        {
            var days = Count / parts + (part < Count % parts ? 1 : 0);
            if (days == 0)
                continue;
            ranges.Add(new DayRange(first, first.AddDays(days - 1)));
            first = first.AddDays(days);
        }

        return ranges;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{First:d MMMM yyyy} to {Last:d MMMM yyyy}");
}
