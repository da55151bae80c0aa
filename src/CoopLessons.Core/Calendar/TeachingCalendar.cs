namespace CoopLessons.Core.Calendar;

/// <summary>Weekdays on which a family usually teaches; stored as the sum of its bits.</summary>
[Flags]
public enum Weekdays
{
    None = 0,
    Monday = 1,
    Tuesday = 2,
    Wednesday = 4,
    Thursday = 8,
    Friday = 16,
    Saturday = 32,
    Sunday = 64,
    MondayToFriday = Monday | Tuesday | Wednesday | Thursday | Friday,
}

/// <summary>A break inside a school year, both ends included.</summary>
public sealed record Break(string Name, DayRange Days);

/// <summary>A family's school year: its days, the weekdays it teaches on and its breaks.</summary>
public sealed record TeachingCalendar(DayRange Year, Weekdays Weekdays, IReadOnlyList<Break> Breaks)
{
    /// <summary>A day inside the year, on a teaching weekday, outside every break.</summary>
    public bool IsTeachingDay(DateOnly date) => Year.Contains(date) && Weekdays.Holds(date.DayOfWeek) && BreakOn(date) is null;

    public Break? BreakOn(DateOnly date) => Breaks.FirstOrDefault(b => b.Days.Contains(date));

    public IEnumerable<DateOnly> TeachingDays() => Year.Days().Where(IsTeachingDay);

    /// <summary>The first teaching day after <paramref name="date"/>, or null where the year has none left.</summary>
    public DateOnly? NextTeachingDay(DateOnly date)
    {
        for (var day = date.AddDays(1); day <= Year.Last; day = day.AddDays(1))
        {
            if (IsTeachingDay(day))
                return day;
        }

        return null;
    }
}

public static class WeekdaysReading
{
    public static bool Holds(this Weekdays days, DayOfWeek day) => days.HasFlag(Of(day));

    public static Weekdays Of(DayOfWeek day) => day == DayOfWeek.Sunday ? Weekdays.Sunday : (Weekdays)(1 << ((int)day - 1));
}
