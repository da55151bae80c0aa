using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

public sealed class The_laws_year_beside_the_familys
{
    private static readonly DayRange July = StateLog.Year;

    [Theory]
    [InlineData("2025-08-01", "2026-05-31", "2025-10-01")]
    [InlineData("2025-08-01", "2026-05-31", "2026-06-15")]
    [InlineData("2025-08-01", "2026-05-31", "2026-07-15")]
    [InlineData("2025-08-01", "2026-05-31", "2025-07-15")]
    [InlineData("2025-08-01", "2026-07-31", "2026-06-30")]
    [InlineData("2025-08-01", "2026-07-31", "2026-07-10")]
    [InlineData("2025-09-01", "2026-08-31", "2026-07-10")]
    [InlineData("2025-09-01", "2026-08-31", "2026-09-10")]
    [InlineData("2025-07-01", "2026-06-30", "2026-07-01")]
    public void Is_the_one_begun_in_July_before_wherever_the_school_year_lies(string first, string last, string asOf)
    {
        var standing = Of(Range(first, last)).Under("US-WI", "home-based-private", StateLog.InGrade(5), Date(asOf));
        Assert.Equal(July, standing.Window.Year);
        Assert.Equal(July, standing.Window.Asked);
        Assert.Empty(standing.Window.Why);
    }

    [Fact]
    public void Counts_the_weeks_before_the_first_school_day_and_not_those_of_the_next_year()
    {
        var log = Of(Range("2025-08-01", "2026-07-31")).Write(new DateOnly(2025, 7, 7), 10, 300).Write(new DateOnly(2026, 7, 6), 10, 300);
        Assert.Equal(3_000, log.Under("US-WI", "home-based-private", StateLog.InGrade(5), new DateOnly(2026, 7, 20)).Line("hours").Measured!.Value.Value);
    }

    [Fact]
    public void Runs_on_after_the_last_teaching_day()
    {
        var log = Of(Range("2025-08-01", "2026-05-31")).Write(new DateOnly(2025, 8, 4), 100, 300);
        var june = log.Under("US-WI", "home-based-private", StateLog.InGrade(5), new DateOnly(2026, 6, 15));
        Assert.Equal(Verdict.Behind, june.Verdict);
        Assert.Equal("500 of 875 hours, and no teaching day is left in your calendar (Wis. Stat. § 118.165(1)(c)).", june.Sentence);
        Assert.Equal(Verdict.NotMet, log.Under("US-WI", "home-based-private", StateLog.InGrade(5), new DateOnly(2026, 7, 1)).Verdict);
    }

    // Ala. Code § 16-28-5: 140 days of three hours in each calendar year; statute text.
    [Theory]
    [InlineData("2025-11-20", 2025, 90)]
    [InlineData("2026-03-20", 2026, 60)]
    public void Of_a_tutor_in_Alabama_is_the_calendar_year_in_which_today_lies(string asOf, int year, int days)
    {
        var log = Of(Range("2025-08-11", "2026-05-29")).Write(new DateOnly(2025, 8, 11), 90, 180).Write(new DateOnly(2026, 1, 5), 60, 200);
        var standing = log.Under("US-AL", "private-tutor", StateLog.InGrade(5), Date(asOf), s => s with { From = new DateOnly(2024, 8, 12) });
        Assert.Equal(new DayRange(new DateOnly(year, 1, 1), new DateOnly(year, 12, 31)), standing.Window.Year);
        Assert.False(standing.Window.IsPartial);
        Assert.Equal(days, standing.Line("days").Measured!.Value.Value);
    }

    [Fact]
    public void Of_a_tutor_in_Alabama_is_a_part_where_home_instruction_began_in_August()
    {
        var standing = Of(Range("2025-08-11", "2026-05-29")).Write(new DateOnly(2025, 8, 11), 90, 180).Under("US-AL", "private-tutor", StateLog.InGrade(5), new DateOnly(2025, 11, 20));
        Assert.Equal(new DayRange(new DateOnly(2025, 8, 11), new DateOnly(2025, 12, 31)), standing.Window.Asked);
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
    }

    [Fact]
    public void Is_the_familys_where_the_law_fixes_none()
    {
        var school = Range("2025-08-11", "2026-05-29");
        Assert.Equal(school, Of(school).Under("US-ND", "home-education", StateLog.InGrade(5)).Window.Year);
    }

    [Fact]
    public void Is_read_from_the_log_far_enough_for_every_span()
    {
        var school = Range("2025-08-11", "2026-05-29");
        var tutor = Catalog.Of50AndDc["US-AL"]!.Pathway("private-tutor")!;
        var span = new PathwaySpan("US-AL", "Alabama", tutor, school.First, null, SpanReason.Begins, null, PathwayChoices.None);
        Assert.Equal(Range("2025-01-01", "2026-12-31"), LegalWindow.Reach([span], school));
        Assert.Equal(school, LegalWindow.Reach([], school));
    }

    private static StateLog Of(DayRange school) => new() { School = new TeachingCalendar(school, Weekdays.MondayToFriday, []) };

    private static DayRange Range(string first, string last) => new(Date(first), Date(last));

    private static DateOnly Date(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
