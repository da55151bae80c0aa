using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>RCW 28A.225.010(4), a reprint; WAC 180-90-160(1), official: 1,000 hours at home; 180 days or 1,000 hours in an extension of a private school.</summary>
public sealed class Hours_or_days_in_Washington
{
    private static readonly DateOnly First = new(2025, 8, 4);

    // 180 × 320 = 57,600 minutes = 960 h.
    private static readonly StateLog Short = new StateLog().Write(First, 180, 320);

    [Fact]
    public void Are_hours_alone_at_home_so_that_180_days_of_960_hours_lack_40()
    {
        var standing = Short.Under("US-WA", "home-based-instruction", StateLog.Aged(8, 3));
        standing.Line("hours").AssertShort(57_600, 2_400);
        Assert.Equal("40 hours are missing: 960 of 1,000 (RCW 28A.225.010(4); WAC 180-90-160(1)(b)).", standing.Sentence);
    }

    [Fact]
    public void Are_enough_at_home_on_150_days_of_400_minutes() =>
        new StateLog().Write(First, 150, 400).Under("US-WA", "home-based-instruction", StateLog.Aged(8, 3)).Line("hours").AssertMet(60_000);

    [Fact]
    public void Are_enough_through_the_days_in_an_extension_of_a_private_school()
    {
        var standing = Short.Under("US-WA", "private-school-extension", StateLog.Aged(8, 3));
        standing.Line("days").AssertMet(180);
        standing.Line("hours").AssertShort(57_600, 2_400);
        Assert.Equal(Verdict.Met, standing.Verdict);
    }

    [Fact]
    public void Are_not_asked_of_a_child_of_seven() =>
        Assert.Equal(Verdict.NotAsked, Short.Under("US-WA", "home-based-instruction", StateLog.Aged(7, 2)).Verdict);
}
