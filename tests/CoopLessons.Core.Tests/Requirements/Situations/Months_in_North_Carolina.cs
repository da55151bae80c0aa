using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

/// <summary>N.C.G.S. §§ 115C-548, 115C-556, statute text: at least nine calendar months of the year.</summary>
public sealed class Months_in_North_Carolina
{
    private static readonly DayRange School = new(new DateOnly(2025, 8, 18), new DateOnly(2026, 5, 29));

    [Fact]
    public void Of_which_nine_hold_a_school_day_are_enough()
    {
        var standing = Through("2026-04-01").Under("US-NC", "home-school", StateLog.InGrade(5));
        standing.Line("months").AssertMet(9);
        Assert.Equal("9 of 9 months: met (N.C.G.S. §§ 115C-548, 115C-556).", standing.Sentence);
    }

    [Fact]
    public void Of_which_eight_do_lack_one_when_the_year_is_over()
    {
        var standing = Through("2026-03-31").Under("US-NC", "home-school", StateLog.InGrade(5));
        standing.Line("months").AssertShort(8, 1);
        Assert.StartsWith("1 month is missing: 8 of 9", standing.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_on_pace_while_enough_are_still_to_come()
    {
        // August to December hold a day; January to May are five more.
        var standing = Through("2025-12-19").Under("US-NC", "home-school", StateLog.InGrade(5), new DateOnly(2026, 1, 10));
        Assert.Equal(Verdict.OnPace, standing.Verdict);
        Assert.Equal("5 of 9 months, on pace: 5 months are still to come (N.C.G.S. §§ 115C-548, 115C-556).", standing.Sentence);
        Assert.Null(standing.Line("months").Forecast);
    }

    [Fact]
    public void Are_behind_when_too_few_are_still_to_come()
    {
        // August to October hold a day; of February, March, April and May four are left.
        var standing = Through("2025-10-10").Under("US-NC", "home-school", StateLog.InGrade(5), new DateOnly(2026, 2, 10));
        Assert.Equal(Verdict.Behind, standing.Verdict);
        Assert.Equal("3 of 9 months, behind: only 4 months are still to come (N.C.G.S. §§ 115C-548, 115C-556).", standing.Sentence);
    }

    [Fact]
    public void Count_only_with_a_day_that_reaches_the_familys_minimum()
    {
        var standing = Through("2026-04-01", 59).Under("US-NC", "home-school", StateLog.InGrade(5));
        standing.Line("months").AssertShort(0, 9);
    }

    private static StateLog Through(string last, int minutes = 240) =>
        new StateLog { School = new TeachingCalendar(School, Weekdays.MondayToFriday, []) }.Teach(School.First, DateOnly.ParseExact(last, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), minutes);
}
