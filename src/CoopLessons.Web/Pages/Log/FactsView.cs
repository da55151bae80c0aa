using System.Globalization;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Pages.Log;

/// <summary>One writing of an entry, ready to be read.</summary>
public sealed record FactsView(LogRevision Revision, EntryWords Words, Family Family)
{
    /// <summary>“Thursday 12 March 2026, 9:15”.</summary>
    public string DoneOn => Revision.Date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture)
        + (Revision.StartsAt is { } start ? $", {DayWords.Clock(start)}" : "");

    /// <summary>The day of writing in the family's zone.</summary>
    public DateOnly WrittenOn => DateOnly.FromDateTime(Written);

    public string WrittenClock => DayWords.Clock(DayWords.OfDay(TimeOnly.FromDateTime(Written)));

    /// <summary>“, on a phone without network; here since Monday 16 March, 8:05”; empty for what came at once.</summary>
    public string KeptWords => Revision.OnPhoneAt is null ? "" : $", on a phone without network; here since {DateOnly.FromDateTime(Came).InWords()}, {DayWords.Clock(DayWords.OfDay(TimeOnly.FromDateTime(Came)))}";

    private DateTime Written => Family.Local(new DateTimeOffset(Revision.OnPhoneAt ?? Revision.WrittenAt, TimeSpan.Zero)).DateTime;

    private DateTime Came => Family.Local(new DateTimeOffset(Revision.WrittenAt, TimeSpan.Zero)).DateTime;
}
