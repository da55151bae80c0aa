using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Coop;

/// <summary>By what a cost is divided.</summary>
public enum SharedBy { Family, Learner }

/// <summary>A family that bears part of a cost.</summary>
/// <param name="Learners">How many take part, 0 and more.</param>
/// <param name="Weight">How much one share of it counts, 0 and more; 1 where nobody says otherwise.</param>
public sealed record CostBearer(Guid Family, int Learners, int Weight = 1);

/// <summary>What a family bears.</summary>
/// <param name="Cents">0 and more.</param>
public sealed record CostShare(Guid Family, int Cents);

/// <summary>Division of a cost in whole cents by largest remainders, so that the shares add up to the cent.</summary>
public static class SharedCost
{
    /// <summary>
    /// By family each counts its weight; by learner, its weight times its learners, divided over the families in one step,
    /// so that each is within a cent of its exact share. Odd cents go to the largest remainders; where these are equal, to
    /// the family whose id is lower. The order of the bearers changes nothing.
    /// </summary>
    /// <param name="cents">0 and more.</param>
    /// <returns>One share a bearer, in their order.</returns>
    /// <exception cref="ArgumentException">A family twice, a negative figure, or nobody who bears anything; the message is a sentence.</exception>
    public static IReadOnlyList<CostShare> Divide(int cents, SharedBy by, IReadOnlyList<CostBearer> bearers)
    {
        if (cents < 0)
            throw new ArgumentException("A cost is 0 or more.", nameof(cents));
        if (bearers.Any(b => b.Learners < 0 || b.Weight < 0))
            throw new ArgumentException("Learners and weights are 0 or more.", nameof(bearers));
        if (bearers.DistinctBy(b => b.Family).Count() < bearers.Count)
            throw new ArgumentException("A family stands twice among those who share.", nameof(bearers));
        var byId = bearers.OrderBy(b => b.Family).ToList();
        int[] weights = [.. byId.Select(b => by == SharedBy.Family ? b.Weight : checked(b.Weight * b.Learners))];
        if (weights.All(w => w == 0))
            throw new ArgumentException("Nobody is there to share the cost.", nameof(bearers));
        var parts = byId.Zip(LargestRemainder.Divide(cents, weights)).ToDictionary(p => p.First.Family, p => p.Second);
        return [.. bearers.Select(b => new CostShare(b.Family, parts[b.Family]))];
    }
}
