using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>C.R.S. § 22-33-104.5(3)(c), (5), read in a federal office's opinion and in summaries: 172 days that average four hours, so 172 × 240 = 41,280 minutes.</summary>
public sealed class Days_and_their_average_in_Colorado
{
    private static readonly DateOnly First = new(2025, 8, 4);

    [Fact]
    public void Of_172_at_240_minutes_reach_both_exactly()
    {
        var standing = Of(new StateLog().Write(First, 172, 240));
        standing.Line("days").AssertMet(172);
        standing.Line("daily-average").AssertMet(41_280);
        Assert.Equal(Verdict.Met, standing.Verdict);
    }

    [Fact]
    public void Of_176_with_41_400_minutes_reach_both_though_the_days_average_under_four_hours()
    {
        // 164 × 240 + 12 × 170 = 41,400; over 176 days 235.2 minutes a day.
        var standing = Of(new StateLog().Write(First, 164, 240).Write(First.AddDays(164), 12, 170));
        standing.Line("days").AssertMet(176);
        standing.Line("daily-average").AssertMet(41_400);
        Assert.EndsWith("Over the 176 days taught that is 3:55 hours a day on average, under the 4 hours of the law.", standing.Line("daily-average").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_165_at_255_minutes_reach_the_average_and_lack_7_days()
    {
        var standing = Of(new StateLog().Write(First, 165, 255));
        standing.Line("daily-average").AssertMet(42_075);
        standing.Line("days").AssertShort(165, 7);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
    }

    [Fact]
    public void Are_not_asked_of_a_child_of_six()
    {
        var standing = new StateLog().Write(First, 10, 60).Under("US-CO", "home-based", StateLog.Aged(6, 1));
        standing.Line("days").AssertNotAsked();
        standing.Line("daily-average").AssertNotAsked();
    }

    private static PathwayStanding Of(StateLog log) => log.Under("US-CO", "home-based", StateLog.Aged(9, 3));
}
