using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Forecasts;

/// <summary>
/// How a running total goes on to the end of the family's year. The arithmetic is always there; the outlook only from
/// three whole weeks of log on. Same input, same output, to the minute.
/// </summary>
/// <param name="SoFar">In the measure's whole unit: minutes or days.</param>
/// <param name="TeachingDaysLeft">Days of the calendar on which teaching is still to come; today among them while nothing is logged on it.</param>
/// <param name="NeededADay">What is missing divided by the days left, rounded up; null where no day is left or nothing is missing.</param>
/// <param name="NeededAWeek">The same for a week of the family's usual length.</param>
/// <param name="Outlook">Null with fewer than three whole weeks, or with no day left.</param>
public sealed record Forecast(int SoFar, int Target, int TeachingDaysLeft, int? NeededADay, int? NeededAWeek, Outlook? Outlook)
{
    public int Missing => Math.Max(0, Target - SoFar);

    /// <param name="amounts">What each date adds; dates without anything left out.</param>
    /// <param name="counted">The days whose amounts count.</param>
    /// <param name="asOf">Today: weeks that end before its own week are whole.</param>
    public static Forecast Of(IReadOnlyDictionary<DateOnly, int> amounts, DayRange counted, TeachingCalendar calendar, DateOnly asOf, int target)
    {
        var soFar = amounts.Where(a => counted.Contains(a.Key)).Sum(a => a.Value);
        var left = DaysLeft(amounts, counted, calendar, asOf);
        var missing = Math.Max(0, target - soFar);
        var ahead = missing > 0 && left.Count > 0;
        int? day = ahead ? (missing + left.Count - 1) / left.Count : null;
        var usual = Enum.GetValues<DayOfWeek>().Count(d => calendar.Weekdays.Holds(d));
        int? week = ahead ? (int)(((long)missing * Math.Min(usual, left.Count) + left.Count - 1) / left.Count) : null;
        var seen = PastWeek.Last(amounts, counted, calendar, asOf);
        var outlook = seen.Count >= Outlook.FewestWeeks && left.Count > 0 ? Outlook.Of(seen, left, soFar, target) : null;
        return new Forecast(soFar, target, left.Count, day, week, outlook);
    }

    private static List<DateOnly> DaysLeft(IReadOnlyDictionary<DateOnly, int> amounts, DayRange counted, TeachingCalendar calendar, DateOnly asOf) =>
        [.. calendar.TeachingDays().Where(d => counted.Contains(d) && (d > asOf || (d == asOf && !amounts.ContainsKey(d))))];
}

/// <summary>A whole week that lies behind: what it brought, and its teaching days by the calendar.</summary>
internal sealed record PastWeek(int Amount, int TeachingDays)
{
    /// <summary>The last eight whole weeks before today's that hold a teaching day, the oldest first.</summary>
    public static IReadOnlyList<PastWeek> Last(IReadOnlyDictionary<DateOnly, int> amounts, DayRange counted, TeachingCalendar calendar, DateOnly asOf)
    {
        var weeks = new List<PastWeek>();
        // The week of a day after the year has ended is not the first one after the last whole week: go back from there.
        for (var week = Week.Of(asOf).Previous; week.Days.Last >= calendar.Year.First && weeks.Count < Outlook.MostWeeks; week = week.Previous)
        {
            var days = week.Days.Days().ToList();
            var teaching = days.Count(d => calendar.IsTeachingDay(d) && counted.Contains(d));
            var whole = days.All(counted.Contains);
            if (teaching > 0 && whole)
                weeks.Add(new PastWeek(days.Sum(d => amounts.GetValueOrDefault(d)), teaching));
        }

        weeks.Reverse();
        return weeks;
    }
}
