using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CsCheck;
using static CoopLessons.Core.Tests.Prepare.Supplies.Kitchen;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

public class A_list_joined_over_activities
{
    // USDA SR Legacy, NDB 20081: a cup of white flour is 125 g. By hand: 2 × 125 + 300 = 550.
    [Fact]
    public void Has_flour_in_cups_and_grams_on_one_line()
    {
        var line = Assert.Single(Join(Ask("Flour", 2, "cup"), Ask("flour", 300, "g", activity: "Dough")));
        Assert.Equal((Measures.Gram, 550m), (line.Measure, Math.Round(line.Quantity, 12)));
        Assert.Equal(["Bake", "Dough"], line.Parts.Select(p => p.Ask.For));
        Assert.Equal([250m, 300m], line.Parts.Select(p => Math.Round(p.Quantity, 12)));
    }

    // By hand: 2 × 140 + 300 = 580.
    [Fact]
    public void Takes_the_familys_own_weight_of_a_cup_first() =>
        Assert.Equal(580m, Math.Round(Assert.Single(Join(_ => new GoodTerms(140, null), Ask("Flour", 2, "cup"), Ask("Flour", 300, "g"))).Quantity, 12));

    [Fact]
    public void Keeps_two_lines_and_says_why_where_nobody_weighed_a_cup()
    {
        var lines = Join(Ask("Moss", 2, "cup"), Ask("Moss", 300, "g"));
        Assert.Equal([Measures.UsCup, Measures.Gram], lines.Select(l => l.Measure));
        Assert.All(lines, l => Assert.True(l.JoinsByWeighing));
        var pieces = Join(Ask("Moss", 2, "piece", eaten: true), Ask("Moss", 300, "g"));
        Assert.Equal(2, pieces.Count);
        Assert.All(pieces, l => Assert.False(l.JoinsByWeighing));
    }

    [Theory]
    [InlineData(Per.Learner, 3, 6)]
    [InlineData(Per.Pair, 3, 4)]
    [InlineData(Per.Pair, 4, 4)]
    [InlineData(Per.Pair, 1, 2)]
    [InlineData(Per.Family, 3, 2)]
    [InlineData(Per.Group, 3, 2)]
    public void Counts_by_learner_by_pair_and_by_family(Per per, int learners, int sheets) =>
        Assert.Equal(sheets, Assert.Single(Join(Ask("Card", 2, "sheet", per, learners))).Quantity);

    [Fact]
    public void Adds_what_is_used_up_and_needs_what_is_kept_once()
    {
        var lines = Join(
            Ask("Rolling pin", 1, "piece"), Ask("Rolling pins", 2, "piece", activity: "Tiles"), Ask("Rolling pin", 2, "piece", day: Monday.AddDays(1), activity: "Crackers"),
            Ask("Orange", 1, "piece", eaten: true), Ask("Oranges", 2, "piece", day: Monday.AddDays(1), eaten: true));
        // On Monday two activities stand beside each other; Tuesday's takes the same pins.
        Assert.Equal([("rolling pin", 3m, false), ("orange", 3m, true)], lines.Select(l => (l.Key, l.Quantity, l.UsedUp)));
        Assert.Equal(5m, Join(_ => new GoodTerms(null, true), Ask("Cork", 2, "piece"), Ask("Cork", 3, "piece", day: Monday.AddDays(2)))[0].Quantity);
    }

    [Theory]
    [InlineData("tsp", "tbsp", "tbsp")]
    [InlineData("tbsp", "cup", "cup")]
    [InlineData("oz", "lb", "lb")]
    [InlineData("kg", "g", "g")]
    [InlineData("cup", "ml", "ml")]
    [InlineData("kg", "kg", "kg")]
    [InlineData("m", "cm", "cm")]
    public void Is_told_in_a_measure_that_its_parts_share(string one, string other, string told) =>
        Assert.Equal(told, Assert.Single(Join(Ask("Moss", 1, one), Ask("Moss", 1, other))).Measure.Word);

    // By hand: of a later sitting, 2 learners at 50 g and 1 pair at 30 g are 130 g, and the 500 g for all were used by the first.
    [Fact]
    public void Asks_for_a_later_sitting_only_what_each_learner_needs() =>
        Assert.Equal(130, Assert.Single(Join(
            Ask("Moss", 500, "g") with { IsLaterSitting = true },
            Ask("Moss", 400, "g", Per.Group) with { IsLaterSitting = true },
            Ask("Moss", 50, "g", Per.Learner, 2) with { IsLaterSitting = true },
            Ask("Moss", 30, "g", Per.Pair, 2) with { IsLaterSitting = true })).Quantity);

    [Fact]
    public void Adds_up_from_its_parts() =>
        Asks.Array[1, 12].Sample(asks => Join(asks).All(l => l.UsedUp
            ? l.Quantity == l.Parts.Sum(p => p.Quantity)
            : l.Quantity == l.Parts.GroupBy(p => p.Ask.Day).Max(d => d.Sum(p => p.Quantity))));

    [Fact]
    public void Leaves_no_ask_out() =>
        Asks.Array[1, 12].Sample(asks => Join(asks).Sum(l => l.Parts.Count) == asks.Count(a => a.Amount.Quantity > 0));

    [Fact]
    public void Is_the_same_whatever_the_order_of_the_activities() =>
        Gen.Select(Asks.Array[1, 12], Gen.Int.Array[12]).Sample((asks, places) =>
        {
            var (a, b) = (Told(asks), Told([.. asks.Zip(places).OrderBy(x => x.Second).Select(x => x.First)]));
            return a.Count == b.Count && a.All(line => b.TryGetValue(line.Key, out var other) && Math.Abs(line.Value - other) <= line.Value * 1e-20m);
        });

    private static Dictionary<(string, Measure, bool), decimal> Told(SupplyAsk[] asks) => Join(asks).ToDictionary(l => (l.Key, l.Measure, l.UsedUp), l => l.Quantity);
}
