using System.Globalization;

namespace CoopLessons.Core.Schedule;

/// <summary>Days, times and lengths as the sentences about a week write them.</summary>
internal static class ClockWords
{
    public static string Day(DateOnly day) => day.ToString("dddd d MMMM", CultureInfo.InvariantCulture);

    public static string Weekday(DateOnly day) => day.ToString("dddd", CultureInfo.InvariantCulture);

    /// <summary>“10:05”, on the clock of 24 hours.</summary>
    public static string Time(int minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60}:{minutes % 60:00}");

    /// <summary>“50 minutes”, “6 h 10”.</summary>
    public static string Length(int minutes) => minutes switch
    {
        1 => "1 minute",
        <= 120 => string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes"),
        _ when minutes % 60 == 0 => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} hours"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h {minutes % 60:00}"),
    };

    /// <summary>“Wren”, “Wren and Lark”, “Wren, Lark and Heron”.</summary>
    public static string List(IReadOnlyList<string> names) =>
        names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}";
}
