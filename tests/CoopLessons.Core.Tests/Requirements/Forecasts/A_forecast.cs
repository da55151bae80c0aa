using System.Text.Json;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Forecasts;
using static CoopLessons.Core.Tests.Requirements.Forecasts.SteadyWeeks;

namespace CoopLessons.Core.Tests.Requirements.Forecasts;

public sealed class A_forecast
{
    [Fact]
    public void Of_a_constant_pace_is_plain_arithmetic_in_all_its_points()
    {
        // 25 × 60 = 1,500 behind; 195 × 60 = 11,700 at the end; 300 more with each week.
        var forecast = Of(Amounts(FifthSunday, 60), FifthSunday, 6_000);
        Assert.Equal((1_500, 4_500, 170), (forecast.SoFar, forecast.Missing, forecast.TeachingDaysLeft));
        Assert.Equal(new Spread(11_700, 11_700, 11_700), forecast.Outlook!.YearEnd);
        Assert.Equal(Enumerable.Range(1, 34).Select(w => new Spread(1_500 + 300 * w, 1_500 + 300 * w, 1_500 + 300 * w)), forecast.Outlook.Path.Select(p => p.Total));
        Assert.Equal((new DateOnly(2026, 10, 9), new DateOnly(2027, 5, 28)), (forecast.Outlook.Path[0].Until, forecast.Outlook.Path[^1].Until));
        Assert.Equal(4, forecast.Outlook.WeeksSeen);
    }

    [Theory]
    // The 100th teaching day is the Friday of the 20th week, 15 January 2027; 95 follow.
    [InlineData(6_000, "2027-01-15", 95)]
    [InlineData(6_001, "2027-01-18", 94)]
    [InlineData(5_941, "2027-01-15", 95)]
    [InlineData(5_940, "2027-01-14", 96)]
    [InlineData(11_700, "2027-05-28", 0)]
    [InlineData(11_701, null, null)]
    public void Of_a_constant_pace_reaches_the_figure_on_the_day_that_a_calendar_gives(int target, string? date, int? spare)
    {
        var outlook = Of(Amounts(FifthSunday, 60), FifthSunday, target).Outlook!;
        DateOnly? day = date is null ? null : DateOnly.ParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(new Outlook.Dates(day, day, day), outlook.Reached);
        Assert.Equal(spare, outlook.SpareDays);
    }

    [Fact]
    public void In_the_middle_of_a_week_counts_the_days_of_it_that_are_left()
    {
        // Up to Wednesday of the sixth week 28 days; Thursday and Friday bring 120.
        var wednesday = new DateOnly(2026, 10, 7);
        var forecast = Of(Amounts(wednesday, 60), wednesday, 6_000);
        Assert.Equal((1_680, 167), (forecast.SoFar, forecast.TeachingDaysLeft));
        Assert.Equal(1_800, forecast.Outlook!.Path[0].Total.P50);
        Assert.Equal(11_700, forecast.Outlook.YearEnd.P50);
    }

    [Fact]
    public void Counts_today_among_the_days_left_while_nothing_is_logged_on_it()
    {
        var monday = new DateOnly(2026, 10, 5);
        Assert.Equal(170, Of(Amounts(FifthSunday, 60), monday, 6_000).TeachingDaysLeft);
        Assert.Equal(169, Of(Amounts(monday, 60), monday, 6_000).TeachingDaysLeft);
    }

    [Fact]
    public void Brings_nothing_in_a_break()
    {
        // Two weeks from 21 December: 185 teaching days, so 11,100 at the end, and no week of the path ends in between.
        var days = new DayRange(new DateOnly(2026, 12, 21), new DateOnly(2027, 1, 3));
        var school = School with { Breaks = [new Break("Midwinter", days)] };
        var outlook = Forecast.Of(Amounts(FifthSunday, 60), Year, school, FifthSunday, 6_000).Outlook!;
        Assert.Equal(new Spread(11_100, 11_100, 11_100), outlook.YearEnd);
        Assert.DoesNotContain(outlook.Path, w => days.Contains(w.Until));
        Assert.Equal(new DateOnly(2027, 1, 29), outlook.Reached.P50);
    }

    [Fact]
    public void Learns_nothing_from_a_week_of_break()
    {
        var school = School with { Breaks = [new Break("Harvest", new DayRange(new DateOnly(2026, 9, 21), new DateOnly(2026, 9, 27)))] };
        var outlook = Forecast.Of(Amounts(FifthSunday, 60, school), Year, school, FifthSunday, 6_000).Outlook!;
        Assert.Equal((3, 190 * 60), (outlook.WeeksSeen, outlook.YearEnd.P50));
    }

    [Theory]
    [InlineData("2026-09-20", 0)]
    [InlineData("2026-09-21", 3)]
    [InlineData("2026-10-26", 8)]
    [InlineData("2026-12-14", 8)]
    public void Looks_out_from_the_third_whole_week_on_and_back_over_eight(string asOf, int weeks)
    {
        var today = DateOnly.ParseExact(asOf, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(weeks, Of(Amounts(today, 60), today, 6_000).Outlook?.WeeksSeen ?? 0);
    }

    [Fact]
    public void Passes_over_a_week_of_which_only_a_part_counts()
    {
        var counted = new DayRange(new DateOnly(2026, 9, 9), Year.Last);
        Assert.Null(Forecast.Of(Amounts(FifthSunday, 60), counted, School, FifthSunday, 6_000).Outlook);
        var monday = new DateOnly(2026, 10, 5);
        Assert.Equal(3, Forecast.Of(Amounts(FifthSunday, 60), counted, School, monday, 6_000).Outlook!.WeeksSeen);
    }

    [Fact]
    public void Has_no_outlook_and_needs_nothing_when_no_day_is_left()
    {
        var forecast = Of(Amounts(Year.Last, 60), Year.Last, 20_000);
        Assert.Equal((0, null, null, null), (forecast.TeachingDaysLeft, forecast.NeededADay, forecast.NeededAWeek, forecast.Outlook));
        Assert.Equal(8_300, forecast.Missing);
    }

    [Fact]
    public void Looks_back_over_the_last_weeks_even_after_the_year_has_ended()
    {
        var july = new DateOnly(2027, 7, 5);
        Assert.Equal(11_700, Of(Amounts(Year.Last, 60), july, 20_000).SoFar);
    }

    [Fact]
    public void Is_the_same_for_the_same_input()
    {
        var uneven = School.TeachingDays().Where(d => d <= FifthSunday).ToDictionary(d => d, d => d.DayNumber * 37 % 200);
        Assert.Equal(JsonSerializer.Serialize(Of(uneven, FifthSunday, 9_000)), JsonSerializer.Serialize(Of(uneven.Reverse().ToDictionary(), FifthSunday, 9_000)));
    }

    private static Forecast Of(IReadOnlyDictionary<DateOnly, int> amounts, DateOnly asOf, int target) => Forecast.Of(amounts, Year, School, asOf, target);
}
