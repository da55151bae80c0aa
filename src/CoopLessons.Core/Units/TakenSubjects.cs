using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Units;

/// <summary>How an activity counts for a family that left some of the unit's subjects out.</summary>
/// <param name="Split">Weights over the subjects that were taken.</param>
/// <param name="Touches">The activity's own touches, and the weighted subjects that were left out.</param>
public sealed record TakenSplit(IReadOnlyList<SubjectWeight> Split, IReadOnlyList<Guid> Touches);

public static class TakenSubjects
{
    /// <summary>
    /// An activity stays in the plan while at least one of its weighted subjects is taken; its minutes then go to the
    /// subjects taken, and a subject left out becomes a touch. Null where none is taken: the activity is left out.
    /// </summary>
    public static TakenSplit? Of(IReadOnlyList<SubjectWeight> weights, IReadOnlyList<Guid> touches, IReadOnlySet<Guid> leftOut)
    {
        var taken = weights.Where(w => !leftOut.Contains(w.SubjectId)).ToList();
        if (taken.Count == 0)
            return null;
        var met = weights.Where(w => leftOut.Contains(w.SubjectId)).Select(w => w.SubjectId).Concat(touches).Distinct();
        return new TakenSplit(taken, [.. met]);
    }
}
