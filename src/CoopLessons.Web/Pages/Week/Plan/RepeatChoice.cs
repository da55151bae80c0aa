using System.Globalization;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>How an appointment comes back, as a form offers it.</summary>
public enum RepeatHow { Once, Weekly, EveryOtherWeek, OwnRule }

/// <summary>The choices of a form as a rule of RFC 5545, and a rule as the choices where it is one of them.</summary>
public sealed record RepeatChoice(RepeatHow How, IReadOnlyList<DayOfWeek> Days, DateOnly? Until, string Rule)
{
    public static RepeatChoice Of(string rule)
    {
        if (rule.Length == 0)
            return new RepeatChoice(RepeatHow.Once, [], null, "");
        var parts = rule.Split(';').Select(p => p.Split('=')).ToDictionary(p => p[0], p => p[^1], StringComparer.Ordinal);
        var often = parts.GetValueOrDefault("INTERVAL", "1");
        var days = parts.GetValueOrDefault("BYDAY", "").Split(',').Select(DayOf).ToList();
        return parts["FREQ"] == "WEEKLY" && often is "1" or "2" && parts["FREQ"] == "WEEKLY" && days.All(d => d is not null) && parts.Keys.All(k => k is "FREQ" or "INTERVAL" or "BYDAY" or "UNTIL")
            ? new RepeatChoice(often == "1" ? RepeatHow.Weekly : RepeatHow.EveryOtherWeek, [.. days.OfType<DayOfWeek>()], UntilOf(parts), "")
            : new RepeatChoice(RepeatHow.OwnRule, [], null, rule);
    }

    /// <summary>As RFC 5545 writes it, Monday first; empty for a single day.</summary>
    public string ToRule()
    {
        if (How == RepeatHow.Once)
            return "";
        if (How == RepeatHow.OwnRule)
            return Rule;
        var days = string.Join(',', WeekHours.FromMonday.Where(Days.Contains).Select(Code));
        var until = Until is { } last ? ";UNTIL=" + last.ToString("yyyyMMdd", CultureInfo.InvariantCulture) : "";
        return $"FREQ=WEEKLY{(How == RepeatHow.EveryOtherWeek ? ";INTERVAL=2" : "")};BYDAY={days}{until}";
    }

    /// <summary>In words: "Thursdays", "every other Monday, until 18 December 2026".</summary>
    public string InWords()
    {
        if (How == RepeatHow.Once)
            return "once";
        if (How == RepeatHow.OwnRule)
            return $"by the rule {Rule}";
        var days = WeekHours.FromMonday.Where(Days.Contains).Select(d => How == RepeatHow.Weekly ? $"{d}s" : $"{d}").ToList();
        var words = days.Count == 7 ? How == RepeatHow.Weekly ? "every day" : "every day of every other week" : (How == RepeatHow.Weekly ? "" : "every other ") + Today.DayWords.Names(days);
        return Until is { } last ? $"{words}, until {last.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}" : words;
    }

    private static string Code(DayOfWeek day) => day.ToString()[..2].ToUpperInvariant();

    private static DayOfWeek? DayOf(string code) => WeekHours.FromMonday.Where(d => Code(d) == code).Select(d => (DayOfWeek?)d).FirstOrDefault();

    private static DateOnly? UntilOf(Dictionary<string, string> parts) =>
        DateOnly.TryParseExact(parts.GetValueOrDefault("UNTIL"), "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var last) ? last : null;
}
