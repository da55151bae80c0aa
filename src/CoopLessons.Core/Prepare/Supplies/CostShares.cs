using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>What was paid for a good, divided over those for whom it was bought.</summary>
public static class CostShares
{
    private const int Finest = 1_000_000;

    /// <summary>
    /// Divides by need with the largest remainder, so that the shares add up to the cent. A need above zero weighs at least
    /// one millionth of the largest.
    /// </summary>
    /// <param name="cents">Zero or more.</param>
    /// <param name="needs">In one measure, each above zero, at least one.</param>
    public static IReadOnlyList<int> Of(int cents, IReadOnlyList<decimal> needs)
    {
        var most = needs.Max();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most, nameof(needs));
        return LargestRemainder.Divide(cents, [.. needs.Select(n => Math.Max(1, (int)Math.Round(n / most * Finest)))]);
    }
}
