using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>
/// Monday to Friday without the days on which the federal holidays are kept (common practice, no source; a state may
/// keep days of its own).
/// </summary>
public static class BusinessDays
{
    public static bool Holds(DateOnly date) =>
        date.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)
        && FederalHolidays.ObservedIn(new DayRange(date, date)).Count == 0;

    /// <summary>The business day with which so many have passed; the day itself is not counted.</summary>
    /// <param name="count">0 or more; 0 gives the day itself.</param>
    public static DateOnly After(DateOnly date, int count)
    {
        while (count > 0)
        {
            date = date.AddDays(1);
            if (Holds(date))
                count--;
        }

        return date;
    }

    /// <summary>The last business day that leaves so many whole ones between itself and the day.</summary>
    /// <param name="count">0 or more; 0 gives the last business day before.</param>
    public static DateOnly Before(DateOnly date, int count)
    {
        for (var left = count + 1; left > 0;)
        {
            date = date.AddDays(-1);
            if (Holds(date))
                left--;
        }

        return date;
    }
}
