using CoopLessons.Core.Calendar;
using CsCheck;

namespace CoopLessons.Core.Tests.Calendar;

public class A_teaching_calendar
{
    private static readonly DateOnly Monday = new(2026, 11, 23);

    private static readonly Break Thanksgiving = new("Thanksgiving", new DayRange(new DateOnly(2026, 11, 26), new DateOnly(2026, 11, 27)));

    private static readonly TeachingCalendar Alders =
        new(new DayRange(new DateOnly(2026, 11, 23), new DateOnly(2026, 12, 4)), Weekdays.MondayToFriday, [Thanksgiving]);

    [Fact]
    public void Teaches_on_its_weekdays_outside_its_breaks() =>
        Assert.Equal([23, 24, 25, 30, 1, 2, 3, 4], Alders.TeachingDays().Select(d => d.Day));

    [Fact]
    public void Names_the_break_a_date_falls_in_on_both_of_its_ends()
    {
        Assert.Null(Alders.BreakOn(new DateOnly(2026, 11, 25)));
        Assert.Same(Thanksgiving, Alders.BreakOn(new DateOnly(2026, 11, 26)));
        Assert.Same(Thanksgiving, Alders.BreakOn(new DateOnly(2026, 11, 27)));
        Assert.Null(Alders.BreakOn(new DateOnly(2026, 11, 28)));
    }

    [Fact]
    public void Does_not_teach_outside_its_year()
    {
        Assert.False(Alders.IsTeachingDay(new DateOnly(2026, 11, 20)));
        Assert.False(Alders.IsTeachingDay(new DateOnly(2026, 12, 7)));
    }

    [Fact]
    public void Finds_the_next_teaching_day_over_a_break_and_a_weekend() =>
        Assert.Equal(new DateOnly(2026, 11, 30), Alders.NextTeachingDay(new DateOnly(2026, 11, 25)));

    [Fact]
    public void Finds_the_first_teaching_day_from_before_the_year() =>
        Assert.Equal(Monday, Alders.NextTeachingDay(new DateOnly(2026, 8, 1)));

    [Fact]
    public void Finds_none_after_the_last() => Assert.Null(Alders.NextTeachingDay(new DateOnly(2026, 12, 4)));

    [Fact]
    public void Finds_none_where_no_weekday_is_taught() =>
        Assert.Null((Alders with { Weekdays = Weekdays.None }).NextTeachingDay(Monday));

    [Fact]
    public void Reaches_every_teaching_day_once_by_going_from_one_to_the_next() =>
        Gen.Select(Gen.Int[0, 127], Gen.Int[0, 60], Gen.Int[0, 20]).Sample((bits, from, length) =>
        {
            var off = new Break("Winter", new DayRange(Monday.AddDays(from), Monday.AddDays(from + length)));
            var calendar = new TeachingCalendar(new DayRange(Monday, Monday.AddDays(90)), (Weekdays)bits, [off]);
            var walked = new List<DateOnly>();
            for (var day = calendar.NextTeachingDay(Monday.AddDays(-1)); day is { } found; day = calendar.NextTeachingDay(found))
                walked.Add(found);
            return walked.SequenceEqual(calendar.TeachingDays())
                && walked.All(d => !off.Days.Contains(d) && calendar.Weekdays.Holds(d.DayOfWeek));
        });

    [Theory]
    [InlineData(DayOfWeek.Monday, Weekdays.Monday)]
    [InlineData(DayOfWeek.Tuesday, Weekdays.Tuesday)]
    [InlineData(DayOfWeek.Wednesday, Weekdays.Wednesday)]
    [InlineData(DayOfWeek.Thursday, Weekdays.Thursday)]
    [InlineData(DayOfWeek.Friday, Weekdays.Friday)]
    [InlineData(DayOfWeek.Saturday, Weekdays.Saturday)]
    [InlineData(DayOfWeek.Sunday, Weekdays.Sunday)]
    public void Knows_each_weekday_by_one_bit(DayOfWeek day, Weekdays bit)
    {
        Assert.Equal(bit, WeekdaysReading.Of(day));
        Assert.True(bit.Holds(day));
        Assert.Equal(1, Enum.GetValues<DayOfWeek>().Count(d => bit.Holds(d)));
    }

    [Fact]
    public void Counts_five_days_from_Monday_to_Friday() =>
        Assert.Equal([DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday],
            Enum.GetValues<DayOfWeek>().Where(d => Weekdays.MondayToFriday.Holds(d)));
}
