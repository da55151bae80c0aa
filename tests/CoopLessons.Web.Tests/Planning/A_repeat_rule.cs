using CoopLessons.Core.Calendar;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Tests.Planning;

public class A_repeat_rule
{
    private static readonly DateOnly Thursday = new(2026, 3, 12);

    private static RepeatRule Rule(string? text)
    {
        Assert.True(RepeatRule.TryRead(text, out var rule, out var fault), fault);
        return rule;
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    public void That_is_none_means_the_one_day(string? text)
    {
        Assert.Equal([Thursday], Rule(text).DaysIn(Thursday, new DayRange(Thursday.AddDays(-9), Thursday.AddDays(9))));
        Assert.Empty(Rule(text).DaysIn(Thursday, new DayRange(Thursday.AddDays(1), Thursday.AddDays(9))));
        Assert.Empty(Rule(text).DaysIn(Thursday, new DayRange(Thursday.AddDays(-9), Thursday.AddDays(-1))));
    }

    [Fact]
    public void Is_kept_in_capitals_without_its_name() => Assert.Equal("FREQ=WEEKLY;BYDAY=TH", Rule(" rrule:freq=weekly;byday=th ").Text);

    [Fact]
    public void Gives_only_days_of_the_range_and_counts_those_before_it() =>
        Assert.Equal([new DateOnly(2026, 4, 9)], Rule("FREQ=WEEKLY;COUNT=5").DaysIn(Thursday, new DayRange(new DateOnly(2026, 4, 3), new DateOnly(2026, 12, 31))));

    [Fact]
    public void Gives_nothing_before_its_first_day() =>
        Assert.Empty(Rule("FREQ=DAILY").DaysIn(Thursday, new DayRange(Thursday.AddDays(-30), Thursday.AddDays(-1))));

    [Fact]
    public void Gives_at_most_so_many_days() =>
        Assert.Equal(RepeatRule.MostDays, Rule("FREQ=DAILY").DaysIn(Thursday, new DayRange(Thursday, Thursday.AddDays(5000))).Count);

    [Theory]
    [InlineData("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30")]
    [InlineData("FREQ=YEARLY;BYWEEKNO=53;BYMONTH=6;BYDAY=MO")]
    public void That_never_comes_gives_nothing_and_ends(string text) =>
        Assert.Empty(Rule(text).DaysIn(Thursday, new DayRange(Thursday, Thursday.AddDays(3000))));

    [Fact]
    public void Reaches_to_the_last_day_that_can_be_written() =>
        Assert.NotEmpty(Rule("FREQ=YEARLY").Next(new DateOnly(9990, 1, 1), new DateOnly(9990, 1, 1), 50));

    [Theory]
    [InlineData("FREQ=SECONDLY", "comes back within a day")]
    [InlineData("FREQ=MINUTELY;INTERVAL=90;COUNT=4", "comes back within a day")]
    [InlineData("FREQ=HOURLY", "comes back within a day")]
    [InlineData("FREQ=FORTNIGHTLY", "cannot be “FORTNIGHTLY”")]
    [InlineData("BYDAY=TH", "says how often")]
    [InlineData("every Thursday", "is no part of a rule")]
    [InlineData("FREQ=WEEKLY;", "is no part of a rule")]
    [InlineData("FREQ=WEEKLY;BYDAY", "is no part of a rule")]
    [InlineData("FREQ=WEEKLY;FREQ=DAILY", "FREQ stands twice")]
    [InlineData("FREQ=WEEKLY;COUNT=3;UNTIL=20261218", "not both")]
    [InlineData("FREQ=WEEKLY;COUNT=0", "COUNT is a whole number")]
    [InlineData("FREQ=WEEKLY;COUNT=99999", "COUNT is a whole number")]
    [InlineData("FREQ=WEEKLY;INTERVAL=-1", "INTERVAL is a whole number")]
    [InlineData("FREQ=WEEKLY;UNTIL=20261318", "UNTIL is the last day")]
    [InlineData("FREQ=WEEKLY;UNTIL=20261218T000000Z", "without a time")]
    [InlineData("FREQ=WEEKLY;BYDAY=DO", "“DO” is no weekday")]
    [InlineData("FREQ=WEEKLY;BYDAY=1TH", "numbered weekday")]
    [InlineData("FREQ=MONTHLY;BYDAY=0TH", "“0” before TH")]
    [InlineData("FREQ=MONTHLY;BYDAY=54TH", "“54” before TH")]
    [InlineData("FREQ=MONTHLY;BYMONTHDAY=32", "BYMONTHDAY has whole numbers")]
    [InlineData("FREQ=YEARLY;BYMONTH=-1", "BYMONTH has whole numbers")]
    [InlineData("FREQ=WEEKLY;BYMONTHDAY=3", "BYMONTHDAY does not go with")]
    [InlineData("FREQ=MONTHLY;BYWEEKNO=3", "BYWEEKNO goes with")]
    [InlineData("FREQ=MONTHLY;BYYEARDAY=3", "BYYEARDAY goes with")]
    [InlineData("FREQ=MONTHLY;BYSETPOS=3", "BYSETPOS chooses among")]
    [InlineData("FREQ=DAILY;BYHOUR=9", "times within a day")]
    [InlineData("FREQ=WEEKLY;WKST=XX", "WKST cannot be")]
    [InlineData("FREQ=WEEKLY;X-NAME=1", "“X-NAME” is no part")]
    public void Is_refused_with_a_sentence_that_says_why(string text, string sentence)
    {
        Assert.False(RepeatRule.TryRead(text, out var rule, out var fault));
        Assert.Equal(RepeatRule.Once, rule);
        Assert.Contains(sentence, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_refused_where_it_is_longer_than_any_that_is_needed() =>
        Assert.False(RepeatRule.TryRead("FREQ=YEARLY;BYYEARDAY=" + string.Join(',', Enumerable.Range(1, 366)), out _, out _));
}
