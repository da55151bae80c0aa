using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Web.Pages.Records;

/// <summary>How these pages call places, dates and numbers.</summary>
public static class RecordWords
{
    public static string Of(Place place) => place switch
    {
        Place.Home => "at home",
        Place.AnotherHome => "at another home",
        Place.Coop => "at the co-op",
        _ => "elsewhere",
    };

    public static string Of(DateOnly date) => date.Plain();

    public static string WithWeekday(DateOnly date) => date.ToString("dddd, d MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Of(Month month) => month.Days.First.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    public static string InDecimals(Minutes minutes) => minutes.DecimalHours.ToString("0.00", CultureInfo.InvariantCulture);

    public static string SchoolDays(int count) => count == 1 ? "1 school day" : $"{count} school days";

    public static string Entries(int count) => count == 1 ? "1 entry" : $"{count} entries";
}
