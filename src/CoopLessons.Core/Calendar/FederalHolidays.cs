namespace CoopLessons.Core.Calendar;

/// <summary>A holiday with the date the statute names and the date on which federal offices keep it.</summary>
public sealed record Holiday(string Name, DateOnly Date, DateOnly Observed);

/// <summary>
/// The eleven legal public holidays of the United States, 5 U.S.C. § 6103(a). One that falls on a Saturday is kept on
/// the Friday before (§ 6103(b)), one that falls on a Sunday on the Monday after (Executive Order 11582).
/// Inauguration Day, kept in the Washington area alone, is left out. They are offered to a family, never imposed.
/// </summary>
public static class FederalHolidays
{
    /// <summary>The holidays whose own date lies in the calendar year, in date order.</summary>
    /// <param name="year">1986 or later in this form, the first year of the January birthday (from memory); Juneteenth from 2021 on.</param>
    public static IReadOnlyList<Holiday> Of(int year)
    {
        List<(string Name, DateOnly Date)> dates =
        [
            ("New Year's Day", new DateOnly(year, 1, 1)),
            ("Birthday of Martin Luther King, Jr.", Nth(year, 1, DayOfWeek.Monday, 3)),
            ("Washington's Birthday", Nth(year, 2, DayOfWeek.Monday, 3)),
            ("Memorial Day", Last(year, 5, DayOfWeek.Monday)),
            ("Independence Day", new DateOnly(year, 7, 4)),
            ("Labor Day", Nth(year, 9, DayOfWeek.Monday, 1)),
            ("Columbus Day", Nth(year, 10, DayOfWeek.Monday, 2)),
            ("Veterans Day", new DateOnly(year, 11, 11)),
            ("Thanksgiving Day", Nth(year, 11, DayOfWeek.Thursday, 4)),
            ("Christmas Day", new DateOnly(year, 12, 25)),
        ];
        if (year >= 2021)
            dates.Insert(4, ("Juneteenth National Independence Day", new DateOnly(year, 6, 19)));
        return [.. dates.Select(d => new Holiday(d.Name, d.Date, ObservedOn(d.Date)))];
    }

    /// <summary>The holidays kept on a day of the range, in order of that day.</summary>
    public static IReadOnlyList<Holiday> ObservedIn(DayRange range) =>
        [.. Enumerable.Range(range.First.Year, range.Last.Year - range.First.Year + 2)
            .SelectMany(Of).Where(h => range.Contains(h.Observed)).OrderBy(h => h.Observed)];

    private static DateOnly ObservedOn(DateOnly date) => date.DayOfWeek switch
    {
        DayOfWeek.Saturday => date.AddDays(-1),
        DayOfWeek.Sunday => date.AddDays(1),
        _ => date,
    };

    private static DateOnly Nth(int year, int month, DayOfWeek day, int n)
    {
        var first = new DateOnly(year, month, 1);
        var ahead = ((int)day - (int)first.DayOfWeek + 7) % 7;
        return first.AddDays(ahead + 7 * (n - 1));
    }

    private static DateOnly Last(int year, int month, DayOfWeek day)
    {
        var last = new DateOnly(year, month, DateTime.DaysInMonth(year, month));
        return last.AddDays(-(((int)last.DayOfWeek - (int)day + 7) % 7));
    }
}
