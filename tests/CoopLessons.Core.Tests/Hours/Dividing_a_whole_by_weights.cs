using CoopLessons.Core.Hours;
using CsCheck;

namespace CoopLessons.Core.Tests.Hours;

public class Dividing_a_whole_by_weights
{
    private static readonly Gen<(int Total, int[] Weights)> Divisions =
        Gen.Select(Gen.Int[0, 5_000], Gen.Int[0, 60].Array[1, 12]).Where(d => d.Item2.Sum() > 0);

    [Fact]
    public void The_parts_add_up_to_the_total_exactly() =>
        Divisions.Sample(d => LargestRemainder.Divide(d.Total, d.Weights).Sum() == d.Total);

    [Fact]
    public void Every_part_is_its_exact_share_rounded_down_or_up()
    {
        Divisions.Sample(d =>
        {
            var sum = d.Weights.Sum();
            var parts = LargestRemainder.Divide(d.Total, d.Weights);
            return parts.Zip(d.Weights).All(p => Math.Abs((long)p.First * sum - (long)d.Total * p.Second) < sum);
        });
    }

    [Fact]
    public void A_part_that_is_rounded_up_had_no_smaller_a_remainder_than_one_that_is_not()
    {
        Divisions.Sample(d =>
        {
            long sum = d.Weights.Sum();
            var parts = LargestRemainder.Divide(d.Total, d.Weights)
                .Select((part, i) => (Place: i, Up: part > d.Total * d.Weights[i] / sum, Remainder: d.Total * d.Weights[i] % sum)).ToList();
            return parts.Where(p => p.Up).All(up => parts.Where(p => !p.Up)
                .All(down => up.Remainder > down.Remainder || (up.Remainder == down.Remainder && up.Place < down.Place)));
        });
    }

    [Fact]
    public void Equal_weights_give_the_odd_minutes_to_the_parts_that_stand_first() =>
        Assert.Equal([13, 13, 12, 12], LargestRemainder.Divide(50, [1, 1, 1, 1]));

    [Fact]
    public void A_part_without_weight_gets_nothing() =>
        Divisions.Sample(d => LargestRemainder.Divide(d.Total, d.Weights).Zip(d.Weights).All(p => p.Second > 0 || p.First == 0));

    [Fact]
    public void Weights_that_are_all_so_many_times_larger_change_nothing() =>
        Gen.Select(Divisions, Gen.Int[1, 1_000]).Sample((d, times) =>
            LargestRemainder.Divide(d.Total, d.Weights).SequenceEqual(LargestRemainder.Divide(d.Total, [.. d.Weights.Select(w => w * times)])));

    [Fact]
    public void A_single_part_is_the_whole() =>
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[1, int.MaxValue]).Sample((total, weight) =>
            LargestRemainder.Divide(total, [weight]) is [var part] && part == total);

    [Fact]
    public void The_largest_numbers_are_divided_without_overflow() =>
        Assert.Equal([1_073_741_824, 1_073_741_823], LargestRemainder.Divide(int.MaxValue, [int.MaxValue, int.MaxValue]));

    [Fact]
    public void Nothing_is_divided_into_nothing_for_each() => Assert.Equal([0, 0, 0], LargestRemainder.Divide(0, [3, 2, 1]));

    [Fact]
    public void A_negative_total_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("total", () => LargestRemainder.Divide(-1, [1]));

    [Fact]
    public void A_negative_weight_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("weights", () => LargestRemainder.Divide(10, [2, -1]));

    [Theory]
    [InlineData(new int[0])]
    [InlineData(new[] { 0, 0 })]
    public void Weights_that_add_up_to_nothing_are_refused(int[] weights) =>
        Assert.Throws<ArgumentException>(nameof(weights), () => LargestRemainder.Divide(10, weights));
}
