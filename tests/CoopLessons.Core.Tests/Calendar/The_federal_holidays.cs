using System.Globalization;
using CoopLessons.Core.Calendar;
using CsCheck;

namespace CoopLessons.Core.Tests.Calendar;

public class The_federal_holidays
{
    private static readonly string[] Names =
    [
        "New Year's Day",
        "Birthday of Martin Luther King, Jr.",
        "Washington's Birthday",
        "Memorial Day",
        "Juneteenth National Independence Day",
        "Independence Day",
        "Labor Day",
        "Columbus Day",
        "Veterans Day",
        "Thanksgiving Day",
        "Christmas Day",
    ];

    private static DateOnly Date(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    // Names and rules: 5 U.S.C. § 6103(a), as listed at https://www.okwb.uscourts.gov/holidays.
    // 2026: https://calendar-12-hrd.appspot.com/federal_holidays/2026 (read).
    // 2027: https://holidaydb.com/guides/public-holidays/united-states/2027 (read), and
    //   https://www.federalholidays.net/usa/federal-holidays-2027.html (read; weekdays, and the three days that move).
    // 2028: https://rdrr.io/cran/almanac/src/tests/testthat/test-calendars.R (read; a list checked against the posted one), and
    //   https://calendar-12-hrd.appspot.com/federal_holidays/2028 (read).
    // The list that the Office of Personnel Management publishes was not read.
    [Theory]
    [InlineData(2026, "2026-01-01 2026-01-19 2026-02-16 2026-05-25 2026-06-19 2026-07-03 2026-09-07 2026-10-12 2026-11-11 2026-11-26 2026-12-25")]
    [InlineData(2027, "2027-01-01 2027-01-18 2027-02-15 2027-05-31 2027-06-18 2027-07-05 2027-09-06 2027-10-11 2027-11-11 2027-11-25 2027-12-24")]
    [InlineData(2028, "2027-12-31 2028-01-17 2028-02-21 2028-05-29 2028-06-19 2028-07-04 2028-09-04 2028-10-09 2028-11-10 2028-11-23 2028-12-25")]
    public void Are_kept_on_the_published_days(int year, string observed)
    {
        var holidays = FederalHolidays.Of(year);

        Assert.Equal(Names, holidays.Select(h => h.Name));
        Assert.Equal(observed.Split(' ').Select(Date), holidays.Select(h => h.Observed));
    }

    // https://gist.github.com/tillahoffmann/809742bfcc835c1968be455216e6eb45 (read), taken from the history that the
    // Office of Personnel Management publishes: 2022 and 2023 as kept. Its 31 December 2022 for New Year's Day of 2022
    // is a slip for 2021 and left out here.
    [Theory]
    [InlineData(2022, "2022-01-17 2022-02-21 2022-05-30 2022-06-20 2022-07-04 2022-09-05 2022-10-10 2022-11-11 2022-11-24 2022-12-26")]
    [InlineData(2023, "2023-01-02 2023-01-16 2023-02-20 2023-05-29 2023-06-19 2023-07-04 2023-09-04 2023-10-09 2023-11-10 2023-11-23 2023-12-25")]
    public void Were_kept_on_the_days_that_history_records(int year, string observed)
    {
        var days = observed.Split(' ').Select(Date).ToList();

        Assert.Equal(days, FederalHolidays.Of(year).Select(h => h.Observed).TakeLast(days.Count));
    }

    [Fact]
    public void Have_dates_of_their_own_beside_the_days_on_which_they_are_kept()
    {
        var moved = FederalHolidays.Of(2027).Where(h => h.Date != h.Observed).Select(h => (h.Name, h.Date));

        Assert.Equal(
            [
                ("Juneteenth National Independence Day", new DateOnly(2027, 6, 19)),
                ("Independence Day", new DateOnly(2027, 7, 4)),
                ("Christmas Day", new DateOnly(2027, 12, 25)),
            ],
            moved);
    }

    [Fact]
    public void Are_eleven_a_year_in_date_order_and_never_kept_on_a_weekend() =>
        Gen.Int[2021, 2400].Sample(year =>
        {
            var holidays = FederalHolidays.Of(year);
            return holidays.Count == 11
                && holidays.Zip(holidays.Skip(1)).All(pair => pair.First.Date < pair.Second.Date)
                && holidays.All(h => h.Date.Year == year && h.Observed.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday))
                && holidays.All(h => Math.Abs(h.Observed.DayNumber - h.Date.DayNumber) <= 1);
        });

    // Pub. L. 117-17, signed on 17 June 2021 (from memory).
    [Fact]
    public void Hold_Juneteenth_from_2021_on()
    {
        Assert.DoesNotContain(FederalHolidays.Of(2020), h => h.Date.Month == 6);
        Assert.Contains(FederalHolidays.Of(2021), h => h.Date == new DateOnly(2021, 6, 19) && h.Observed == new DateOnly(2021, 6, 18));
    }

    [Fact]
    public void Of_a_school_year_are_those_kept_inside_it()
    {
        var range = new DayRange(new DateOnly(2027, 9, 7), new DateOnly(2027, 12, 31));

        Assert.Equal(
            [new DateOnly(2027, 10, 11), new DateOnly(2027, 11, 11), new DateOnly(2027, 11, 25), new DateOnly(2027, 12, 24), new DateOnly(2027, 12, 31)],
            FederalHolidays.ObservedIn(range).Select(h => h.Observed));
    }

    [Fact]
    public void Are_not_found_in_a_year_that_only_holds_the_date_and_not_the_day_kept() =>
        Assert.DoesNotContain(FederalHolidays.ObservedIn(new DayRange(new DateOnly(2028, 1, 1), new DateOnly(2028, 12, 31))), h => h.Name == "New Year's Day");

    [Fact]
    public void Found_in_a_range_are_the_same_day_by_day() =>
        Gen.Select(Gen.Int[0, 2_000], Gen.Int[0, 500]).Sample((from, length) =>
        {
            var range = new DayRange(new DateOnly(2025, 1, 1).AddDays(from), new DateOnly(2025, 1, 1).AddDays(from + length));
            return FederalHolidays.ObservedIn(range).SequenceEqual(range.Days().SelectMany(d => FederalHolidays.ObservedIn(new DayRange(d, d))));
        });
}
