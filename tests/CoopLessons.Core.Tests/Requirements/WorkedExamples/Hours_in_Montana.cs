using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>MCA §§ 20-5-109, 20-1-301(2), statute text: 720 hours in grades 1 to 3, 1,080 in 4 to 12; 1,050 may be enough for a graduating senior.</summary>
public sealed class Hours_in_Montana
{
    // 177 × 360 + 210 = 63,930 minutes = 1,065.5 h; in July 2026, the next fiscal year, 4 × 240 = 16 h.
    private static readonly DateOnly First = new(2025, 8, 4);

    [Fact]
    public void Of_grade_4_lack_14_and_a_half_since_July_is_the_next_year()
    {
        var standing = Of(4, PathwayChoices.None);
        standing.Line("hours-1080").AssertShort(63_930, 870);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
        Assert.StartsWith("14:30 hours are missing: 1,065:30 of 1,080", standing.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_grade_3_are_enough()
    {
        var standing = Of(3, PathwayChoices.None);
        standing.Line("hours-1-3").AssertMet(63_930);
        Assert.Equal(Verdict.Met, standing.Verdict);
    }

    [Fact]
    public void Of_grade_12_are_enough_where_the_family_says_that_the_pupil_graduates()
    {
        var graduates = PathwayChoices.None with { Goals = new HashSet<string> { "hours-1050" } };
        Of(12, graduates).Line("hours-1050").AssertMet(63_930);
        Assert.Equal(Verdict.Met, Of(12, graduates).Verdict);
        Of(12, PathwayChoices.None).Line("hours-1080").AssertShort(63_930, 870);
        Assert.Equal(Verdict.NotMet, Of(12, PathwayChoices.None).Verdict);
    }

    private static PathwayStanding Of(int grade, PathwayChoices choices) => new StateLog { Choices = choices }
        .Write(First, 177, 360)
        .Write(First.AddDays(177), 1, 210)
        .Write(new DateOnly(2026, 7, 6), 4, 240)
        // Born on 2 September, so that a senior of 15 is still of the age of duty.
        .Under("US-MT", "home-school", StateLog.Wren(new DateOnly(grade == 12 ? 2010 : 2020 - grade, 9, 2), grade));
}
