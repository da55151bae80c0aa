namespace CoopLessons.Core.Requirements.Duties;

/// <summary>Where a due date comes from.</summary>
public enum DueOrigin
{
    /// <summary>There is no date.</summary>
    None,

    /// <summary>The rule gives it.</summary>
    Computed,

    /// <summary>The end of an even part of the school year, until the family sets its own.</summary>
    Proposed,

    /// <summary>The family's own date, which wins over every other.</summary>
    SetByFamily,
}

/// <summary>One paper, test or evaluation of one learner in one school year.</summary>
/// <param name="Key">
/// <c>code/pathway/duty/number</c>, for an event's duty with <c>/yyyy-MM-dd</c> of the event. A later stay under the
/// same pathway in the same year adds the day on which it began, so that no two are alike.
/// </param>
/// <param name="Number">Counted from 1.</param>
/// <param name="Due">The last day on which it is in time; null where there is none or it cannot be known yet.</param>
/// <param name="BeginBy">The duty's lead before the due date; null without a lead or a date.</param>
/// <param name="Missing">The event whose day the family must tell before there is a date.</param>
/// <param name="Why">One sentence with the arithmetic in words.</param>
public sealed record DatedDuty(
    string Key,
    PathwaySpan Span,
    Duty Duty,
    int Number,
    int Of,
    DateOnly? Due,
    DateOnly? BeginBy,
    DueOrigin Origin,
    LegalEvent? Missing,
    string Why)
{
    /// <summary>The date or the sentence follows from the birth date: not for eyes outside the family.</summary>
    public bool TellsBirthDate { get; init; }
}
