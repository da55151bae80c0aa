using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Schedule;

public class How_long_things_really_take
{
    private static readonly Guid Wren = AlderLog.Id(1);
    private static readonly Guid Linnet = AlderLog.Id(2);

    private static DoneSession Making(int planned, int logged) => new(ActivityKind.Making, Wren, planned, logged);

    private static RealRatio? Of(params DoneSession[] sessions) => RealMinutes.Of(sessions).GetValueOrDefault((ActivityKind.Making, Wren));

    [Fact]
    public void Is_the_middle_of_what_was_logged_over_what_was_planned()
    {
        // 1.0, 1.2, 1.4, 1.5, 3.0: one long afternoon does not count for more than its place.
        var ratio = Of(Making(30, 30), Making(20, 60), Making(25, 35), Making(25, 30), Making(40, 60))!;
        Assert.Equal((5, "1.4"), (ratio.Times, ratio.Figure));
        Assert.Equal(35, ratio.Likely(25));
    }

    [Fact]
    public void Is_the_mean_of_the_two_in_the_middle_where_they_are_even()
    {
        // 1.0, 1.25, 1.5, 2.0: 1.375.
        var ratio = Of(Making(30, 30), Making(20, 25), Making(20, 30), Making(10, 20))!;
        Assert.Equal(11 * ratio.Denominator, 8 * ratio.Numerator);
        Assert.Equal("1.4", ratio.Figure);
        // 27.5 min: a half goes up.
        Assert.Equal(30, ratio.Likely(20));
        Assert.Equal(55, ratio.Likely(40));
    }

    [Fact]
    public void Says_nothing_of_fewer_than_three() => Assert.Null(Of(Making(10, 30), Making(10, 30)));

    [Fact]
    public void Is_told_for_each_kind_and_each_learner_apart()
    {
        DoneSession[] sessions =
        [
            .. Enumerable.Repeat(Making(10, 20), 3),
            .. Enumerable.Repeat(new DoneSession(ActivityKind.Making, Linnet, 20, 10), 4),
            .. Enumerable.Repeat(new DoneSession(ActivityKind.Music, Wren, 10, 10), 2),
        ];
        var all = RealMinutes.Of(sessions);
        Assert.Equal([(ActivityKind.Making, Wren, "2.0"), (ActivityKind.Making, Linnet, "0.5")], all.Values.Select(r => (r.Kind, r.LearnerId, r.Figure)));
    }

    [Fact]
    public void Never_foretells_less_than_five_minutes() => Assert.Equal(5, Of(Making(100, 1), Making(100, 1), Making(100, 1))!.Likely(20));

    [Fact]
    public void Refuses_minutes_that_no_session_has()
    {
        Assert.Throws<ArgumentException>(() => Of(Making(0, 10), Making(10, 10), Making(10, 10)));
        Assert.Throws<ArgumentException>(() => Of(Making(10, 1441), Making(10, 10), Making(10, 10)));
    }

    [Fact]
    public void Lies_between_the_least_and_the_most_and_does_not_mind_the_order() =>
        Gen.Select(Gen.Int[1, 1440], Gen.Int[1, 1440]).Select((p, l) => Making(p, l)).Array[3, 12].Sample(sessions =>
        {
            var ratio = Of(sessions)!;
            Assert.Contains(sessions, s => s.Logged * ratio.Denominator <= ratio.Numerator * s.Planned);
            Assert.Contains(sessions, s => s.Logged * ratio.Denominator >= ratio.Numerator * s.Planned);
            var again = Of([.. sessions.Reverse()])!;
            Assert.Equal(ratio.Numerator * (Int128)again.Denominator, again.Numerator * (Int128)ratio.Denominator);
        });

    [Fact]
    public void Foretells_what_was_planned_where_it_always_took_that_long() =>
        Gen.Select(Gen.Int[1, 1440].Array[3, 8], Gen.Int[1, 96]).Sample((lengths, fives) =>
            Assert.Equal(5 * fives, Of([.. lengths.Select(m => Making(m, m))])!.Likely(5 * fives)));
}
