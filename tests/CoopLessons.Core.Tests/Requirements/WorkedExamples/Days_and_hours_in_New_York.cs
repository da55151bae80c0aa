using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>8 NYCRR 100.10(f)(1)-(2) and (g), read in a school district's reprint: 180 days; 900 or 990 hours, of which a quarter's share is a guide.</summary>
public sealed class Days_and_hours_in_New_York
{
    // 247.5 h, 242 h, 241.5 h and 260 h 40 min: 59,500 minutes on 181 days.
    private static readonly StateLog Log = FirstThree().Write(new DateOnly(2026, 4, 1), 46, 340);

    [Fact]
    public void Of_grade_7_are_181_and_59_500_minutes_and_two_quarters_lie_under_their_share()
    {
        var standing = Log.Under("US-NY", "home-instruction", StateLog.InGrade(7));
        standing.Line("days").AssertMet(181);
        standing.Line("hours-7-12").AssertMet(59_500);
        var quarters = standing.Line("quarter-hours-7-12");
        Assert.Equal([14_850, 14_520, 14_490, 15_640], quarters.Parts.Select(p => p.Measured!.Value.Value));
        Assert.Equal([0, 330, 360, 0], quarters.Parts.Select(p => p.Missing!.Value.Value));
        Assert.False(quarters.Counts);
    }

    [Fact]
    public void Of_grade_6_are_held_against_900_and_225_a_quarter()
    {
        var standing = Log.Under("US-NY", "home-instruction", StateLog.InGrade(6));
        standing.Line("hours-1-6").AssertMet(59_500);
        Assert.StartsWith("Met: 181 of 180 days; 991:40 of 900 hours. For you to judge: ", standing.Sentence, StringComparison.Ordinal);
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
        Assert.All(standing.Line("quarter-hours-1-6").Parts, p => Assert.Equal(Verdict.Met, p.Verdict));
        standing.Line("hours-7-12").AssertNotAsked();
    }

    [Fact]
    public void Of_kindergarten_are_days_alone()
    {
        var standing = Log.Under("US-NY", "home-instruction", StateLog.InGrade(0));
        standing.Line("days").AssertMet(181);
        standing.Line("hours-1-6").AssertNotAsked();
        standing.Line("hours-7-12").AssertNotAsked();
    }

    [Fact]
    public void With_two_days_fewer_in_the_last_quarter_lack_one_day_and_580_minutes()
    {
        var standing = FirstThree().Write(new DateOnly(2026, 4, 1), 44, 340).Under("US-NY", "home-instruction", StateLog.InGrade(7));
        standing.Line("days").AssertShort(179, 1);
        standing.Line("hours-7-12").AssertShort(58_820, 580);
        Assert.Contains("1 day is missing: 179 of 180 (8 NYCRR § 100.10(f)(1)).", standing.Sentence, StringComparison.Ordinal);
        Assert.Contains("9:40 hours are missing: 980:20 of 990", standing.Sentence, StringComparison.Ordinal);
    }

    private static StateLog FirstThree() => new StateLog()
        .Write(new DateOnly(2025, 7, 1), 45, 330)
        .Write(new DateOnly(2025, 10, 1), 44, 330)
        .Write(new DateOnly(2026, 1, 2), 46, 315);
}
