using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule;

public class A_proposed_change
{
    private static readonly PlanChange Move = new(AlderLog.Id(1), AlderLog.Tuesday, AlderLog.Tuesday.AddDays(2));

    [Fact]
    public void Is_the_same_as_another_that_moves_the_same_session_alike() =>
        Assert.Single(new HashSet<PlanChange> { Move, new(AlderLog.Id(1), AlderLog.Tuesday, AlderLog.Tuesday.AddDays(2)) });

    [Fact]
    public void Off_the_calendar_is_another_than_to_a_date() => Assert.NotEqual(Move, Move with { To = null });
}
