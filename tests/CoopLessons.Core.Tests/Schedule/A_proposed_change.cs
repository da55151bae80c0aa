using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule;

public class A_proposed_change
{
    private static readonly PlanPlace Before = new(AlderLog.Tuesday, 9 * 60, 2, 11 * 60, AlderLog.Id(7), 25, Pinned: true, PlanState.NotDone);
    private static readonly PlanChange Move = new(AlderLog.Id(1), Before, Before with { Date = AlderLog.Tuesday.AddDays(2), State = PlanState.Planned });

    [Fact]
    public void Is_the_same_as_another_that_moves_the_same_session_alike() =>
        Assert.Single(new HashSet<PlanChange> { Move, new(AlderLog.Id(1), Before with { }, Before with { Date = AlderLog.Tuesday.AddDays(2), State = PlanState.Planned }) });

    [Fact]
    public void Off_the_calendar_is_another_than_to_a_date() => Assert.NotEqual(Move, Move with { To = null });

    [Fact]
    public void Off_the_calendar_keeps_the_place_for_the_way_back() =>
        Assert.Equal(Before with { State = PlanState.LetGo }, (Move with { To = null }).Then);

    [Fact]
    public void Undone_gives_back_all_that_was()
    {
        foreach (var change in new[] { Move, Move with { To = null }, Move with { From = Before with { State = PlanState.LetGo } } })
        {
            Assert.Equal(change.From, change.Undoing.Then);
            Assert.Equal(change.Then, change.Undoing.From);
        }
    }

    [Theory]
    [InlineData(-1, 0, null, null)]
    [InlineData(1440, 0, null, null)]
    [InlineData(null, -1, null, null)]
    [InlineData(null, 0, 1440, null)]
    [InlineData(null, 0, null, 0)]
    [InlineData(null, 0, null, 481)]
    public void Out_of_bounds_is_not_sound(int? startsAt, int order, int? looksAt, int? minutes) =>
        Assert.False(new PlanPlace(AlderLog.Tuesday, startsAt, order, looksAt, null, minutes).IsSound);

    [Fact]
    public void At_the_bounds_is_sound() => Assert.True(new PlanPlace(AlderLog.Tuesday, 0, 0, 1439, null, 480).IsSound);
}
