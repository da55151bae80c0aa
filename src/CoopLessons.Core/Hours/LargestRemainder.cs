namespace CoopLessons.Core.Hours;

/// <summary>
/// Division of a whole number into whole parts by Hamilton's method of largest remainders.
/// Source: the apportionment bill of 1792, as worked through in the literature on apportionment of the
/// US House; the tests hold it against the published table for the 1790 census.
/// </summary>
public static class LargestRemainder
{
    /// <summary>
    /// Divides <paramref name="total"/> in proportion to <paramref name="weights"/>.
    /// Every part first gets the whole number below its exact share; what is left goes, one each, to the parts
    /// with the largest remainders; equal remainders go to the part that stands first.
    /// </summary>
    /// <param name="total">What is divided, zero or more.</param>
    /// <param name="weights">One weight a part, each zero or more, at least one above zero.</param>
    /// <returns>One part a weight, in the order of the weights; their sum is exactly <paramref name="total"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative total or weight.</exception>
    /// <exception cref="ArgumentException">No weight above zero.</exception>
    public static int[] Divide(int total, IReadOnlyList<int> weights)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(total);
        long sum = 0;
        foreach (var weight in weights)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(weight, nameof(weights));
            sum += weight;
        }

        if (sum == 0)
            throw new ArgumentException("At least one weight must be above zero.", nameof(weights));

        var parts = new int[weights.Count];
        var remainders = new long[weights.Count];
        var left = total;
        for (var i = 0; i < parts.Length; i++)
        {
            var share = (long)total * weights[i];
            parts[i] = (int)(share / sum);
            remainders[i] = share % sum;
            left -= parts[i];
        }

        var byRemainder = Enumerable.Range(0, parts.Length).OrderByDescending(i => remainders[i]).ThenBy(i => i);
        foreach (var i in byRemainder.Take(left))
            parts[i]++;
        return parts;
    }
}
