using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CsCheck;
using static CoopLessons.Core.Tests.Sharing.AnyUnit;

namespace CoopLessons.Core.Tests.Sharing;

public class Any_merge
{
    private const int Times = 400;

    private static void Same(UnitBundle expected, UnitBundle actual) => Assert.Equal(UnitHash.Text(expected), UnitHash.Text(actual));

    private static void Sound(UnitBundle unit)
    {
        Assert.Empty(BundleRules.Faults(unit));
        Assert.NotEmpty(unit.Activities);
        Assert.All(unit.Activities, a => Assert.NotEmpty(a.Subjects));
    }

    private static IEnumerable<string> Asked(UnitMerge merge) => merge.Collisions.Select(c => $"{c.Spot} {c.Base} | {c.Mine} | {c.Theirs}").Order(StringComparer.Ordinal);

    private static string? Value(UnitBundle of, UnitSpot spot, UnitBundle against) =>
        UnitDifferences.Between(against, of).FirstOrDefault(d => d.Spot == spot)?.To;

    [Fact]
    public void Gives_theirs_where_mine_is_the_base() => Versions.Sample(v =>
    {
        var merge = UnitMerge.Of(v.Base, v.Base, v.Theirs);
        Same(v.Theirs, merge.Merged);
        Assert.Empty(merge.Collisions);
        Assert.Equal(UnitDifferences.Between(v.Base, v.Theirs), merge.CameIn);
    }, iter: Times);

    [Fact]
    public void Gives_mine_where_theirs_is_the_base_or_is_mine() => Versions.Sample(v =>
    {
        foreach (var merge in new[] { UnitMerge.Of(v.Base, v.Mine, v.Base), UnitMerge.Of(v.Base, v.Mine, v.Mine) })
        {
            Same(v.Mine, merge.Merged);
            Assert.Empty(merge.Collisions);
            Assert.Empty(merge.CameIn);
        }
    }, iter: Times);

    [Fact]
    public void Is_the_same_from_either_side_where_nothing_collides()
    {
        var met = 0;
        Versions.Sample(v =>
        {
            var (one, other) = (UnitMerge.Of(v.Base, v.Mine, v.Theirs), UnitMerge.Of(v.Base, v.Theirs, v.Mine));
            Assert.Equal(one.Collisions.Count == 0, other.Collisions.Count == 0);
            if (one.Collisions.Count > 0)
                return;
            Same(one.Merged, other.Merged);
            foreach (var (version, others) in new[] { (v.Mine, v.Theirs), (v.Theirs, v.Mine) })
            {
                // What one side alone changed is in the result: the result differs there from nobody's version of it.
                var open = UnitDifferences.Between(version, one.Merged).Select(d => d.Spot);
                var changed = UnitDifferences.Between(v.Base, others).Select(d => d.Spot).ToHashSet();
                Assert.All(open, s => Assert.Contains(changed, c => Within(s, c)));
            }

            Interlocked.Increment(ref met);
        }, iter: Times);
        Assert.True(met > Times / 10, $"Only {met} merges had no collision.");
    }

    /// <summary>One of the spots is the other or lies in it; the order of a list lies in its every entry.</summary>
    private static bool Within(UnitSpot a, UnitSpot b) =>
        (a.Activity, b.Activity) is ({ } x, { } y)
            ? x == y && (a.Field is null || b.Field is null || (a.Field == b.Field && (a.Entry is null || b.Entry is null || (a.Entry == b.Entry && (a.Part is null || b.Part is null || a.Part == b.Part)))))
            : a == b;

    [Fact]
    public void Loses_nothing_of_mine() => Versions.Sample(v =>
    {
        var merge = UnitMerge.Of(v.Base, v.Mine, v.Theirs);
        var came = merge.CameIn.Select(d => d.Spot).ToList();
        foreach (var edit in UnitDifferences.Between(v.Base, v.Mine))
            Assert.DoesNotContain(came, c => c == edit.Spot || (edit.To is null && Within(c, edit.Spot)));
    }, iter: Times);

    [Fact]
    public void Loses_nothing_of_theirs_without_asking() => Versions.Sample(v =>
    {
        var merge = UnitMerge.Of(v.Base, v.Mine, v.Theirs);
        var missing = UnitDifferences.Between(merge.Merged, v.Theirs).Select(d => d.Spot).ToHashSet();
        foreach (var edit in UnitDifferences.Between(v.Base, v.Theirs).Where(d => missing.Contains(d.Spot)))
            Assert.Contains(merge.Collisions, c => Within(c.Spot, edit.Spot));
    }, iter: Times);

    [Fact]
    public void Twice_is_a_merge_once() => Versions.Sample(v =>
    {
        var once = UnitMerge.Of(v.Base, v.Mine, v.Theirs);
        var twice = UnitMerge.Of(v.Theirs, once.Merged, v.Theirs, once.Open);
        Same(once.Merged, twice.Merged);
        Assert.Equal(Asked(once), Asked(twice));
        Assert.Empty(twice.CameIn);

        var decided = UnitMerge.Of(v.Theirs, once.Merged, v.Theirs);
        Same(once.Merged, decided.Merged);
        Assert.Empty(decided.Collisions);
    }, iter: Times);

    [Fact]
    public void Keeps_what_is_left_for_later_as_mine_until_it_is_decided() => MoreVersions.Sample(v =>
    {
        var second = UnitMerge.Of(v.Base, v.Mine, v.Theirs);
        var third = UnitMerge.Of(v.Theirs, second.Merged, v.Third, second.Open);
        Sound(third.Merged);
        var came = third.CameIn.Select(d => d.Spot).ToHashSet();
        foreach (var left in second.Collisions)
        {
            // Asked again, or the third revision has it as mine or as the base had it.
            var asked = third.Collisions.Any(c => Within(c.Spot, left.Spot));
            Assert.True(asked || !came.Contains(left.Spot) || left.Mine == left.Base, left.ToString());
        }
    }, iter: Times);

    [Fact]
    public void Is_a_sound_unit_before_and_after_decisions() => Gen.Select(Versions, Gen.Int[0, 2].Array[12]).Sample((v, choices) =>
    {
        var merge = UnitMerge.Of(v.Base, v.Mine, v.Theirs);
        Sound(merge.Merged);
        Assert.Equal(merge.Collisions.Count, merge.Collisions.Select(c => c.Spot).Distinct().Count());
        var decisions = merge.Collisions.Zip(choices.Concat(Enumerable.Repeat(1, 100))).Where(x => x.Second > 0)
            .Select(x => new Decision(x.First.Spot, x.Second == 1 ? Choice.Mine : Choice.Theirs)).ToList();
        var next = merge.Decided(decisions);
        Sound(next.Merged);
        foreach (var d in decisions)
        {
            var collision = merge.Collisions.Single(c => c.Spot == d.Spot);
            if (next.Collisions.Any(c => Within(c.Spot, d.Spot)))
                continue;
            if (d.Choice == Choice.Theirs)
                Assert.DoesNotContain(UnitDifferences.Between(next.Merged, v.Theirs), x => x.Spot == d.Spot);
        }
    }, iter: Times);

    [Fact]
    public void Of_what_mine_changed_onto_the_base_is_mine() => Versions.Sample(v =>
    {
        var merge = UnitChange.Between(v.Base, v.Mine).Onto(v.Base);
        Same(v.Mine, merge.Merged);
        Assert.Empty(merge.Collisions);
    }, iter: Times);

    [Fact]
    public void Of_some_of_what_mine_changed_brings_that_or_asks() => Gen.Select(Versions, Gen.Int[0, 255]).Sample((v, which) =>
    {
        var change = UnitChange.Between(v.Base, v.Mine);
        var chosen = change.Differences.Where((_, i) => (which >> i % 8 & 1) == 1).ToList();
        var merge = change.Onto(v.Base, [.. chosen.Select(d => d.Spot)]);
        Sound(merge.Merged);
        foreach (var d in merge.CameIn)
            Assert.Contains(chosen, c => Within(c.Spot, d.Spot));
        foreach (var d in chosen.Where(d => Value(merge.Merged, d.Spot, v.Base) != d.To))
            Assert.Contains(merge.Collisions, c => Within(c.Spot, d.Spot));
    }, iter: Times);
}
