using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sharing;

/// <summary>What a family made of a unit, spot by spot, to be offered back to its author.</summary>
public sealed class UnitChange
{
    private readonly KnownBooks books = new();
    private readonly UnitTree @base, mine;

    private UnitChange(UnitBundle @base, UnitBundle mine)
    {
        (this.@base, this.mine) = (BundleTree.Of(@base, books), BundleTree.Of(mine, books));
        Differences = UnitDifferences.Between(this.@base, this.mine);
    }

    /// <summary>Everything that the family has otherwise; no spot twice.</summary>
    public IReadOnlyList<UnitDifference> Differences { get; }

    /// <param name="base">The revision that the family's version goes back to.</param>
    public static UnitChange Between(UnitBundle @base, UnitBundle mine) => new(@base, mine);

    /// <summary>All of it, brought into <paramref name="newest"/>.</summary>
    public UnitMerge Onto(UnitBundle newest) => Onto(newest, [.. Differences.Select(d => d.Spot)]);

    /// <summary>
    /// Some of it, brought into the author's newest bundle as <see cref="UnitMerge"/> brings in: in the result, “mine” is the
    /// author's and “theirs” the family's. Something that cannot stand without what was not chosen with it is a collision.
    /// </summary>
    /// <param name="newest">Any revision; it passes <see cref="BundleRules"/>.</param>
    /// <exception cref="ArgumentException">A spot at which the family changed nothing.</exception>
    public UnitMerge Onto(UnitBundle newest, IReadOnlyCollection<UnitSpot> chosen)
    {
        if (chosen.Except(Differences.Select(d => d.Spot)).FirstOrDefault() is { } stranger)
            throw new ArgumentException($"Nothing was changed at {stranger}.", nameof(chosen));
        return UnitMerge.Of(@base, BundleTree.Of(newest, books), Chosen(chosen));
    }

    /// <summary>The base with what was chosen; what was added to a list stands there where the family has it.</summary>
    private UnitTree Chosen(IReadOnlyCollection<UnitSpot> chosen)
    {
        var offered = @base;
        foreach (var spot in chosen.OrderBy(s => s.IsSequence))
            offered = offered.With(spot, mine.Get(spot));
        foreach (var list in chosen.Where(s => s is { Activity: not null, Entry: not null }).Select(s => new UnitSpot(s.Activity, s.Field)).Distinct())
        {
            if (offered.Get(list) is not Branch { Ordered: true } there || @base.Get(list) is not Branch before || mine.Get(list) is not Branch here)
                continue;
            var known = new Branch(true, there.Keys.Where(k => before[k] is not null).Select(k => (k, there[k])));
            offered = offered.With(list, there.InSequence(ListOrder.Placed(known, here, there.Keys)));
        }

        return offered;
    }
}
