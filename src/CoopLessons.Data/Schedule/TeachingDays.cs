using CoopLessons.Core.Calendar;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Schedule;

/// <summary>The family's teaching days over all its school years.</summary>
public sealed class TeachingDays(IReadOnlyList<TeachingCalendar> years)
{
    private const int FurthestAhead = 400;

    public static async Task<TeachingDays> LoadAsync(AppDb db, CancellationToken ct) =>
        new([.. (await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).ToListAsync(ct)).Select(y => y.Calendar)]);

    /// <summary>The school year that holds the date, or null between years.</summary>
    public TeachingCalendar? YearOf(DateOnly date) => years.FirstOrDefault(y => y.Year.Contains(date));

    public bool Holds(DateOnly date) => YearOf(date)?.IsTeachingDay(date) == true;

    /// <summary>The break in which the date lies, on whatever weekday.</summary>
    public Break? BreakOn(DateOnly date) => YearOf(date)?.BreakOn(date);

    /// <summary>
    /// The teaching days after a date, nearest first, at most so many and at least one. Where no school year reaches
    /// that far, the days from Monday to Friday fill up, and they stand in where no teaching day is in sight, so that
    /// nothing is left without a day to go to.
    /// </summary>
    public IReadOnlyList<DateOnly> After(DateOnly date, int most)
    {
        var ahead = Enumerable.Range(1, FurthestAhead).Select(date.AddDays);
        var days = ahead.Where(d => YearOf(d) is { } year ? year.IsTeachingDay(d) : IsWorkday(d)).Take(most).ToList();
        return days.Count > 0 ? days : [.. ahead.Where(IsWorkday).Take(most)];
    }

    private static bool IsWorkday(DateOnly date) => Weekdays.MondayToFriday.Holds(date.DayOfWeek);

    /// <summary>Why a date is an unusual one to plan for, as the end of a sentence; null for a teaching day.</summary>
    public string? Doubt(DateOnly date)
    {
        if (Holds(date))
            return null;
        if (YearOf(date) is not { } year)
            return "which lies outside every school year of yours";
        return year.BreakOn(date) is { } pause ? $"which lies in “{pause.Name}”" : "which is not one of your teaching days";
    }
}
