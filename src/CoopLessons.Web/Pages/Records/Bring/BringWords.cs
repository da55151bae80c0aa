using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Log.Sheets;

namespace CoopLessons.Web.Pages.Records.Bringing;

/// <summary>What the pages of brought files say.</summary>
public static class BringWords
{
    public static string Entries(int count) => count == 1 ? "1 entry" : string.Create(CultureInfo.InvariantCulture, $"{count:N0} entries");

    public static string Rows(int count) => count == 1 ? "1 row" : string.Create(CultureInfo.InvariantCulture, $"{count:N0} rows");

    public static string Of(char separator) => separator switch { ';' => "semicolons", '\t' => "tabs", _ => "commas" };

    public static string Of(LengthForm form) => form switch { LengthForm.Minutes => "minutes, as 45", LengthForm.Clock => "hours and minutes, as 0:45", _ => "hours, as 0.75" };

    public static string Of(Place place) => place switch { Place.Home => "home", Place.AnotherHome => "another home", Place.Coop => "co-op", _ => "out" };

    public static string Shown(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
