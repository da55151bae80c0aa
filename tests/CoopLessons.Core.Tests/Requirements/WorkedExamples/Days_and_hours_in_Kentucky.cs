using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>KRS 158.080 and 158.070, copies in a bill and a legislative summary: 170 days and 1,062 hours = 63,720 minutes.</summary>
public sealed class Days_and_hours_in_Kentucky
{
    [Fact]
    public void Of_172_at_370_minutes_are_enough_days_and_lack_80_minutes()
    {
        var standing = Of(172, 370);
        standing.Line("days").AssertMet(172);
        standing.Line("hours").AssertShort(63_640, 80);
        Assert.StartsWith("1:20 hours are missing: 1,060:40 of 1,062 (KRS 158.070 and 158.080). Met: 172 of 170 days.", standing.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_168_at_380_minutes_are_enough_hours_and_lack_2_days()
    {
        var standing = Of(168, 380);
        standing.Line("days").AssertShort(168, 2);
        standing.Line("hours").AssertMet(63_840);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
    }

    [Theory]
    [InlineData(375, 0)]
    [InlineData(374, 140)]
    public void Of_170_at_375_minutes_are_enough_of_both_and_at_374_lack_140_minutes(int minutes, int missing)
    {
        var standing = Of(170, minutes);
        standing.Line("days").AssertMet(170);
        Assert.Equal(missing, standing.Line("hours").Missing!.Value.Value);
        Assert.Equal(missing == 0 ? Verdict.Met : Verdict.NotMet, standing.Verdict);
    }

    private static PathwayStanding Of(int days, int minutes) =>
        new StateLog().Write(new DateOnly(2025, 8, 4), days, minutes).Under("US-KY", "private-school", StateLog.Aged(10, 4));
}
