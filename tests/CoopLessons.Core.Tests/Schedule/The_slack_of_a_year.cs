using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CsCheck;

namespace CoopLessons.Core.Tests.Schedule;

/// <summary>Thirteen weeks from Monday 31 August to Sunday 29 November 2026, Monday to Friday, the seventh off.</summary>
public class The_slack_of_a_year
{
    private static readonly DateOnly Monday = new(2026, 8, 31);
    private static readonly TeachingCalendar Autumn = new(
        new DayRange(Monday, Monday.AddDays(90)), Weekdays.MondayToFriday, [new Break("Harvest", new DayRange(Week(7).Days.First, Week(7).Days.Last))]);

    private static Week Week(int number) => Core.Calendar.Week.Of(new DateOnly(2026, 8, 31).AddDays(7 * (number - 1)));

    private static Week[] Weeks(params int[] numbers) => [.. numbers.Select(Week)];

    [Fact]
    public void At_its_beginning_is_what_is_owned_less_what_is_committed()
    {
        // Units in weeks 1 to 4 and 4 to 5, something planned in 5 and 6: six weeks of twelve.
        var slack = Slack.Of(Autumn, Monday, [new(Week(1), 4), new(Week(4), 2)], Weeks(5, 6), []);
        Assert.Equal(new Slack(12, 12, 6, 0), slack);
        Assert.Equal((6, 6, 6, 0), (slack.Left, slack.AtFirst, slack.CommittedAtFirst, slack.Gone));
        Assert.False(slack.GoesFast);
    }

    [Fact]
    public void Stays_where_each_week_that_went_by_was_taught()
    {
        var slack = Slack.Of(Autumn, Week(4).Monday, [new(Week(1), 6)], [], Weeks(1, 2, 3));
        Assert.Equal(new Slack(12, 9, 3, 0), slack);
        Assert.Equal((6, 6, 3), (slack.Left, slack.AtFirst, slack.Gone));
    }

    [Fact]
    public void Loses_a_week_in_which_nothing_was_done_whatever_was_planned()
    {
        // Two of the three weeks behind were lost, a unit having been taken for all of them.
        var slack = Slack.Of(Autumn, Week(4).Monday, [new(Week(1), 6)], Weeks(2), Weeks(1));
        Assert.Equal(new Slack(12, 9, 3, 2), slack);
        Assert.Equal((6, 8), (slack.Left, slack.AtFirst));
    }

    [Fact]
    public void Goes_fast_where_a_greater_share_of_it_is_used_than_of_the_time_is_gone()
    {
        // 2 of 8 is just the share of 3 gone of 12; 2 of 7 is more, 2 of 9 less.
        Assert.False(new Slack(12, 9, 3, 2).GoesFast);
        Assert.True(new Slack(12, 9, 4, 2).GoesFast);
        Assert.False(new Slack(12, 9, 2, 2).GoesFast);
    }

    [Fact]
    public void Goes_fast_where_a_week_is_lost_and_there_was_none() => Assert.True(new Slack(12, 9, 11, 1).GoesFast);

    [Fact]
    public void Counts_this_week_as_ahead_until_its_last_teaching_day_is_over()
    {
        Assert.Equal(new Slack(12, 12, 1, 0), Slack.Of(Autumn, Week(1).Monday.AddDays(4), [], [], Weeks(1)));
        Assert.Equal(new Slack(12, 11, 0, 0), Slack.Of(Autumn, Week(1).Monday.AddDays(5), [], [], Weeks(1)));
        Assert.Equal(new Slack(12, 11, 0, 1), Slack.Of(Autumn, Week(1).Monday.AddDays(5), [], Weeks(1), []));
    }

    [Fact]
    public void Loses_a_week_to_a_unit_s_week_that_falls_into_a_break_or_behind_the_end()
    {
        Assert.Equal(3, Slack.Of(Autumn, Monday, [new(Week(6), 3)], [], []).Committed);
        Assert.Equal(4, Slack.Of(Autumn, Monday, [new(Week(12), 4)], [], []).Committed);
    }

    [Fact]
    public void Falls_below_nothing_where_more_is_committed_than_there_is() =>
        Assert.Equal(-2, Slack.Of(Autumn, Week(12).Monday, [new(Week(12), 4)], [], []).Left);

    [Fact]
    public void Passes_over_units_of_other_years() =>
        Assert.Equal(0, Slack.Of(Autumn, Monday, [new(Week(14), 4), new(Week(-3), 4)], [], []).Committed);

    [Fact]
    public void Is_reckoned_from_the_first_week_in_which_there_was_anything()
    {
        Assert.Equal(new Slack(9, 7, 0, 1), Slack.Of(Autumn, Week(6).Monday, [], [], Weeks(4)));
        Assert.Equal(new Slack(7, 7, 0, 0), Slack.Of(Autumn, Week(6).Monday, [], [], []));
    }

    [Fact]
    public void Is_over_with_the_year()
    {
        var slack = Slack.Of(Autumn, Autumn.Year.Last.AddDays(30), [], [], Weeks(1, 2));
        Assert.Equal(new Slack(12, 0, 0, 10), slack);
        Assert.Equal(new Slack(0, 0, 0, 0), Slack.Of(Autumn, Autumn.Year.Last.AddDays(30), [], [], []));
    }

    [Theory]
    [InlineData(36, 32)]
    [InlineData(38, 33)]
    [InlineData(18, 16)]
    [InlineData(0, 0)]
    public void Is_usually_a_ninth_of_the_weeks(int owned, int planned) => Assert.Equal(planned, Slack.UsuallyPlanned(owned));

    [Fact]
    public void Of_any_year_is_one_less_for_each_week_that_is_lost_and_unchanged_by_one_that_is_kept() =>
        Gen.Select(Gen.Int[1, 13], Gen.Int[1, 4], Gen.Int[1, 13].Array[0, 6], Gen.Int[0, 13].Array[0, 13]).Sample((start, length, planned, logged) =>
        {
            TakenWeeks[] units = [new(Week(start), length)];
            var log = Weeks([1, .. logged.Where(w => w > 0)]);
            for (var week = 1; week < 13; week++)
            {
                // Weeks that were logged before they came are committed: look only at logs up to the week.
                var upTo = log.Where(w => w.Monday < Week(week + 1).Monday).ToList();
                var before = Slack.Of(Autumn, Week(week).Monday, units, Weeks(planned), upTo);
                var after = Slack.Of(Autumn, Week(week + 1).Monday, units, Weeks(planned), upTo);
                var lost = week != 7 && !upTo.Contains(Week(week)) ? 1 : 0;
                Assert.Equal(before.Used + lost, after.Used);
                Assert.True(after.Left <= before.Left + (week == 7 ? 1 : 0) && after.Left >= before.Left - 1);
                Assert.Equal(after.OwnedAtFirst, after.CommittedAtFirst + after.AtFirst);
            }
        }, iter: 200);
}
