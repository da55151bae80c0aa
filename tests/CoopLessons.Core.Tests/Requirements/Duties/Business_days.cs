using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Duties;
using CsCheck;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class Business_days
{
    private static readonly Gen<DateOnly> Dates = Gen.Int[0, 4_000].Select(n => Day("2024-01-01").AddDays(n));

    // Federal holidays of 2026 and 2027 as tested beside their published lists; the rest is counting on a calendar.
    [Theory]
    [InlineData("2026-11-25", 1, "2026-11-27")]
    [InlineData("2026-09-04", 1, "2026-09-08")]
    [InlineData("2027-07-01", 2, "2027-07-06")]
    [InlineData("2026-12-23", 2, "2026-12-28")]
    public void Pass_over_weekends_and_the_days_on_which_holidays_are_kept(string from, int count, string reached) =>
        Assert.Equal(Day(reached), BusinessDays.After(Day(from), count));

    [Fact]
    public void Are_never_a_weekend_or_a_kept_holiday() =>
        Gen.Select(Dates, Gen.Int[1, 60]).Sample((date, count) =>
            new[] { BusinessDays.After(date, count), BusinessDays.Before(date, count) }.All(d =>
                d.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)
                && FederalHolidays.Of(d.Year).Concat(FederalHolidays.Of(d.Year + 1)).All(h => h.Observed != d)));

    [Fact]
    public void Between_a_day_and_the_one_counted_from_are_as_many_as_asked() =>
        Gen.Select(Dates, Gen.Int[0, 60]).Sample((date, count) =>
        {
            var before = BusinessDays.Before(date, count);
            var after = BusinessDays.After(date, count + 1);
            return new DayRange(before, date).Days().Count(d => d > before && d < date && BusinessDays.Holds(d)) == count
                && new DayRange(date, after).Days().Count(d => d > date && d < after && BusinessDays.Holds(d)) == count;
        });
}
