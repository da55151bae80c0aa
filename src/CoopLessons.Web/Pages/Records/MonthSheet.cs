using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Web.Pages.Records;

/// <summary>One day on a calendar sheet.</summary>
/// <param name="Class">The class of its mark; null where the day has none.</param>
/// <param name="Words">Its standing in words.</param>
/// <param name="InYear">Whether the day belongs to the school year that is shown.</param>
public sealed record DayCell(DateOnly Date, string? Class, string Words, bool InYear);

/// <summary>A learner's school days in one month, in weeks from Sunday; null stands for days of neighbouring months.</summary>
public sealed record MonthSheet(Month Month, int SchoolDays, IReadOnlyList<IReadOnlyList<DayCell?>> Weeks)
{
    public static MonthSheet Of(Month month, SchoolDays days, TeachingCalendar calendar)
    {
        var cells = new List<DayCell?>();
        cells.AddRange(Enumerable.Repeat<DayCell?>(null, (int)month.Days.First.DayOfWeek));
        cells.AddRange(month.Days.Days().Select(d => Cell(days[d], calendar)));
        while (cells.Count % 7 != 0)
            cells.Add(null);
        return new MonthSheet(month, days.StrictIn(month), [.. cells.Chunk(7)]);
    }

    private static DayCell Cell(SchoolDay day, TeachingCalendar calendar)
    {
        var hours = day.Minutes > Minutes.Zero ? $", {day.Minutes.Clock} hours" : "";
        var (kind, words) = day.Standing switch
        {
            DayStanding.Reached => ("is-counted", "counted" + hours),
            DayStanding.MarkedYes => ("is-marked", "counted, marked by hand" + hours),
            DayStanding.MarkedNo => ("is-off", "not counted, marked by hand" + hours),
            DayStanding.Under => ("is-under", "under the minimum day" + hours),
            _ => WhyOff(day.Date, calendar) is { } why ? ("is-off", why) : (null, "nothing logged"),
        };
        return new DayCell(day.Date, kind, words, calendar.Year.Contains(day.Date));
    }

    /// <summary>Why nobody is taught on the date, or null on a teaching day.</summary>
    public static string? WhyOff(DateOnly date, TeachingCalendar calendar)
    {
        if (!calendar.Year.Contains(date))
            return "outside the school year";
        if (calendar.BreakOn(date) is { } pause)
            return pause.Name;
        if (calendar.Weekdays.Holds(date.DayOfWeek))
            return null;
        var weekday = date.ToString("dddd", CultureInfo.InvariantCulture);
        return date.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? $"weekend, {weekday}" : $"no lessons on {weekday}s";
    }
}
