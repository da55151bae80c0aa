using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>What comes to a course of itself: a subject of the family between two dates.</summary>
/// <param name="Days">Both ends included.</param>
/// <param name="UnitId">Only entries that belong to this unit; null for all.</param>
public sealed record CourseRule(Guid SubjectId, DayRange Days, Guid? UnitId = null)
{
    /// <param name="unitId">The unit of the credit's entry; null for none.</param>
    public bool Asks(Credit credit, Guid? unitId) =>
        credit.SubjectId == SubjectId && Days.Contains(credit.Date) && (UnitId is null || UnitId == unitId);
}

/// <summary>A part of the log as a course may have it: one entry's minutes in one subject. The smallest thing that goes to a course.</summary>
public readonly record struct LogPart(Guid EntryId, Guid SubjectId)
{
    public static LogPart Of(Credit credit) => new(credit.EntryId, credit.SubjectId);
}

/// <summary>Study that the log does not hold, as the parent wrote it down.</summary>
/// <param name="With">A teacher, a school, a place; may be empty.</param>
public sealed record StudyElsewhere(DayRange Days, Minutes Minutes, string What, string With);

/// <summary>What one course asks for.</summary>
/// <param name="PickedIn">Parts that a parent gave to it by hand.</param>
/// <param name="PutOut">Parts that a parent took from it by hand: no rule brings them back.</param>
public sealed record CourseClaim(
    Guid CourseId,
    IReadOnlyList<CourseRule> Rules,
    IReadOnlySet<LogPart> PickedIn,
    IReadOnlySet<LogPart> PutOut,
    IReadOnlyList<StudyElsewhere> Elsewhere)
{
    internal bool HasByHand(LogPart part) => PickedIn.Contains(part) && !PutOut.Contains(part);

    internal bool Asks(Credit credit, Guid? unitId)
    {
        var part = LogPart.Of(credit);
        return !PutOut.Contains(part) && (PickedIn.Contains(part) || Rules.Any(r => r.Asks(credit, unitId)));
    }
}
