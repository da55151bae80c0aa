using System.Globalization;

namespace CoopLessons.Core.Calendar;

/// <summary>Dates as people read them, in English.</summary>
public static class PlainDates
{
    /// <summary>Such as <c>3 May 2027</c>.</summary>
    public static string Plain(this DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
}
