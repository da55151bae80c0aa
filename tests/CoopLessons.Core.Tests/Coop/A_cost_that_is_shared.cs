using CoopLessons.Core.Coop;
using CsCheck;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>A shopping trip for the co-op, a term's fee, and a family that leaves. Our own examples, worked by hand.</summary>
public class A_cost_that_is_shared
{
    private static readonly CostBearer[] Seven = [new(Id(1, 1), 3), new(Id(1, 2), 2), new(Id(1, 3), 1), new(Id(1, 4), 1)];

    [Fact]
    public void Comes_to_the_same_for_each_of_seven_learners() =>
        Assert.Equal([1773, 1182, 591, 591], SharedCost.Divide(4137, SharedBy.Learner, Seven).Select(s => s.Cents)); // 41.37 / 7 = 5.91

    [Fact]
    public void Comes_to_the_same_for_each_of_four_families_but_for_a_cent() =>
        Assert.Equal([1035, 1034, 1034, 1034], SharedCost.Divide(4137, SharedBy.Family, Seven).Select(s => s.Cents));

    [Fact]
    public void Weighs_a_family_that_took_half() =>
        Assert.Equal([2000, 1000, 1000, 0], SharedCost.Divide(4000, SharedBy.Family, [Seven[0] with { Weight = 2 }, Seven[1], Seven[2], Seven[3] with { Weight = 0 }]).Select(s => s.Cents));

    private static readonly Gen<(int Cents, SharedBy By, CostBearer[] Bearers)> Any =
        from cents in Gen.Int[0, 100_000]
        from how in Gen.Enum<SharedBy>()
        from who in Gen.Select(Gen.Int[0, 5], Gen.Int[0, 3]).Array[1, 9]
        where who.Any(w => w.Item1 * w.Item2 > 0)
        select (cents, how, who.Select((w, i) => new CostBearer(Id(1, i), w.Item1, w.Item2)).ToArray());

    [Fact]
    public void Adds_up_to_the_cent_with_each_share_within_a_cent_of_its_exact_one() => Any.Sample(c =>
    {
        var shares = SharedCost.Divide(c.Cents, c.By, c.Bearers);
        Assert.Equal(c.Cents, shares.Sum(s => s.Cents));
        long Weight(CostBearer b) => c.By == SharedBy.Family ? b.Weight : b.Weight * b.Learners;
        var all = c.Bearers.Sum(Weight);
        Assert.All(shares.Zip(c.Bearers), p => Assert.True(Math.Abs(p.First.Cents * all - c.Cents * Weight(p.Second)) < all));
    });

    [Fact]
    public void Is_the_same_in_whatever_order_the_families_stand() => Any.Sample(c =>
        Assert.Equal(SharedCost.Divide(c.Cents, c.By, c.Bearers).OrderBy(s => s.Family), SharedCost.Divide(c.Cents, c.By, [.. c.Bearers.Reverse()]).OrderBy(s => s.Family)));

    [Fact]
    public void Is_refused_in_words()
    {
        Assert.StartsWith("A cost is 0 or more.", Refused(() => SharedCost.Divide(-1, SharedBy.Family, Seven)), StringComparison.Ordinal);
        Assert.StartsWith("Nobody is there", Refused(() => SharedCost.Divide(10, SharedBy.Learner, [new(Id(1, 1), 0)])), StringComparison.Ordinal);
        Assert.StartsWith("A family stands twice", Refused(() => SharedCost.Divide(10, SharedBy.Family, [Seven[0], Seven[0]])), StringComparison.Ordinal);
        Assert.StartsWith("Learners and weights", Refused(() => SharedCost.Divide(10, SharedBy.Family, [Seven[0] with { Weight = -1 }])), StringComparison.Ordinal);
    }

    private static string Refused(Action act) => Assert.Throws<ArgumentException>(act).Message;

    [Fact]
    public void May_be_a_fee_by_family_and_learner_up_to_a_limit()
    {
        var fee = new TermFee(2000, 500, 3000);
        Assert.Equal([2000, 2500, 3000, 3000], new[] { 0, 1, 2, 3 }.Select(fee.For));
        Assert.Throws<ArgumentException>(() => fee.For(-1));
    }

    private static readonly RefundRule Rule = new(First, Thursdays(12));

    [Fact]
    public void Is_given_back_whole_until_the_day_before()
    {
        Assert.Equal((3500, true), (Rule.Of(3500, First.AddDays(-1)).Cents, Rule.Of(3500, First.AddDays(-1)).Whole));
        Assert.Equal("Said in time: the whole 35.00 is given back.", Rule.Of(3500, First.AddDays(-1)).Sentence);
    }

    [Fact]
    public void Is_given_back_in_part_by_the_meetings_still_to_come_rounded_down()
    {
        // On the first meeting itself eleven of twelve are to come: 35.00 · 11/12 = 32.083…
        Assert.Equal(3208, Rule.Of(3500, First).Cents);
        var after = Rule.Of(3500, First.AddDays(7 * 4 + 1));
        Assert.Equal((2041, 7, 12), (after.Cents, after.Left, after.All));
        Assert.Equal("7 meetings of 12 are still to come: 20.41 of 35.00 is given back.", after.Sentence);
        Assert.Equal(0, Rule.Of(3500, First.AddDays(7 * 11)).Cents);
    }

    [Fact]
    public void Is_never_given_back_beyond_what_was_paid_and_never_more_when_said_later() =>
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[-20, 100], Gen.Int[0, 30]).Sample((paid, day, later) =>
        {
            var (early, late) = (Rule.Of(paid, First.AddDays(day)).Cents, Rule.Of(paid, First.AddDays(day + later)).Cents);
            Assert.True(late >= 0 && late <= early && early <= paid);
        });
}
