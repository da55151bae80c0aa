using System.Globalization;

namespace CoopLessons.Core.Calendar;

/// <summary>A month of the Gregorian calendar.</summary>
public readonly record struct Month(int Year, int Number) : IComparable<Month>
{
    public static Month Of(DateOnly date) => new(date.Year, date.Month);

    /// <summary>Every month that the range touches, in order.</summary>
    public static IReadOnlyList<Month> Through(DayRange range)
    {
        var months = new List<Month>();
        for (var month = Of(range.First); month.CompareTo(Of(range.Last)) <= 0; month = month.Next)
            months.Add(month);
        return months;
    }

    public Month Next => Number == 12 ? new Month(Year + 1, 1) : new Month(Year, Number + 1);

    public DayRange Days => new(new DateOnly(Year, Number, 1), new DateOnly(Year, Number, DateTime.DaysInMonth(Year, Number)));

    public bool Contains(DateOnly date) => date.Year == Year && date.Month == Number;

    /// <summary>Year and month as ISO 8601 writes them: <c>2026-11</c>.</summary>
    public string Iso => string.Create(CultureInfo.InvariantCulture, $"{Year:0000}-{Number:00}");

    /// <summary>Short English name with the year: <c>Nov 2026</c>.</summary>
    public string Label => Days.First.ToString("MMM yyyy", CultureInfo.InvariantCulture);

    public static bool TryParse(string? text, out Month month)
    {
        var ok = DateOnly.TryParseExact(text + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var first);
        month = ok ? Of(first) : default;
        return ok;
    }

    public int CompareTo(Month other) => (Year, Number).CompareTo((other.Year, other.Number));
    public static bool operator <(Month a, Month b) => a.CompareTo(b) < 0;
    public static bool operator >(Month a, Month b) => a.CompareTo(b) > 0;
    public static bool operator <=(Month a, Month b) => a.CompareTo(b) <= 0;
    public static bool operator >=(Month a, Month b) => a.CompareTo(b) >= 0;

    public override string ToString() => Iso;
}
