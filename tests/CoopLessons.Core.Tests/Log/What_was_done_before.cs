using CoopLessons.Core.Hours;
using CoopLessons.Core.Log;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Log;

public class What_was_done_before
{
    private static readonly DateOnly s_tuesday = new(2027, 1, 12);

    private static LoggedEntry Baking(DateOnly date, int minutes, string what = "Baked bread", TimeOnly? start = null, LearnerTime? besides = null) => new(
        Guid.CreateVersion7(), 1, date, start, what, Place.Home,
        [new LearnerTime(Wren, new Minutes(minutes)), .. besides is null ? [] : new[] { besides }], [new SubjectWeight(Subjects[0].Id, 1)], []);

    [Fact]
    public void Is_one_thing_where_the_words_fold_alike_and_is_spelled_as_the_last_time()
    {
        var thing = Assert.Single(PastThing.Of([Baking(s_tuesday.AddDays(-1), 40), Baking(s_tuesday, 40, "baked BREAD!")], s_tuesday));
        Assert.Equal("baked BREAD!", thing.What);
        Assert.Equal([s_tuesday, s_tuesday.AddDays(-1)], thing.Days);
    }

    [Theory]
    [InlineData(new[] { 30 }, 30)]
    [InlineData(new[] { 30, 45 }, 37)]
    [InlineData(new[] { 30, 45, 200 }, 45)]
    [InlineData(new[] { 500, 500, 500, 20, 30, 40, 50, 60 }, 40)]
    public void Has_the_median_of_its_last_five(int[] minutes, int median) =>
        Assert.Equal(median, Assert.Single(PastThing.Of(minutes.Select((m, i) => Baking(s_tuesday.AddDays(i - minutes.Length), m)), s_tuesday)).Minutes);

    [Fact]
    public void Keeps_the_minutes_of_a_child_who_had_others()
    {
        var thing = Assert.Single(PastThing.Of(
            [Baking(s_tuesday.AddDays(-7), 60), Baking(s_tuesday, 40, besides: new LearnerTime(Finch, new Minutes(15)))], s_tuesday));
        // Of 40 and 15 the longer is the common one; the median of 60 and 40 is 50.
        Assert.Equal([(Wren, 50), (Finch, 15)], thing.Times.Select(t => (t.LearnerId, t.Minutes.Value)));
    }

    [Fact]
    public void Is_usual_on_a_weekday_from_the_second_of_four_weeks_on()
    {
        var thing = Assert.Single(PastThing.Of([Baking(s_tuesday.AddDays(-7), 40), Baking(s_tuesday.AddDays(-28), 40)], s_tuesday));
        Assert.True(thing.IsUsualOn(s_tuesday));
        Assert.False(thing.IsUsualOn(s_tuesday.AddDays(7)));
        Assert.False(thing.IsUsualOn(s_tuesday.AddDays(1)));
    }

    [Fact]
    public void Is_nothing_of_a_day_still_to_come_and_nothing_without_words()
    {
        Assert.Empty(PastThing.Of([Baking(s_tuesday.AddDays(1), 40), Baking(s_tuesday, 40, "!!!")], s_tuesday));
    }

    [Fact]
    public void Has_the_median_of_the_hours_that_were_written()
    {
        var thing = Assert.Single(PastThing.Of(
            [Baking(s_tuesday, 40, start: new TimeOnly(9, 0)), Baking(s_tuesday.AddDays(-1), 40), Baking(s_tuesday.AddDays(-2), 40, start: new TimeOnly(10, 0))], s_tuesday));
        Assert.Equal(9 * 60 + 30, thing.StartsAt);
    }
}
