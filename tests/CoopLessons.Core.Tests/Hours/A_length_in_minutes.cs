using CoopLessons.Core.Hours;
using CsCheck;

namespace CoopLessons.Core.Tests.Hours;

public class A_length_in_minutes
{
    private static readonly Gen<int> Lengths = Gen.Int[0, 1_000_000];

    [Theory]
    [InlineData(0, "0:00")]
    [InlineData(5, "0:05")]
    [InlineData(59, "0:59")]
    [InlineData(60, "1:00")]
    [InlineData(605, "10:05")]
    [InlineData(60_000, "1000:00")]
    public void Is_written_as_hours_and_minutes(int minutes, string clock)
    {
        Assert.Equal(clock, new Minutes(minutes).Clock);
        Assert.Equal(clock, new Minutes(minutes).ToString());
    }

    [Fact]
    public void Can_be_read_back_from_hours_and_minutes() =>
        Lengths.Sample(n =>
        {
            var parts = new Minutes(n).Clock.Split(':').Select(int.Parse).ToArray();
            return parts[0] * 60 + parts[1] == n && parts[1] < 60;
        });

    [Theory]
    [InlineData(0, "0.00")]
    [InlineData(1, "0.02")]
    [InlineData(20, "0.33")]
    [InlineData(40, "0.67")]
    [InlineData(605, "10.08")]
    [InlineData(610, "10.17")]
    public void Is_converted_to_hours_of_two_decimals(int minutes, string hours) =>
        Assert.Equal(decimal.Parse(hours, System.Globalization.CultureInfo.InvariantCulture), new Minutes(minutes).DecimalHours);

    // Hundredths of an hour are 5/3 of the minutes: in whole numbers (5n + 1) / 3, since 5n mod 3 is 0, 1 (down) or 2 (up).
    [Fact]
    public void Rounds_to_the_nearest_hundredth_of_an_hour() =>
        Lengths.Sample(n => new Minutes(n).DecimalHours * 100 == (5L * n + 1) / 3);

    [Fact]
    public void Three_times_twenty_minutes_are_one_hour_because_the_sum_is_rounded_and_not_the_parts()
    {
        Minutes[] three = [new(20), new(20), new(20)];

        Assert.Equal(1.00m, three.Sum().DecimalHours);
        Assert.Equal(0.99m, three.Sum(m => m.DecimalHours));
    }

    [Fact]
    public void Adds_as_whole_minutes_do() =>
        Gen.Select(Lengths, Lengths).Sample((a, b) =>
            (new Minutes(a) + new Minutes(b)).Value == a + b && Minutes.Add(new Minutes(a), new Minutes(b)).Value == a + b);

    [Fact]
    public void Compares_as_whole_minutes_do() =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5]).Sample((a, b) =>
        {
            var (x, y) = (new Minutes(a), new Minutes(b));
            return x < y == a < b && x > y == a > b && x <= y == a <= b && x >= y == a >= b
                && x == y == (a == b) && Math.Sign(x.CompareTo(y)) == Math.Sign(a.CompareTo(b));
        });

    [Fact]
    public void Is_never_below_zero() => Assert.Throws<ArgumentOutOfRangeException>("value", () => new Minutes(-1));

    [Fact]
    public void No_lengths_at_all_add_up_to_zero() => Assert.Equal(Minutes.Zero, Array.Empty<Minutes>().Sum());

    [Fact]
    public void A_sum_beyond_the_range_is_an_error_and_not_a_wrong_number() =>
        Assert.Throws<OverflowException>(() => new[] { new Minutes(int.MaxValue), new Minutes(1) }.Sum());

    [Fact]
    public void Two_lengths_beyond_the_range_are_an_error_and_not_a_wrong_number() =>
        Assert.Throws<OverflowException>(() => new Minutes(int.MaxValue) + new Minutes(1));
}
