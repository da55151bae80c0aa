using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>How long a record is kept.</summary>
public enum KeepingTime
{
    /// <summary>The law gives no time.</summary>
    NotGiven,

    /// <summary>To a day, included.</summary>
    ToADay,

    /// <summary>For good.</summary>
    Always,
}

/// <summary>A record of one school year and how long the law asks a family to keep it.</summary>
/// <param name="Until">The last day, included; null unless <paramref name="Time"/> is <see cref="KeepingTime.ToADay"/>.</param>
public sealed record KeptRecord(PathwaySpan Span, RecordToKeep Record, KeepingTime Time, DateOnly? Until);

/// <summary>The records that a school year asks to be kept.</summary>
public static class RecordsList
{
    /// <param name="spans">A learner's, in any order; those outside the school year are passed over.</param>
    /// <returns>In the order of spans and of the catalog; a pathway that the learner stands under twice is listed once.</returns>
    public static IReadOnlyList<KeptRecord> Of(IReadOnlyList<PathwaySpan> spans, TeachingCalendar year) =>
    [
        .. spans.Where(s => s.In(year.Year) is not null).OrderBy(s => s.From)
            .DistinctBy(s => (s.Code, s.Pathway.Id))
            .SelectMany(s => s.Pathway.Records.Select(r => Kept(s, r, year.Year.Last))),
    ];

    private static KeptRecord Kept(PathwaySpan span, RecordToKeep record, DateOnly yearEnds) => record switch
    {
        { KeepAlways: true } => new(span, record, KeepingTime.Always, null),
        _ when record.Until(yearEnds) is { } until => new(span, record, KeepingTime.ToADay, until),
        _ => new(span, record, KeepingTime.NotGiven, null),
    };
}
