using CoopLessons.Core.Prepare.Supplies;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

public class Buying_what_is_missing
{
    private static readonly Pack FiveHundred = new(500, Measures.Gram, 189);

    // By hand: 1,300 g less 200 g is 1,100 g, which three packs of 500 g hold and two do not; 3 × $1.89 = $5.67.
    [Fact]
    public void Rounds_up_to_packs_after_the_shelf_is_taken_off() =>
        Assert.Equal(new ToBuy(1100, 1500, 3, 567), Buying.Of(1300, 200, Measures.Gram, FiveHundred, null));

    // By hand: 5 lb = 2,267.961 85 g, and 2,300 g are more than that.
    [Fact]
    public void Buys_by_the_pound_what_is_needed_in_grams() =>
        Assert.Equal(2, Buying.Of(2300, 0, Measures.Gram, new Pack(5, Measures.PoundAvoirdupois, null), null).Packs);

    // By hand: 4 cups of 125 g are 500 g: one pack, exactly.
    [Fact]
    public void Buys_by_weight_what_is_needed_by_the_cup() =>
        Assert.Equal(1, Buying.Of(4, 0, Measures.UsCup, FiveHundred, 125).Packs);

    [Fact]
    public void Buys_nothing_where_the_shelf_has_enough() => Assert.True(Buying.Of(300, 300, Measures.Gram, FiveHundred, null).IsNothing);

    [Fact]
    public void Buys_whole_pieces_without_a_pack_and_the_plain_amount_of_the_rest()
    {
        Assert.Equal(3, Buying.Of(2.5m, 0, Measures.Piece, null, null).Quantity);
        Assert.Equal(2.5m, Buying.Of(2.5m, 0, Measures.UsCup, null, null).Quantity);
    }

    [Fact]
    public void Leaves_packs_alone_that_are_measured_otherwise() =>
        Assert.Equal(new ToBuy(2, 2, null, null), Buying.Of(2, 0, Measures.UsCup, FiveHundred, null));

    [Fact]
    public void Is_enough_and_one_pack_less_would_not_do() =>
        Gen.Select(Kitchen.Quantities, Kitchen.Quantities, Gen.Int[1, 5_000]).Sample((needed, shelf, size) =>
        {
            var buy = Buying.Of(needed, shelf, Measures.Gram, new Pack(size, Measures.Gram, 10), null);
            return buy.IsNothing ? shelf >= needed : buy.Packs is { } packs && buy.Quantity + shelf >= needed && buy.Quantity - size + shelf < needed && buy.Quantity == packs * size && buy.Cents == packs * 10;
        });

    // By hand: 1 cup and 1 of its 48 teaspoons is 1.020 833 3… cups; the next that can be typed is 1.020 834.
    [Fact]
    public void Is_done_once_the_amount_that_can_be_typed_is_on_the_shelf()
    {
        var line = Assert.Single(Kitchen.Join(Kitchen.Ask("Salt", 1, "cup"), Kitchen.Ask("Salt", 1, "tsp")));
        var typed = Buying.Typeable(Buying.Of(line.Quantity, 0, line.Measure, null, null).Quantity);
        Assert.Equal(1.020834m, typed);
        Assert.True(Buying.Of(line.Quantity, typed, line.Measure, null, null).IsNothing);
        Assert.True(Buying.Of(line.Quantity, 1.020833m, line.Measure, null, null).IsNothing);
        Assert.Equal(1, Buying.Typeable(0.3333333333333333333333333334m * 3));
    }

    [Fact]
    public void Tells_the_price_of_very_many_dear_packs() =>
        Assert.Equal(100_000_000_000, Buying.Of(10_000, 0, Measures.Piece, new Pack(1, Measures.Piece, 10_000_000), null).Cents);

    [Fact]
    public void Divides_what_was_paid_by_need_to_the_cent() =>
        Gen.Select(Gen.Int[0, 100_000], Kitchen.Quantities.Array[1, 12]).Sample((cents, needs) => CostShares.Of(cents, needs) is var shares && shares.Sum() == cents && shares.All(s => s >= 0));

    // By hand: 10.00 over 1 : 1 : 1 is 3.34, 3.33, 3.33.
    [Fact]
    public void Gives_the_odd_cent_to_the_first() => Assert.Equal([334, 333, 333], CostShares.Of(1000, [2, 2, 2]));
}
