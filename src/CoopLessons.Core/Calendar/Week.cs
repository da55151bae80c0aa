using System.Globalization;

namespace CoopLessons.Core.Calendar;

/// <summary>A week as ISO 8601 counts it: from Monday, week 1 holding the year's first Thursday.</summary>
/// <param name="Year">The week-numbering year, which near New Year differs from the calendar year.</param>
/// <param name="Number">1–53.</param>
public readonly record struct Week(int Year, int Number)
{
    public static Week Of(DateOnly date)
    {
        var day = date.ToDateTime(TimeOnly.MinValue);
        return new Week(ISOWeek.GetYear(day), ISOWeek.GetWeekOfYear(day));
    }

    public DateOnly Monday => DateOnly.FromDateTime(ISOWeek.ToDateTime(Year, Number, DayOfWeek.Monday));

    /// <summary>Monday to Sunday.</summary>
    public DayRange Days => new(Monday, Monday.AddDays(6));

    public Week Next => Of(Monday.AddDays(7));
    public Week Previous => Of(Monday.AddDays(-7));

    /// <summary>As ISO 8601 writes it: <c>2026-W48</c>.</summary>
    public string Iso => string.Create(CultureInfo.InvariantCulture, $"{Year:0000}-W{Number:00}");

    /// <summary>Reads <c>2026-W48</c>; false for anything else, also for a week 53 that the year does not have.</summary>
    public static bool TryParse(string? text, out Week week)
    {
        week = default;
        if (text is not { Length: 8 } || text[4] != '-' || text[5] != 'W'
            || !int.TryParse(text.AsSpan(0, 4), NumberStyles.None, CultureInfo.InvariantCulture, out var year)
            || !int.TryParse(text.AsSpan(6, 2), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || year is < 1900 or > 9000 || number < 1 || number > ISOWeek.GetWeeksInYear(year))
            return false;
        week = new Week(year, number);
        return true;
    }

    public override string ToString() => Iso;
}
