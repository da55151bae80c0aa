using System.Globalization;
using CoopLessons.Core.Calendar;
using CsCheck;

namespace CoopLessons.Core.Tests.Calendar;

public class A_week_of_ISO_8601
{
    private static readonly Gen<DateOnly> Dates = Gen.Int[0, 150_000].Select(n => new DateOnly(1900, 1, 1).AddDays(n));

    private static DateOnly Date(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    // 1985-W15-5: ISO 8601:2000(E), 5.2.3.1, http://www.webaugur.com/bibliotheca/standards/iso8601/154N362/index-18.html (read);
    //   that it is 12 April 1985, as in the standard's other examples: from memory.
    // 2004-12-31 to 2010-12-31 and 2009-W53-7: https://rdrr.io/cran/ISOweek/man/ISOweek2date.html and
    //   https://rdrr.io/pkg/ISOweek/man/ISOweek.html (read).
    // 2008-12-29: https://content.helpme-codesys.com/en/libs/Util/Current/TimerSwitch/Functions/WeekOfYear.html (read).
    // 2006-12-31: http://world.clndr.org/calendars/ISO-week-date-calendar (read).
    // 2012-12-31, 2013-12-30, 2014-12-29: https://docslib.org/doc/11249519/iso-8601-rule-for-defining-weeknumbers (read).
    // 2019-12-30: https://wikisum.wiki/wiki/ISO_8601_week_notation (read).
    // 2005-01-01, 2005-01-02: from memory. All of them also as GNU date 9.1 gives them: date -d 2005-01-01 +%G-W%V-%u
    [Theory]
    [InlineData("1985-04-12", "1985-W15", 5)]
    [InlineData("2004-12-31", "2004-W53", 5)]
    [InlineData("2005-01-01", "2004-W53", 6)]
    [InlineData("2005-01-02", "2004-W53", 7)]
    [InlineData("2005-12-31", "2005-W52", 6)]
    [InlineData("2006-12-31", "2006-W52", 7)]
    [InlineData("2007-12-31", "2008-W01", 1)]
    [InlineData("2008-12-29", "2009-W01", 1)]
    [InlineData("2008-12-31", "2009-W01", 3)]
    [InlineData("2009-12-31", "2009-W53", 4)]
    [InlineData("2010-01-03", "2009-W53", 7)]
    [InlineData("2010-12-31", "2010-W52", 5)]
    [InlineData("2012-12-31", "2013-W01", 1)]
    [InlineData("2013-12-30", "2014-W01", 1)]
    [InlineData("2014-12-29", "2015-W01", 1)]
    [InlineData("2019-12-30", "2020-W01", 1)]
    public void Is_numbered_as_published(string date, string week, int day)
    {
        var found = Week.Of(Date(date));

        Assert.Equal(week, found.Iso);
        Assert.Equal(Date(date), found.Monday.AddDays(day - 1));
    }

    [Fact]
    public void Has_number_one_where_it_holds_the_years_first_Thursday() =>
        Dates.Sample(date =>
        {
            var week = Week.Of(date);
            var thursday = week.Monday.AddDays(3);
            return week.Year == thursday.Year && week.Number == (thursday.DayOfYear - 1) / 7 + 1;
        });

    [Fact]
    public void Runs_from_Monday_to_Sunday_and_holds_the_date_it_was_found_by() =>
        Dates.Sample(date =>
        {
            var days = Week.Of(date).Days;
            return days.First.DayOfWeek == DayOfWeek.Monday && days.Count == 7 && days.Contains(date);
        });

    [Fact]
    public void Is_followed_by_the_next_without_gap_and_comes_back_by_the_previous() =>
        Dates.Sample(date =>
        {
            var week = Week.Of(date);
            return week.Next.Monday == week.Days.Last.AddDays(1) && week.Next.Previous == week && week.Previous.Next == week;
        });

    [Fact]
    public void Is_read_back_as_it_is_written() =>
        Dates.Sample(date => Week.TryParse(Week.Of(date).ToString(), out var week) && week == Week.Of(date));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("2026")]
    [InlineData("2026-48")]
    [InlineData("2026W48")]
    [InlineData("2026-w48")]
    [InlineData("2026-W4")]
    [InlineData("2026-W00")]
    [InlineData("2026-W54")]
    [InlineData("2026-W48-1")]
    [InlineData("2026-W+8")]
    [InlineData(" 026-W48")]
    [InlineData("1899-W10")]
    [InlineData("9001-W10")]
    [InlineData("2026-WAB")]
    public void Is_not_read_from_anything_else(string? text)
    {
        Assert.False(Week.TryParse(text, out var week));
        Assert.Equal(default, week);
    }

    [Fact]
    public void Has_number_53_only_in_a_year_that_has_it()
    {
        Assert.True(Week.TryParse("2026-W53", out _));
        Assert.False(Week.TryParse("2027-W53", out _));
    }

    // In every 400 years 71 have a week 53: http://world.clndr.org/calendars/ISO-week-date-calendar (read).
    [Fact]
    public void Has_number_53_in_71_of_400_years() =>
        Assert.Equal(71, Enumerable.Range(2000, 400).Count(year => Week.TryParse($"{year}-W53", out _)));
}
