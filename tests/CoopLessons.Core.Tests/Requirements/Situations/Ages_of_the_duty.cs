using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

public sealed class Ages_of_the_duty
{
    // 8 NYCRR 100.10 and N.Y. Educ. Law § 3205: to the last day of the school year in which the child turns 16.
    [Theory]
    [InlineData("2010-01-10", true)]
    [InlineData("2009-07-01", true)]
    [InlineData("2010-06-30", true)]
    [InlineData("2009-06-30", false)]
    public void End_in_New_York_with_the_year_in_which_the_16th_birthday_falls(string born, bool asked)
    {
        var window = new StateLog().Under("US-NY", "home-instruction", Born(born, 10)).Window;
        Assert.Equal(asked ? StateLog.Year : (DayRange?)null, window.Asked);
    }

    [Theory]
    [InlineData("2019-12-01", true)]
    [InlineData("2019-12-02", false)]
    public void Begin_in_New_York_with_the_year_in_which_a_child_is_6_by_1_December(string born, bool asked)
    {
        var standing = new StateLog().Under("US-NY", "home-instruction", Born(born, 0));
        Assert.Equal(asked, standing.Window.Asked is not null);
        if (!asked)
            Assert.Equal("Nothing is asked of Wren in this year: Wren was not 6 by 1 December 2025, so the duty begins with the next year.", standing.Sentence);
    }

    // Ind. Code § 20-33-2-6, as the catalog takes it: bound from the fall of the school year in which a child turns 7, so
    // 7 by the 30 June that ends it.
    [Theory]
    [InlineData("2025-07-01", "2019-06-30", true)]
    [InlineData("2025-07-01", "2019-07-01", false)]
    [InlineData("2025-08-11", "2019-06-30", true)]
    [InlineData("2025-08-11", "2019-07-01", false)]
    [InlineData("2025-09-08", "2019-06-30", true)]
    public void Begin_in_Indiana_with_the_year_in_which_a_child_turns_7(string first, string born, bool asked) =>
        Assert.Equal(asked, Window("US-IN", "nonaccredited-nonpublic", first, born).Asked is not null);

    // HRS § 302A-1132: 5 on or before 31 July of the school year; Ark. Code § 6-18-201 with 1 August, a summary.
    [Theory]
    [InlineData("US-HI", "home-school", "2025-08-04", "2020-07-31", true)]
    [InlineData("US-HI", "home-school", "2025-08-04", "2020-08-01", false)]
    [InlineData("US-AR", "home-school", "2025-08-18", "2020-08-01", true)]
    [InlineData("US-AR", "home-school", "2025-08-18", "2020-08-02", false)]
    [InlineData("US-AR", "home-school", "2025-07-07", "2020-08-01", true)]
    public void Begin_where_a_date_in_summer_decides_with_the_year_after_it(string code, string pathway, string first, string born, bool asked) =>
        Assert.Equal(asked, Window(code, pathway, first, born).Asked is not null);

    // Fla. Stat. § 1003.21(1): 6 by 1 February of the school year.
    [Theory]
    [InlineData("2020-02-01", true)]
    [InlineData("2020-02-02", false)]
    public void Begin_in_Florida_with_the_year_whose_first_of_February_decides(string born, bool asked) =>
        Assert.Equal(asked, Window("US-FL", "private-tutor", "2025-08-11", born).Asked is not null);

    [Fact]
    public void Come_before_the_grade_so_that_a_child_too_young_is_asked_nothing_whose_grade_nobody_set()
    {
        var standing = new StateLog().Under("US-NE", "exempt-school", StateLog.Wren(new DateOnly(2022, 3, 1), null));
        Assert.Equal(Verdict.NotAsked, standing.Verdict);
    }

    private static LegalWindow Window(string code, string pathway, string first, string born)
    {
        var day = Date(first);
        return new StateLog { School = new TeachingCalendar(new DayRange(day, day.AddYears(1).AddDays(-1)), Weekdays.MondayToFriday, []) }
            .Under(code, pathway, Born(born, 1), day.AddDays(60)).Window;
    }

    private static Core.Requirements.LearnerFacts Born(string iso, int grade) => StateLog.Wren(Date(iso), grade);

    private static DateOnly Date(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
