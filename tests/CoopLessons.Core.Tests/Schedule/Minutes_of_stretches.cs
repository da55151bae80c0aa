using CoopLessons.Core.Schedule;
using CsCheck;

namespace CoopLessons.Core.Tests.Schedule;

public class Minutes_of_stretches
{
    private static readonly DateOnly Monday = new(2026, 11, 30);

    private static readonly Gen<Stretch[]> Any =
        Gen.Select(Gen.Int[0, 1439], Gen.Int[0, 300]).Select((from, length) => new Stretch(from, Math.Min(1440, from + length))).Array[0, 6];

    private static HashSet<int> Minutes(IEnumerable<Stretch> stretches) => [.. stretches.SelectMany(s => Enumerable.Range(s.From, s.Minutes))];

    [Fact]
    public void Lose_a_lesson_out_in_the_middle_of_a_morning() =>
        Assert.Equal(
            [new Stretch(510, 600), new Stretch(660, 720), new Stretch(780, 900)],
            Stretches.Less([new Stretch(510, 720), new Stretch(780, 900)], [new Stretch(600, 660)]));

    [Fact]
    public void Lose_nothing_to_what_lies_beside_them() =>
        Assert.Equal([new Stretch(540, 600)], Stretches.Less([new Stretch(540, 600)], [new Stretch(480, 540), new Stretch(600, 660)]));

    [Fact]
    public void Are_gone_where_something_lasts_all_day() => Assert.Empty(Stretches.Less([new Stretch(540, 600), new Stretch(700, 720)], [new Stretch(0, 1440)]));

    [Fact]
    public void Become_one_where_they_touch() => Assert.Equal([new Stretch(540, 660)], Stretches.Joined([new Stretch(600, 660), new Stretch(540, 600)]));

    [Fact]
    public void Are_summed_over_the_days_that_are_named()
    {
        var free = new FreeTime(new Dictionary<DateOnly, IReadOnlyList<Stretch>>
        {
            [Monday] = [new Stretch(510, 720), new Stretch(780, 900)],
            [Monday.AddDays(1)] = [new Stretch(510, 720)],
            [Monday.AddDays(5)] = [new Stretch(600, 660)],
        });
        Assert.Equal(330 + 210, free.MinutesOn([Monday, Monday.AddDays(1), Monday.AddDays(2)]));
    }

    [Fact]
    public void Are_what_is_free_and_not_taken_minute_by_minute() => Gen.Select(Any, Any).Sample((free, taken) =>
    {
        var left = Stretches.Less(free, taken);
        Assert.Equal([.. Minutes(free).Except(Minutes(taken)).Order()], left.SelectMany(s => Enumerable.Range(s.From, s.Minutes)).ToList());
        Assert.Equal(left.Sum(s => s.Minutes), Stretches.Minutes(left));
        Assert.All(left.Zip(left.Skip(1)), pair => Assert.True(pair.First.To <= pair.Second.From));
    });

    [Fact]
    public void Joined_are_ascending_apart_and_hold_the_same_minutes() => Any.Sample(some =>
    {
        var joined = Stretches.Joined(some);
        Assert.Equal(Minutes(some).Count, joined.Sum(s => s.Minutes));
        Assert.All(joined.Zip(joined.Skip(1)), pair => Assert.True(pair.First.To < pair.Second.From));
    });
}
