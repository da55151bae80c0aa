using System.Globalization;
using System.Text;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Documents.Reports;

/// <summary>The words of the hours report, the same in every form of it.</summary>
internal static class ReportWords
{
    public const string Title = "Hours of instruction";
    public const string StrictDays = "Days with minutes";
    public const string BroadDays = "Days with minutes or met in passing";

    public const string MetInPassing =
        "A subject is met in passing on a day when the log names it without giving it minutes.";

    public const string StrictMeaning =
        "A day counts when the family marked it so, or when its minutes reach the minimum day; a day marked as no school day never counts.";

    public const string BroadMeaning =
        "Counts as well each day on which something was logged or met in passing without reaching the minimum day.";

    public const string Caution =
        "This report is made from the family's own log. What the law asks for differs from place to place and changes: confirm it with the text of the statute or with the state's own office.";

    public const string FingerprintMeaning = "The fingerprint comes from the entries themselves: the same entries give the same one, and a changed entry gives another.";

    public static string Place(Place place) => place switch
    {
        Core.Hours.Place.Home => "At home",
        Core.Hours.Place.AnotherHome => "At another home",
        Core.Hours.Place.Coop => "At the co-op",
        Core.Hours.Place.Elsewhere => "Elsewhere",
        _ => throw new ArgumentOutOfRangeException(nameof(place)),
    };

    public static string Date(DateOnly date) => date.Plain();

    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    public static string Decimal(Minutes minutes) => minutes.DecimalHours.ToString("0.00", CultureInfo.InvariantCulture);

    public static string Days(int count) => count == 1 ? "1 day" : Number(count) + " days";

    public static string Entries(int count) => count == 1 ? "1 log entry" : Number(count) + " log entries";

    /// <summary>Text that was left empty, or holds only marks without a shape, is said to be empty rather than leaving a hole.</summary>
    public static string Given(string text) =>
        PlainText.Clean(text).EnumerateRunes().All(r => Rune.IsWhiteSpace(r) || Rune.GetUnicodeCategory(r) == UnicodeCategory.Format) ? "(not given)" : text;
}
