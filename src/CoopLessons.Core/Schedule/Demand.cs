using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>Where work of a week comes from.</summary>
public enum DemandOrigin { Unit, Course, Loop }

/// <summary>What one thing asks for in one week.</summary>
/// <param name="Id">Of the activity, course or loop; unique in a week.</param>
/// <param name="Subject">Anything by which things of one subject know each other; null where it does not matter.</param>
/// <param name="Learners">They do it together, so that its minutes are asked of each of them once and of an adult once.</param>
/// <param name="Minutes">In the whole week, 0 or more: four lessons of 30 ask for 120.</param>
/// <param name="LookMinutes">What looking after its waits takes in the whole week, of its learners and of an adult's hands; the wait itself takes nobody.</param>
public sealed record Demand(
    Guid Id, string Title, string? Subject, DemandOrigin Origin, IReadOnlyList<Guid> Learners, int Minutes, AdultNeed Need, int LookMinutes = 0)
{
    /// <summary>What one look takes where nobody said otherwise, in minutes (common practice, no source).</summary>
    public const int UsualLook = 5;

    /// <summary>Asked of each of its learners.</summary>
    public int OfLearner => Minutes + LookMinutes;

    /// <summary>
    /// Asked of an adult's hands. Somebody beside can be beside two at once and before anything is scheduled nobody knows
    /// when, so that being beside asks for nothing here.
    /// </summary>
    public int OfHands => (Need == AdultNeed.HandsOn ? Minutes : 0) + LookMinutes;
}

/// <summary>The minutes that somebody has in a week: free stretches on teaching days less what is fixed in them.</summary>
public sealed record Room(Guid Id, string Name, int Minutes);
