using System.Text.Json;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sharing;

/// <summary>
/// A family's version of a unit and the author's next one, both gone out from one base, made one. What does not collide is
/// brought in; the rest stands as mine until it is decided.
/// <para>
/// <b>What is one spot.</b> The unit's title, summary and weeks; a subject, by its code; an activity, by its code. In an
/// activity that all three have: each field by itself, week and order together (a family that moved it keeps its place
/// unless the author moved it, too), waiting minutes and what for together; an entry of a list by what it is known by, and
/// of an entry that all three have each part by itself. A text is one spot: nobody joins two wordings.
/// </para>
/// <para>
/// <b>What the rules of a bundle ask.</b> The result passes <see cref="BundleRules"/> and the schema's lengths of lists
/// wherever mine does. What came in and would break them is held back, as narrowly as can be, and asked:
/// <list type="bullet">
/// <item>A subject that theirs took out stays while an activity here names it. A subject that mine took out does not come
/// back with an activity that names it: the activity comes in without it, unless it would have no subject left.</item>
/// <item>A shorter unit stays as long as here while an activity here lies in its late weeks. An activity that came in, or
/// moved, into a week that mine cut off stays out, or where it was.</item>
/// <item>An activity that theirs took out stays while one here comes after it. An “after” that came in and names one that
/// mine took out is left out of its activity.</item>
/// <item>Of activities that would come after themselves, the “after” that came in and closes the circle is left out.</item>
/// <item>An activity keeps the subject that theirs took from it where it would have none, a unit its last activity.</item>
/// <item>Entries beyond what a list holds stay out.</item>
/// </list>
/// So nothing that mine changed is lost without a choice, and nothing that theirs changed without being shown.
/// </para>
/// <para>
/// <b>Moving the base on.</b> After a merge the caller keeps <see cref="Merged"/> as the family's version, theirs as its
/// new base, and <see cref="Open"/> beside it. What was decided for mine then differs from the base on mine's side alone
/// and is not asked again until the author changes it anew. What was left for later is handed to the next merge, which
/// takes the kept value as the base of that spot and so asks again, whatever the author did meanwhile; with the same
/// theirs once more it asks the same. Each spot that mine and theirs have made alike is settled by itself.
/// </para>
/// </summary>
public sealed class UnitMerge
{
    private readonly UnitTree @base, mine, theirs, merged;

    private UnitMerge(UnitTree @base, UnitTree mine, UnitTree theirs, UnitTree merged, IReadOnlyList<Collision> collisions)
    {
        (this.@base, this.mine, this.theirs, this.merged, Collisions) = (@base, mine, theirs, merged, collisions);
        Merged = BundleTree.ToBundle(merged);
        CameIn = UnitDifferences.Between(mine, merged);
    }

    /// <summary>The family's version with what came in, and with what was decided so far.</summary>
    public UnitBundle Merged { get; }

    /// <summary>What the merged bundle has otherwise than mine had it, by activity and field.</summary>
    public IReadOnlyList<UnitDifference> CameIn { get; }

    /// <summary>What is still to be decided; no spot twice.</summary>
    public IReadOnlyList<Collision> Collisions { get; }

    /// <summary>What the next merge needs of that which is left for later.</summary>
    public IReadOnlyList<OpenCollision> Open => [.. Collisions.Select(c => c.Open)];

    /// <summary>Merges three bundles that pass <see cref="BundleRules"/>; the order of the arguments is the order of time.</summary>
    /// <param name="base">The revision that the family took up, or took in last.</param>
    /// <param name="mine">The family's version.</param>
    /// <param name="theirs">The author's next revision.</param>
    /// <param name="open">What the merge before left for later; none at the first.</param>
    /// <exception cref="JsonException">A value of <paramref name="open"/> is not one that an earlier merge gave out.</exception>
    public static UnitMerge Of(UnitBundle @base, UnitBundle mine, UnitBundle theirs, IReadOnlyCollection<OpenCollision>? open = null)
    {
        var books = new KnownBooks();
        foreach (var spot in (open ?? []).Select(o => o.Spot).Where(s => s is { Field: "books", Activity: not null, Entry: not null }))
            books.Remember(spot.Activity!, spot.Entry!);
        UnitTree before = BundleTree.Of(@base, books);
        foreach (var kept in open ?? [])
            before = before.With(kept.Spot, BundleTree.Read(kept.Spot, kept.Base, books));
        return Of(before, BundleTree.Of(mine, books), BundleTree.Of(theirs, books));
    }

    /// <summary>
    /// The merge after some collisions were decided; the others stay as they are. <see cref="Choice.Mine"/> leaves the spot,
    /// <see cref="Choice.Theirs"/> takes their value, and <see cref="Choice.OwnText"/> a text of one's own. A value of theirs that the
    /// rules of a bundle forbid beside the rest is not taken, and its spot is among the collisions again with the reason;
    /// what stands in the way may be decided with it, or changed in the unit first.
    /// </summary>
    /// <exception cref="ArgumentException">A spot that is not to be decided, that is decided twice, or an own text where none may
    /// stand (<see cref="OwnText.Fault"/> says why).</exception>
    public UnitMerge Decided(params IReadOnlyCollection<Decision> decisions)
    {
        var asked = Collisions.ToDictionary(c => c.Spot);
        var next = merged;
        foreach (var decision in decisions)
        {
            if (!asked.Remove(decision.Spot))
                throw new ArgumentException($"Nothing is to be decided at {decision.Spot}, or it was decided already.", nameof(decisions));
            if (decision.Choice == Choice.OwnText && OwnText.Fault(decision.Spot, decision.Text ?? "") is { } fault)
                throw new ArgumentException(fault, nameof(decisions));
            next = decision.Choice switch
            {
                Choice.Theirs => Taken(next, decision.Spot),
                Choice.OwnText => next.With(decision.Spot, OwnText.Of(decision.Text ?? "")),
                _ => next,
            };
        }

        var clashes = new List<Clash>();
        next = new HoldingBack(merged).Of(next, clashes);
        var held = clashes.Select(c => Asked(c, @base, merged, theirs)).ToList();
        // A spot that is asked again for another reason is asked once.
        return new UnitMerge(@base, mine, theirs, next, [.. asked.Values.Where(c => !held.Any(h => h.Spot.Holds(c.Spot))), .. held]);
    }

    internal static UnitMerge Of(UnitTree @base, UnitTree mine, UnitTree theirs)
    {
        var clashes = new List<Clash>();
        var merged = new HoldingBack(mine).Of(ThreeWay.Of(@base, mine, theirs, clashes), clashes);
        return new UnitMerge(@base, mine, theirs, merged, [.. clashes.Select(c => Asked(c, @base, mine, theirs))]);
    }

    private UnitTree Taken(UnitTree next, UnitSpot spot)
    {
        var taken = next.With(spot, theirs.Get(spot));
        var list = new UnitSpot(spot.Activity, spot.Field);
        if (spot is not { Activity: not null, Entry: not null, Part: null } || taken.Get(list) is not Branch { Ordered: true } there || theirs.Get(list) is not Branch from)
            return taken;
        return taken.With(list, there.InSequence(ListOrder.Placed((Branch)next.Get(list)!, from, there.Keys)));
    }

    private static Collision Asked(Clash clash, UnitTree @base, UnitTree mine, UnitTree theirs)
    {
        var spot = clash.Spot;
        var (title, entry) = UnitDifferences.Named(spot, mine, theirs, @base);
        string? Json(UnitTree of) => BundleTree.Json(spot, of.Get(spot));
        return new Collision(spot, clash.Kind, title, entry, Json(@base), Json(mine), Json(theirs), clash.Beside);
    }
}
