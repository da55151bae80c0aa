using System.Globalization;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;

namespace CoopLessons.Documents.Calendars;

/// <summary>A dated duty as it stands in a calendar that others may see over a shoulder: no birth date, no notes.</summary>
/// <param name="Key">Unlike every other in the calendar, and the same whenever the calendar is written again.</param>
/// <param name="Lines">What the event says of itself, one paragraph each.</param>
/// <param name="Lead">Days before the due date on which the calendar reminds; null or 0 for never.</param>
/// <param name="Tentative">The date is a proposal.</param>
/// <param name="Done">Done duties are left out of the calendar.</param>
public sealed record CalendarDuty(
    string Key, DateOnly Due, string Title, IReadOnlyList<string> Lines, Source Source, int? Lead = null, bool Tentative = false, bool Done = false)
{
    /// <param name="child">A first name or an initial, or null to name nobody.</param>
    /// <returns>Null for a duty without a date.</returns>
    public static CalendarDuty? Of(Guid learnerId, Guid schoolYearId, string? child, DatedDuty dated, bool done) => dated.Due is not { } due
        ? null
        : new CalendarDuty(
            string.Create(CultureInfo.InvariantCulture, $"{learnerId:N}/{schoolYearId:N}/{dated.Key}"),
            due,
            (dated.Duty.What, dated.Of) switch
            {
                (var what, > 1) => string.Create(CultureInfo.InvariantCulture, $"{what}, {dated.Number} of {dated.Of}"),
                var (what, _) => what,
            } + (child is null ? "" : $" ({child})"),
            [.. Remarks(dated)],
            dated.Duty.Source,
            dated.Duty.Lead,
            dated.Origin == DueOrigin.Proposed,
            done);

    private static IEnumerable<string> Remarks(DatedDuty dated)
    {
        if (dated.Duty.ByOthers)
            yield return "For the office or the school to do: you only wait for it.";
        if (dated.Duty.Voluntary)
            yield return "Voluntary.";
        if (dated.Duty.When is { } condition)
            yield return $"Condition: {condition}";
        if (dated.TellsBirthDate)
            yield break;
        yield return $"When: {dated.Duty.Words}";
        yield return $"Why this date: {dated.Why}";
    }
}
