namespace CoopLessons.Core.Schedule;

/// <summary>Where a session was put.</summary>
/// <param name="StartsAt">Minutes after midnight.</param>
/// <param name="LooksAt">When somebody looks after its wait; null where it has none.</param>
/// <param name="Adult">Whose hands it takes; null where it takes nobody's.</param>
/// <param name="Looker">Who looks after the wait.</param>
public sealed record Placing(Guid SessionId, DateOnly Day, int StartsAt, int? LooksAt, Guid? Adult, Guid? Looker);

/// <summary>What a parent may do about a session that found no place.</summary>
public enum MisfitChoice { LeaveOut, Shorten, NextWeek, AskAHelper }

/// <summary>A session that found no place.</summary>
/// <param name="Reason">One sentence in plain words: what it needs and what there is.</param>
/// <param name="FoundOut">Whether the reason is certain; where it is not, the sentence says so.</param>
public sealed record Misfit(Guid SessionId, string Reason, bool FoundOut, IReadOnlyList<MisfitChoice> Choices);

/// <summary>What is known about how good a plan is.</summary>
public enum Proof
{
    /// <summary>No plan is better under the stated rules and wishes.</summary>
    Best,

    /// <summary>None is better by more than the distance from cost to bound.</summary>
    Within,

    /// <summary>Nothing is known but that the plan is valid.</summary>
    None,
}

/// <summary>The price of a plan, part by part; lower is better.</summary>
/// <param name="LeftOut">Weighted sum of sessions without a place: 25, 5 and 1 from above all down.</param>
/// <param name="Moved">Sessions that are not on the day on which they were, those without a place among them.</param>
/// <param name="Uneven">
/// Unevenness of days and of subjects, in units of five minutes. A learner's day should hold the week's work in proportion
/// to its free time, and so should the work of the adults' hands; half an hour either way counts nothing. Six for every
/// session of a subject above its even share of a learner's day.
/// </param>
/// <param name="Unmet">Wishes that were not met, day and morning each for itself; a session without a place meets none.</param>
public sealed record PlanCost(int LeftOut, int Moved, int Uneven, int Unmet)
{
    public int Total => 400 * LeftOut + 10 * Moved + Uneven + 4 * Unmet;
}

/// <summary>A laid-out week.</summary>
/// <param name="Places">By day, start and id.</param>
/// <param name="Bound">No plan costs less than this; 0 where nothing is known.</param>
/// <param name="CutShort">The safety net of wall time stopped the work: the same input may give another plan.</param>
public sealed record WeekPlan(
    IReadOnlyList<Placing> Places, IReadOnlyList<Misfit> Misfits, PlanCost Cost, int Bound, Proof Proof, bool CutShort);

/// <summary>How long to think, in deterministic effort and not in seconds: the same effort gives the same plan.</summary>
public readonly record struct Effort(double Units)
{
    /// <summary>For a parent who waits: about a second at most on two cores.</summary>
    public static Effort Usual { get; } = new(0.6);

    public static Effort Longer { get; } = new(2);
}

/// <summary>What is told while a week is being laid out.</summary>
/// <param name="Step">A sentence without a full stop: "Placing everything".</param>
/// <param name="Share">0 to 1, never falling.</param>
/// <param name="LeftOut">How many sessions have no place in the best plan so far; null before there is one.</param>
public sealed record LayoutProgress(string Step, double Share, int? LeftOut = null);

/// <summary>A rule that a placing breaks.</summary>
public enum FaultKind { Unknown, Twice, OutsideDays, OutsideHours, TwoPlaces, NoAdult, TooEarlyAfter, LookMissing, LookAtWrongTime, BoundHours, TooLong }

/// <summary>What a placing breaks, in one sentence; <paramref name="With"/> names the sessions it clashes with.</summary>
public sealed record PlanFault(FaultKind Kind, Guid SessionId, IReadOnlyList<Guid> With, string Sentence);
