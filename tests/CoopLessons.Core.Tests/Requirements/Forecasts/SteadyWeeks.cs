using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Tests.Requirements.Forecasts;

/// <summary>A school year of 39 whole weeks, 195 teaching days, Monday to Friday; and amounts that each of them brings.</summary>
internal static class SteadyWeeks
{
    /// <summary>Monday, 31 August 2026 to Friday, 28 May 2027.</summary>
    public static readonly DayRange Year = new(new DateOnly(2026, 8, 31), new DateOnly(2027, 5, 28));

    public static readonly TeachingCalendar School = new(Year, Weekdays.MondayToFriday, []);

    /// <summary>The Sunday that ends the fifth week: 25 days lie behind, 170 are left, and four whole weeks come before its own.</summary>
    public static readonly DateOnly FifthSunday = new(2026, 10, 4);

    public static Dictionary<DateOnly, int> Amounts(DateOnly last, int each, TeachingCalendar? school = null) =>
        (school ?? School).TeachingDays().Where(d => d <= last).ToDictionary(d => d, _ => each);
}
