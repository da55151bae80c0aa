namespace CoopLessons.Core.Coop;

/// <summary>What one family laid out and what it bears.</summary>
/// <param name="PaidCents">0 and more.</param>
/// <param name="OwedCents">0 and more.</param>
public sealed record AccountLine(Guid Family, int PaidCents, int OwedCents);

/// <summary>One payment between two families.</summary>
/// <param name="Cents">Above 0.</param>
public sealed record Payment(Guid From, Guid To, int Cents);

/// <summary>Payments after which everybody is even.</summary>
/// <param name="Least">No way of settling takes fewer payments than this.</param>
public sealed record Settled(IReadOnlyList<Payment> Payments, int Least)
{
    /// <summary>Whether it is proven that fewer payments do not do.</summary>
    public bool IsLeast => Payments.Count == Least;
}

/// <summary>
/// Who pays whom, with few payments. Families that are even pay nobody; nobody both pays and receives. There are always
/// fewer payments than families.
/// </summary>
/// <remarks>
/// Fewest payments are all uneven families less the greatest number of groups, apart from each other, that are even among
/// themselves. To find these is as hard as the problem of subset sums (from memory), so that it is done by trying all
/// subsets for as many families as a co-op usually has; for more, the largest debt goes to the largest credit.
/// </remarks>
public static class Settlement
{
    /// <summary>Up to so many uneven families all subsets are tried.</summary>
    public const int MostExact = 16;

    /// <summary>The same lines give the same payments, in whatever order they stand.</summary>
    /// <exception cref="ArgumentException">A family twice, a negative figure, or sums that differ; the message is a sentence.</exception>
    public static Settled Of(IReadOnlyList<AccountLine> lines)
    {
        if (Fault(lines) is { } fault)
            throw new ArgumentException(fault, nameof(lines));
        var uneven = lines.Select(l => (l.Family, Net: l.PaidCents - l.OwedCents)).Where(l => l.Net != 0).OrderBy(l => l.Family).ToList();
        if (uneven.Count == 0)
            return new Settled([], 0);
        if (uneven.Count <= MostExact)
        {
            var groups = Groups([.. uneven.Select(u => u.Net)]);
            return new Settled([.. groups.SelectMany(g => Pay(g.Select(i => uneven[i])))], uneven.Count - groups.Count);
        }

        // Everybody who owes pays at least once, and everybody who is owed receives at least once.
        return new Settled(Pay(uneven), Math.Max(uneven.Count(u => u.Net < 0), uneven.Count(u => u.Net > 0)));
    }

    /// <summary>What keeps the lines from being settled, in one sentence; null where nothing does.</summary>
    public static string? Fault(IReadOnlyList<AccountLine> lines)
    {
        if (lines.DistinctBy(l => l.Family).Count() < lines.Count)
            return "A family stands twice in the account.";
        if (lines.Any(l => l.PaidCents < 0 || l.OwedCents < 0))
            return "What is paid and what is owed is 0 or more.";
        var (paid, owed) = (lines.Sum(l => (long)l.PaidCents), lines.Sum(l => (long)l.OwedCents));
        return paid == owed ? null : $"What was paid is {CoopWords.Money(paid)} and what is owed is {CoopWords.Money(owed)}; they are to be the same.";
    }

    /// <summary>As many groups as there can be, each even among itself.</summary>
    private static List<List<int>> Groups(int[] net)
    {
        var sums = new long[1 << net.Length];
        var most = new int[1 << net.Length];
        for (var set = 1; set < sums.Length; set++)
        {
            var low = System.Numerics.BitOperations.TrailingZeroCount(set);
            sums[set] = sums[set & (set - 1)] + net[low];
            for (var i = 0; i < net.Length; i++)
                if ((set >> i & 1) == 1)
                    most[set] = Math.Max(most[set], most[set ^ (1 << i)]);
            if (sums[set] == 0)
                most[set]++;
        }

        // Taken away one by one along the best way, what went between two even sets is a group.
        var groups = new List<List<int>>();
        for (var set = sums.Length - 1; set > 0;)
        {
            if (sums[set] == 0)
                groups.Add([]);
            var here = most[set] - (sums[set] == 0 ? 1 : 0);
            var next = Enumerable.Range(0, net.Length).First(i => (set >> i & 1) == 1 && most[set ^ (1 << i)] == here);
            groups[^1].Add(next);
            set ^= 1 << next;
        }

        return groups;
    }

    /// <summary>The largest debt to the largest credit, until all are even: fewer payments than families.</summary>
    private static List<Payment> Pay(IEnumerable<(Guid Family, int Net)> group)
    {
        var left = group.OrderBy(g => g.Family).ToDictionary(g => g.Family, g => g.Net);
        var payments = new List<Payment>();
        while (left.Count > 0)
        {
            var (from, debt) = left.OrderBy(l => l.Value).ThenBy(l => l.Key).First();
            var (to, credit) = left.OrderByDescending(l => l.Value).ThenBy(l => l.Key).First();
            var cents = Math.Min(-debt, credit);
            payments.Add(new Payment(from, to, cents));
            left[from] += cents;
            left[to] -= cents;
            foreach (var even in left.Where(l => l.Value == 0).Select(l => l.Key).ToList())
                left.Remove(even);
        }

        return payments;
    }
}
