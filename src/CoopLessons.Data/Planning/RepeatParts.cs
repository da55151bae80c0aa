using System.Globalization;

namespace CoopLessons.Data.Planning;

/// <summary>The parts of a rule of RFC 5545 (3.3.10), each checked by itself before anything reckons with them.</summary>
internal static class RepeatParts
{
    private const int MostTimes = 400;
    private static readonly string[] Weekdays = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"];
    private static readonly string[] Frequencies = ["DAILY", "WEEKLY", "MONTHLY", "YEARLY"];

    /// <summary>What is wrong with a rule in capitals; empty where nothing is.</summary>
    public static string Fault(string rule)
    {
        if (rule.Length > RepeatRule.Longest)
            return $"A rule has at most {RepeatRule.Longest} signs.";
        var parts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in rule.Split(';'))
        {
            if (part.Split('=') is not [{ Length: > 0 } name, { Length: > 0 } value])
                return $"“{part}” is no part of a rule: each part is a name, an equals sign and a value, such as BYDAY=TH.";
            if (!parts.TryAdd(name, value))
                return $"{name} stands twice in this rule.";
        }

        if (!parts.ContainsKey("FREQ"))
            return "A rule says how often: FREQ=DAILY, FREQ=WEEKLY, FREQ=MONTHLY or FREQ=YEARLY.";
        if (parts.ContainsKey("COUNT") && parts.ContainsKey("UNTIL"))
            return "A rule ends after a number of times or on a day, not both: leave out COUNT or UNTIL.";
        return parts.Select(p => Fault(p.Key, p.Value)).FirstOrDefault(f => f.Length > 0) ?? Together(parts);
    }

    private static string Fault(string name, string value) => name switch
    {
        "FREQ" when value is "SECONDLY" or "MINUTELY" or "HOURLY" => "This comes back within a day. Rules here are for days: FREQ=DAILY, WEEKLY, MONTHLY or YEARLY.",
        "FREQ" => Frequencies.Contains(value) ? "" : $"FREQ cannot be “{value}”: it is DAILY, WEEKLY, MONTHLY or YEARLY.",
        "INTERVAL" => Whole(name, value, 1, 99),
        "COUNT" => Whole(name, value, 1, MostTimes),
        "UNTIL" => Until(value),
        "WKST" => Weekdays.Contains(value) ? "" : $"WKST cannot be “{value}”: it is one of {string.Join(", ", Weekdays)}.",
        "BYDAY" => value.Split(',').Select(ByDay).FirstOrDefault(f => f.Length > 0) ?? "",
        "BYMONTH" => Each(name, value, 12, signed: false),
        "BYMONTHDAY" => Each(name, value, 31, signed: true),
        "BYYEARDAY" or "BYSETPOS" => Each(name, value, 366, signed: true),
        "BYWEEKNO" => Each(name, value, 53, signed: true),
        "BYHOUR" or "BYMINUTE" or "BYSECOND" => $"{name} is for times within a day. The time is written in the field of its own.",
        _ => $"“{name}” is no part of a rule that is known here.",
    };

    // RFC 5545, 3.3.10: which parts may not stand beside each other.
    private static string Together(Dictionary<string, string> parts)
    {
        var often = parts["FREQ"];
        if (parts.ContainsKey("BYSETPOS") && !parts.Keys.Any(k => k is "BYDAY" or "BYMONTH" or "BYMONTHDAY" or "BYYEARDAY" or "BYWEEKNO"))
            return "BYSETPOS chooses among the days that another part names, such as BYDAY; this rule has none.";
        if (parts.ContainsKey("BYWEEKNO") && often != "YEARLY")
            return "BYWEEKNO goes with FREQ=YEARLY alone.";
        if (parts.ContainsKey("BYYEARDAY") && often != "YEARLY")
            return "BYYEARDAY goes with FREQ=YEARLY alone.";
        if (parts.ContainsKey("BYMONTHDAY") && often == "WEEKLY")
            return "BYMONTHDAY does not go with FREQ=WEEKLY.";
        var numbered = parts.TryGetValue("BYDAY", out var days) && days.Split(',').Any(d => d.Length > 2);
        return numbered && (often is "DAILY" or "WEEKLY" || parts.ContainsKey("BYWEEKNO"))
            ? "A numbered weekday, such as 1TH, goes with FREQ=MONTHLY or FREQ=YEARLY, and not with BYWEEKNO."
            : "";
    }

    private static string ByDay(string day)
    {
        if (day.Length < 2 || !Weekdays.Contains(day[^2..]))
            return $"“{day}” is no weekday: write {string.Join(", ", Weekdays)}, with a number before it where one is meant, such as 1TH.";
        return day.Length == 2 ? "" : IsNumber(day[..^2], 53, signed: true) ? "" : $"“{day[..^2]}” before {day[^2..]} is no number from 1 to 53, or from -1 to -53.";
    }

    private static string Until(string value) =>
        DateOnly.TryParseExact(value, "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)
            ? "" : "UNTIL is the last day, written as in UNTIL=20261218, without a time.";

    private static string Whole(string name, string value, int least, int most) =>
        IsNumber(value, most, signed: false) ? "" : $"{name} is a whole number from {least} to {most}.";

    private static string Each(string name, string value, int most, bool signed) =>
        value.Split(',').All(v => IsNumber(v, most, signed)) ? "" : $"{name} has whole numbers from 1 to {most}{(signed ? $", or from -1 to -{most}" : "")}, divided by commas.";

    private static bool IsNumber(string text, int most, bool signed)
    {
        if (signed && text is ['-' or '+', ..])
            text = text[1..];
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= most;
    }
}
