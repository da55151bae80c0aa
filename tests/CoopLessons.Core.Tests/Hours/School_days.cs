using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

public class School_days
{
    private static SchoolDays Days(HoursLedger ledger, int minimum, params (DateOnly Date, bool Counts)[] marks) =>
        SchoolDays.Of(ledger, new Minutes(minimum), marks.ToDictionary(m => m.Date, m => m.Counts));

    [Fact]
    public void Sixty_minutes_reach_a_minimum_of_sixty()
    {
        var days = WrensLedger(Entry(1, Tuesday, 25), Entry(2, Tuesday, 35, Art)).WithoutMarks(60);

        Assert.Equal(new SchoolDay(Tuesday, new Minutes(60), DayStanding.Reached), days[Tuesday]);
        Assert.True(days[Tuesday].Counts);
        Assert.Equal((1, 1), (days.Strict, days.Broad));
    }

    [Fact]
    public void Fifty_nine_minutes_do_not_and_count_broadly_only()
    {
        var days = WrensLedger(Entry(1, Tuesday, 59)).WithoutMarks(60);

        Assert.Equal(DayStanding.Under, days[Tuesday].Standing);
        Assert.False(days[Tuesday].Counts);
        Assert.Equal((0, 1), (days.Strict, days.Broad));
    }

    [Theory]
    [InlineData(269, 0)]
    [InlineData(270, 1)]
    public void A_law_of_four_hours_and_a_half_asks_for_270_minutes(int minutes, int schoolDays) =>
        Assert.Equal(schoolDays, WrensLedger(Entry(1, Tuesday, minutes)).WithoutMarks(270).Strict);

    [Fact]
    public void A_mark_makes_a_school_day_of_a_date_with_too_few_minutes()
    {
        var days = Days(WrensLedger(Entry(1, Tuesday, 5)), 60, (Tuesday, true));

        Assert.Equal(new SchoolDay(Tuesday, new Minutes(5), DayStanding.MarkedYes), days[Tuesday]);
        Assert.Equal((1, 1), (days.Strict, days.Broad));
    }

    [Fact]
    public void A_mark_makes_a_school_day_of_a_date_without_any_entry()
    {
        var days = Days(WrensLedger(), 60, (Tuesday, true));

        Assert.Equal(new SchoolDay(Tuesday, Minutes.Zero, DayStanding.MarkedYes), days[Tuesday]);
        Assert.Equal((1, 1), (days.Strict, days.Broad));
    }

    [Fact]
    public void A_mark_takes_a_date_out_that_reaches_the_minimum_also_broadly()
    {
        var days = Days(WrensLedger(Entry(1, Tuesday, 300)), 60, (Tuesday, false));

        Assert.Equal(new SchoolDay(Tuesday, new Minutes(300), DayStanding.MarkedNo), days[Tuesday]);
        Assert.False(days[Tuesday].Counts);
        Assert.Equal((0, 0), (days.Strict, days.Broad));
    }

    [Fact]
    public void A_mark_takes_no_minutes_away() =>
        Assert.Equal(300, Days(WrensLedger(Entry(1, Tuesday, 300)), 60, (Tuesday, false))[Tuesday].Minutes.Value);

    [Fact]
    public void A_date_with_a_touch_and_too_few_minutes_counts_broadly_only()
    {
        var days = WrensLedger(Entry(1, Tuesday, 10, Science, touches: [Art.Id])).WithoutMarks(60);

        Assert.Equal((0, 1), (days.Strict, days.Broad));
    }

    [Fact]
    public void Marks_outside_the_period_are_passed_over()
    {
        var days = Days(WrensLedger(), 60, (Year.First.AddDays(-1), true), (Year.Last.AddDays(1), true), (Year.Last, true));

        Assert.Equal(1, days.Strict);
        Assert.Equal(DayStanding.Blank, days[Year.First.AddDays(-1)].Standing);
    }

    [Fact]
    public void A_date_of_which_nothing_is_known_is_blank()
    {
        var day = WrensLedger().WithoutMarks(60)[Tuesday];

        Assert.Equal(new SchoolDay(Tuesday, Minutes.Zero, DayStanding.Blank), day);
        Assert.False(day.Counts);
    }

    [Fact]
    public void A_months_school_days_are_those_dated_in_it()
    {
        var days = Days(
            WrensLedger(Entry(1, new DateOnly(2026, 10, 31), 60), Entry(2, new DateOnly(2026, 11, 1), 60), Entry(3, new DateOnly(2026, 11, 30), 60)),
            60,
            (new DateOnly(2026, 11, 14), true));

        Assert.Equal(1, days.StrictIn(new Month(2026, 10)));
        Assert.Equal(3, days.StrictIn(new Month(2026, 11)));
        Assert.Equal(0, days.StrictIn(new Month(2026, 12)));
    }

    [Fact]
    public void A_minimum_of_nothing_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("minimum", () => WrensLedger().WithoutMarks(0));
}
