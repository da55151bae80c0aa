namespace CoopLessons.Core.Prepare.Books;

/// <summary>
/// Parts that stay in their order, laid over days so that the longest day is as short as can be: the linear partition
/// problem (Skiena, The Algorithm Design Manual), solved exactly.
/// </summary>
/// <remarks>
/// Of the ways with the shortest longest day it takes the most even one, by the least sum of the days' squares; of those
/// as even, the one that has more in the earlier days, so that a day that falls through later costs least. No day is empty
/// where there are as many parts as days; where there are fewer, each of the first days has one part and the rest are free.
/// </remarks>
public static class LinearPartition
{
    /// <param name="weights">Lengths of the parts, each 1 or more.</param>
    /// <param name="days">1 or more.</param>
    /// <returns>How many parts each day has, a number a day; 0 for a day that stays free.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A weight or the number of days is less than 1.</exception>
    public static IReadOnlyList<int> Of(IReadOnlyList<int> weights, int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        if (weights.Any(w => w < 1))
            throw new ArgumentOutOfRangeException(nameof(weights), "A part has a length.");
        if (weights.Count <= days)
            return [.. Enumerable.Range(0, days).Select(d => d < weights.Count ? 1 : 0)];
        return MostEven(weights, days, ShortestLongest(weights, days));
    }

    /// <summary>The least limit under which the parts fit into so many days.</summary>
    public static int ShortestLongest(IReadOnlyList<int> weights, int days)
    {
        var (least, most) = (weights.DefaultIfEmpty(0).Max(), weights.Sum());
        while (least < most)
        {
            var middle = least + (most - least) / 2;
            if (DaysUnder(weights, middle) <= days)
                most = middle;
            else
                least = middle + 1;
        }

        return least;
    }

    /// <summary>The fewest days that hold the parts with no day longer than a limit: each day is filled as far as it goes.</summary>
    /// <param name="limit">No less than the longest part.</param>
    public static int DaysUnder(IEnumerable<int> weights, int limit)
    {
        var (days, day) = (0, 0);
        foreach (var weight in weights)
        {
            if (days == 0 || day + weight > limit)
                (days, day) = (days + 1, 0);
            day += weight;
        }

        return days;
    }

    // costs[d, i]: the least sum of squares with which the parts from i on fill d days, none of them empty.
    private static List<int> MostEven(IReadOnlyList<int> weights, int days, int limit)
    {
        var count = weights.Count;
        var costs = new long[days + 1, count + 1];
        var takes = new int[days + 1, count + 1];
        for (var i = 0; i < count; i++)
            costs[0, i] = long.MaxValue;
        for (var d = 1; d <= days; d++)
        {
            costs[d, count] = long.MaxValue;
            for (var i = 0; i < count; i++)
                (costs[d, i], takes[d, i]) = First(weights, limit, costs, d, i);
        }

        var sizes = new List<int>();
        for (var (d, i) = (days, 0); d > 0; d--)
        {
            sizes.Add(takes[d, i]);
            i += takes[d, i];
        }

        return sizes;
    }

    // Longer first days are tried later, and taken where they cost no more.
    private static (long Cost, int Take) First(IReadOnlyList<int> weights, int limit, long[,] costs, int days, int from)
    {
        var best = (Cost: long.MaxValue, Take: 0);
        long day = 0;
        for (var to = from; to < weights.Count && (day += weights[to]) <= limit; to++)
        {
            if (costs[days - 1, to + 1] is var rest && rest < long.MaxValue && day * day + rest <= best.Cost)
                best = (day * day + rest, to + 1 - from);
        }

        return best;
    }
}
