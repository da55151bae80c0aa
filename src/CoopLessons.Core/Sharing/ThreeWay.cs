namespace CoopLessons.Core.Sharing;

/// <summary>Something that could not be brought in, and why.</summary>
internal sealed record Clash(UnitSpot Spot, CollisionKind Kind, string? Beside = null);

/// <summary>Three trees made one, as far as values alone can tell; what the rules of a bundle say of it comes after.</summary>
internal static class ThreeWay
{
    public static UnitTree Of(UnitTree @base, UnitTree mine, UnitTree theirs, List<Clash> clashes) => At([], @base, mine, theirs, clashes)!;

    /// <summary>Every spot at which two trees differ, as deep as both have something there.</summary>
    public static IEnumerable<UnitSpot> Differences(UnitTree? from, UnitTree? to) => Differences([], from, to);

    private static UnitTree? At(string[] path, UnitTree? @base, UnitTree? mine, UnitTree? theirs, List<Clash> clashes)
    {
        if (UnitTree.Same(mine, theirs) || UnitTree.Same(@base, theirs))
            return mine;
        if (UnitTree.Same(@base, mine))
            return theirs;
        if (@base is Branch before && mine is Branch here && theirs is Branch there)
            return Inside(path, before, here, there, clashes);
        clashes.Add(new Clash(UnitSpot.At(path), @base is null ? CollisionKind.AddedOnBothSides
            : mine is null ? CollisionKind.TakenOutHereChangedThere
            : theirs is null ? CollisionKind.ChangedHereTakenOutThere
            : CollisionKind.ChangedOnBothSides));
        return mine;
    }

    private static Branch Inside(string[] path, Branch @base, Branch mine, Branch theirs, List<Clash> clashes)
    {
        var merged = new Branch(mine.Ordered, mine.Keys.Union(theirs.Keys).Union(@base.Keys, StringComparer.Ordinal)
            .Select(k => (k, At([.. path, k], @base[k], mine[k], theirs[k], clashes))).ToList());
        var keys = ListOrder.Of(@base, mine, theirs, merged.Keys.ToHashSet(StringComparer.Ordinal), out var conflict);
        if (conflict && mine.Ordered)
            clashes.Add(new Clash(UnitSpot.At(path, sequence: true), CollisionKind.ChangedOnBothSides));
        return merged.InSequence(keys);
    }

    private static IEnumerable<UnitSpot> Differences(string[] path, UnitTree? from, UnitTree? to)
    {
        if (UnitTree.Same(from, to))
            yield break;
        if (from is not Branch before || to is not Branch after)
        {
            yield return UnitSpot.At(path);
            yield break;
        }

        foreach (var spot in before.Keys.Union(after.Keys, StringComparer.Ordinal).SelectMany(k => Differences([.. path, k], before[k], after[k])))
            yield return spot;
        if (before.Ordered && !before.Keys.Where(k => after[k] is not null).SequenceEqual(after.Keys.Where(k => before[k] is not null)))
            yield return UnitSpot.At(path, sequence: true);
    }
}
