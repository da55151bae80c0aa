namespace CoopLessons.Core.Coop;

/// <summary>Who counts as one: adults of one family or one household, and whoever is joined to them by another in the same way.</summary>
internal static class Kinship
{
    /// <summary>For each, in order, the number of its group, from 0 in the order in which groups first appear.</summary>
    public static int[] Groups(IReadOnlyList<(Guid Family, Guid? Household)> adults)
    {
        var group = Enumerable.Range(0, adults.Count).ToArray();
        for (var i = 0; i < adults.Count; i++)
            for (var j = 0; j < i; j++)
                if (adults[i].Family == adults[j].Family || (adults[i].Household is { } home && home == adults[j].Household))
                    Join(group, group[j], group[i]);
        var order = group.Distinct().ToList();
        return [.. group.Select(g => order.IndexOf(g))];
    }

    private static void Join(int[] group, int into, int from)
    {
        for (var i = 0; i < group.Length; i++)
            if (group[i] == from)
                group[i] = into;
    }
}
