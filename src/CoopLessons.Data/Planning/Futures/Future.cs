using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>What a family may do about a plan that was upset.</summary>
public enum FutureKind
{
    /// <summary>Everything of the units comes later by as many teaching days.</summary>
    Shift,

    /// <summary>The end stays: what fits goes into the days that are left, the rest is let go.</summary>
    Thin,

    /// <summary>What was hit is let go; nothing else moves.</summary>
    LetGo,
}

/// <summary>When a unit ends, before and after.</summary>
public sealed record UnitEnd(Guid UnitId, string Title, DateOnly Before, DateOnly After);

/// <summary>Minutes of one learner in one subject that would not be taught.</summary>
public sealed record LostMinutes(Guid LearnerId, Guid SubjectId, int Minutes);

/// <summary>A way on, and what it costs.</summary>
/// <param name="LetGo">Titles of activities that would not be done.</param>
/// <param name="Resuming">Titles of lessons and loops that would go on later where they stopped: no lesson is lost, its time is.</param>
/// <param name="Moved">How many sessions would stand on another day.</param>
/// <param name="NoHour">Titles of what has a day and found no hour on it.</param>
/// <param name="Lost">By learner and subject, none of them zero.</param>
/// <param name="Ends">Units of which something moves or goes.</param>
/// <param name="Proof">What is known of the layouts behind it; null where nothing had to be laid out.</param>
public sealed record Future(
    FutureKind Kind, PlanProposal Proposal, IReadOnlyList<string> LetGo, IReadOnlyList<string> Resuming, int Moved, IReadOnlyList<string> NoHour,
    IReadOnlyList<LostMinutes> Lost, IReadOnlyList<UnitEnd> Ends, Proof? Proof);

/// <summary>An upset with the three ways on.</summary>
public sealed record UpsetOutcome(Upset Upset, IReadOnlyList<Future> Futures)
{
    /// <summary>The plan for which they were worked out, by <see cref="PlanPrint"/>.</summary>
    public string Print { get; init; } = "";
}
