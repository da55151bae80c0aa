using CoopLessons.Core.Schedule;

namespace CoopLessons.Data.Schedule;

/// <summary>A session that is not planned yet, and where it would stand.</summary>
public sealed record AddedSession(Guid Id, Guid? ActivityId, Guid? CourseId, Guid? LoopId, IReadOnlyList<Guid> Learners, PlanPlace Place);

/// <summary>A unit that would begin on another Monday.</summary>
public sealed record UnitMove(Guid UnitId, DateOnly From, DateOnly To);

/// <summary>Everything that one decision would change, taken and undone as a whole.</summary>
/// <param name="Title">What was decided, as a sentence without a full stop.</param>
/// <param name="LeftOut">Activities that are left out of their units.</param>
public sealed record PlanProposal(
    string Title, IReadOnlyList<PlanChange> Changes, IReadOnlyList<AddedSession> Added, IReadOnlyList<UnitMove> Units, IReadOnlyList<Guid> LeftOut)
{
    public bool IsEmpty => Changes.Count + Added.Count + Units.Count + LeftOut.Count == 0;
}
