using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Web.Pages.Today;

/// <summary>Days, times and lengths as the pages say them.</summary>
public static class DayWords
{
    /// <summary>The earliest and latest date a page takes.</summary>
    public static readonly DateOnly Earliest = new(1900, 1, 1);
    public static readonly DateOnly Latest = new(2200, 12, 31);

    /// <summary>Reads a date as ISO 8601 writes it, inside the dates that pages take.</summary>
    public static bool TryRead(string? text, out DateOnly date) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date) && date >= Earliest && date <= Latest;

    /// <summary>Reads a week as ISO 8601 writes it, inside the dates that pages take.</summary>
    public static bool TryWeek(string? text, out Core.Calendar.Week week) =>
        Core.Calendar.Week.TryParse(text, out week) && week.Days.First >= Earliest.AddDays(7) && week.Days.Last <= Latest.AddDays(-7);

    public static string Iso(this DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>“Thursday 12 March”.</summary>
    public static string InWords(this DateOnly date) => date.ToString("dddd d MMMM", CultureInfo.InvariantCulture);

    /// <summary>“Thursday 12 March”, with the year where it is another than today's.</summary>
    public static string InWords(this DateOnly date, DateOnly today) => date.Year == today.Year ? date.InWords() : date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Weekday(this DateOnly date) => date.ToString("dddd", CultureInfo.InvariantCulture);

    /// <summary>Minutes after midnight as a clock shows them: “8:30”, “13:05”.</summary>
    public static string Clock(int minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60 % 24}:{minutes % 60:00}");

    /// <summary>The same for a machine: “08:30”.</summary>
    public static string ClockIso(int minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60 % 24:00}:{minutes % 60:00}");

    public static int OfDay(TimeOnly time) => time.Hour * 60 + time.Minute;

    public static TimeOnly? TimeOf(int? minutes) => minutes is { } m ? new TimeOnly(m / 60, m % 60) : null;

    /// <summary>A length that no line breaks: “30 min”, “1 h 30”, “2 days”.</summary>
    public static string Length(int minutes) => minutes switch
    {
        < 60 => $"{minutes}\u00a0min",
        >= 1440 when minutes % 1440 == 0 => minutes == 1440 ? "1 day" : $"{minutes / 1440} days",
        >= 2880 => $"{minutes / 1440} days {Length(minutes % 1440)}",
        _ => minutes % 60 == 0 ? $"{minutes / 60}\u00a0h" : string.Create(CultureInfo.InvariantCulture, $"{minutes / 60}\u00a0h\u00a0{minutes % 60:00}"),
    };

    public static string Need(AdultNeed need) => need switch { AdultNeed.Alone => "alone", AdultNeed.Beside => "beside", _ => "hands" };

    public static string State(SessionState state) => state switch
    {
        SessionState.Done => "done",
        SessionState.NotDone => "not done",
        SessionState.LetGo => "let go",
        _ => "planned",
    };

    public static string Where(Place place) => place switch
    {
        Place.Home => "home",
        Place.AnotherHome => "another home",
        Place.Coop => "co-op",
        _ => "elsewhere",
    };

    /// <summary>Names as they are said: “Wren”, “Wren and Linnet”, “Wren, Linnet and Heron”.</summary>
    public static string Names(IEnumerable<string> names)
    {
        var all = names.ToList();
        return all.Count <= 1 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    /// <summary>Who does it: “both” or “all three” where nobody is missing, else the names.</summary>
    public static string Who(IReadOnlyList<Learner> those, IReadOnlyList<Learner> all)
    {
        string[] numbers = ["three", "four", "five", "six", "seven", "eight", "nine"];
        if (those.Count < 2 || those.Count != all.Count || those.Count - 3 >= numbers.Length)
            return Names(those.Select(l => l.Name));
        return those.Count == 2 ? "both" : "all " + numbers[those.Count - 3];
    }
}
