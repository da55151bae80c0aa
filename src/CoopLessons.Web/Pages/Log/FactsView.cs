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

    private DateTime Written => Family.Local(new DateTimeOffset(Revision.WrittenAt, TimeSpan.Zero)).DateTime;
}
