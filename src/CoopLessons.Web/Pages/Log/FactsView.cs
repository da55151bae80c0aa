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

    /// <summary>The day of writing in the family's zone; what was written on a phone without a network was written there and then.</summary>
    public DateOnly WrittenOn => DateOnly.FromDateTime(Written);

    public string WrittenClock => DayWords.Clock(DayWords.OfDay(TimeOnly.FromDateTime(Written)));

    /// <summary>“Monday 16 March, 7:05”: when it reached the server, where it was written on a phone before; else null.</summary>
    public string? Arrived => Revision.OnPhoneAt is null ? null : InWords(Local(Revision.WrittenAt));

    private DateTime Written => Local(Revision.OnPhoneAt ?? Revision.WrittenAt);

    private string InWords(DateTime at) => $"{DateOnly.FromDateTime(at).InWords(Revision.Date)}, {DayWords.Clock(DayWords.OfDay(TimeOnly.FromDateTime(at)))}";

    private DateTime Local(DateTime utc) => Family.Local(new DateTimeOffset(utc, TimeSpan.Zero)).DateTime;
}
