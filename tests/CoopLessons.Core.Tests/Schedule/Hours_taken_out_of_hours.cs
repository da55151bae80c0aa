using CoopLessons.Core.Schedule;
using CsCheck;

namespace CoopLessons.Core.Tests.Schedule;

public class Hours_taken_out_of_hours
{
    private static readonly Gen<List<Stretch>> AnyStretches =
        Gen.Select(Gen.Int[0, 1300], Gen.Int[1, 140], (from, minutes) => new Stretch(from, from + minutes)).List[0, 6];

    private static HashSet<int> Minutes(IEnumerable<Stretch> stretches) => [.. stretches.SelectMany(s => Enumerable.Range(s.From, s.Minutes))];

    [Fact]
    public void Leave_a_morning_in_two_parts_around_an_appointment() =>
        Assert.Equal(
            [new Stretch(510, 570), new Stretch(620, 720)],
            Stretches.Less([new Stretch(510, 720)], [new Stretch(570, 620)]));

    [Fact]
    public void Leave_nothing_of_what_is_taken_whole() => Assert.Empty(Stretches.Less([new Stretch(510, 720)], [new Stretch(500, 730)]));

    [Fact]
    public void Are_the_minutes_that_the_other_does_not_hold() => Gen.Select(AnyStretches, AnyStretches).Sample((free, busy) =>
    {
        var left = Stretches.Less(free, busy);
        Assert.Equal(Minutes(free).Except(Minutes(busy)).Order(), Minutes(left).Order());
        Assert.All(left.Zip(left.Skip(1)), pair => Assert.True(pair.First.To <= pair.Second.From));
    });

    [Fact]
    public void Lie_in_both_where_they_are_laid_over_each_other() => Gen.Select(AnyStretches, AnyStretches).Sample((one, other) =>
        Assert.Equal(
            Minutes(one).Intersect(Minutes(other)).Order(),
            Minutes(Stretches.Both(one, other)).Order()));

    [Fact]
    public void Are_joined_without_losing_or_doubling_a_minute() => AnyStretches.Sample(all =>
    {
        var joined = Stretches.Joined(all);
        Assert.Equal(Minutes(all).Count, joined.Sum(s => s.Minutes));
        Assert.All(joined.Zip(joined.Skip(1)), pair => Assert.True(pair.First.To < pair.Second.From));
    });

    [Theory]
    [InlineData(0, null)]
    [InlineData(30, 15)]
    [InlineData(75, 30)]
    [InlineData(240, 30)]
    [InlineData(241, null)]
    public void Say_how_patient_a_wait_is(int waiting, int? patience) => Assert.Equal(patience, UsualLook.After(waiting)?.Patience);
}
