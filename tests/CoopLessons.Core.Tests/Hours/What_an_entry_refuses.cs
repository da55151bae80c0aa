using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests.Hours;

public class What_an_entry_refuses
{
    [Theory]
    [InlineData(0)]
    [InlineData(1441)]
    public void A_learners_time_outside_1_to_1440_minutes(int minutes) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(minutes), () => new LearnerTime(AlderLog.Wren, new Minutes(minutes)));

    [Theory]
    [InlineData(1)]
    [InlineData(1440)]
    public void But_not_the_shortest_and_the_longest_time(int minutes) =>
        Assert.Equal(minutes, new LearnerTime(AlderLog.Wren, new Minutes(minutes)).Minutes.Value);

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_weight_below_one(int weight) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(weight), () => new SubjectWeight(AlderLog.Art.Id, weight));
}
