using System.Globalization;

namespace CoopLessons.Core.Log.Sheets;

/// <summary>How lengths are written in a sheet.</summary>
public enum LengthForm
{
    /// <summary>Whole minutes: <c>45</c>.</summary>
    Minutes,

    /// <summary>Hours and minutes: <c>0:45</c>, <c>1:30</c>.</summary>
    Clock,

    /// <summary>Hours with a decimal point or comma: <c>0.75</c>, <c>1,5</c>.</summary>
    Hours,
}

/// <summary>Reads the days, lengths and times of a sheet as somebody chose them to be read; nothing is guessed row by row.</summary>
public static class SheetForms
{
    /// <summary>The forms of a day that are offered, in .NET’s letters, each with how it is shown.</summary>
    public static readonly IReadOnlyList<(string Form, string Shown)> Days =
    [
        ("yyyy-M-d", "2026-03-12"), ("M/d/yyyy", "3/12/2026, the month first"), ("d/M/yyyy", "12/3/2026, the day first"), ("M/d/yy", "3/12/26, the month first"), ("d/M/yy", "12/3/26, the day first"),
        ("d.M.yyyy", "12.3.2026"), ("d.M.yy", "12.3.26"), ("M-d-yyyy", "3-12-2026, the month first"), ("d-M-yyyy", "12-3-2026, the day first"), ("yyyy/M/d", "2026/3/12"), ("yyyyMMdd", "20260312"),
        ("MMM d, yyyy", "Mar 12, 2026"), ("MMMM d, yyyy", "March 12, 2026"), ("d MMM yyyy", "12 Mar 2026"), ("d MMMM yyyy", "12 March 2026"),
    ];

    private static readonly string[] s_clocks = ["H:mm", "HH:mm", "H:mm:ss", "h:mm tt", "h:mmtt", "h tt", "htt", "H.mm"];

    /// <summary>The day, where the text is one in that form; a time of day behind it is passed over.</summary>
    public static DateOnly? Day(string text, string form) =>
        DateOnly.TryParseExact(text, form, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var day)
        || text.IndexOfAny([' ', 'T']) is var at and > 5 && TimeOnly.TryParse(text[(at + 1)..].TrimEnd('Z'), CultureInfo.InvariantCulture, out _)
            && DateOnly.TryParseExact(text[..at], form, CultureInfo.InvariantCulture, DateTimeStyles.None, out day)
            ? day : null;

    /// <summary>The forms in which every one of the samples is a day; empty where there is no sample.</summary>
    public static IReadOnlyList<string> DaysOf(IReadOnlyCollection<string> samples) =>
        samples.Count == 0 ? [] : [.. Days.Select(d => d.Form).Where(f => samples.All(s => Day(s, f) is not null))];

    /// <summary>The form in which most of the samples are days, the first of equals; null unless it is more than half of them.</summary>
    public static string? DayOfMost(IReadOnlyCollection<string> samples) => Most(Days.Select(d => d.Form), samples, (s, f) => Day(s, f) is not null);

    /// <summary>Whole minutes, decimal hours to the nearest minute, a half up; null for what is no length in that form. May be outside 1–1440.</summary>
    public static int? Length(string text, LengthForm form)
    {
        var bare = text.Trim();
        switch (form)
        {
            case LengthForm.Minutes:
                return Whole(Without(bare, "minutes", "minute", "mins", "min", "m"));
            case LengthForm.Clock:
                return bare.Split(':') is [var hours, var minutes, ..] parts && parts.Length <= 3 && Whole(hours) is { } h and <= 99 && minutes.Length == 2 && Whole(minutes) is { } m and < 60 && (parts.Length == 2 || Whole(parts[2]) == 0) ? h * 60 + m : null;
            default:
                bare = Without(bare, "hours", "hour", "hrs", "hr", "h").Replace(',', '.');
                return bare.Length is > 0 and <= 8 && decimal.TryParse(bare, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var decimals) && decimals < 100
                    ? (int)Math.Round(decimals * 60, MidpointRounding.AwayFromZero) : null;
        }
    }

    /// <summary>The forms in which every one of the samples is a length of a day at most.</summary>
    public static IReadOnlyList<LengthForm> LengthsOf(IReadOnlyCollection<string> samples) =>
        samples.Count == 0 ? [] : [.. Enum.GetValues<LengthForm>().Where(f => samples.All(s => Length(s, f) is >= 1 and <= 1440))];

    /// <summary>The form in which most of the samples are lengths of a day at most, the first of equals in this order; null unless it is more than half of them.</summary>
    public static LengthForm? LengthOfMost(IReadOnlyCollection<string> samples, IEnumerable<LengthForm> order) =>
        Most(order.Select(f => (LengthForm?)f), samples, (s, f) => Length(s, f!.Value) is >= 1 and <= 1440);

    /// <summary>A time of day, such as 9:30, 14:05 or 2:05 pm.</summary>
    public static TimeOnly? Clock(string text) =>
        TimeOnly.TryParseExact(text.Trim().ToUpperInvariant(), s_clocks, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var time) ? time : null;

    private static T? Most<T>(IEnumerable<T> forms, IReadOnlyCollection<string> samples, Func<string, T, bool> reads)
    {
        var (form, count) = forms.Select(f => (Form: f, Count: samples.Count(s => reads(s, f)))).MaxBy(f => f.Count);
        return count * 2 > samples.Count ? form : default;
    }

    private static int? Whole(string text) => text.Length is > 0 and <= 5 && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Without(string text, params string[] units)
    {
        foreach (var unit in units)
        {
            if (text.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
                return text[..^unit.Length].TrimEnd();
        }

        return text;
    }
}
