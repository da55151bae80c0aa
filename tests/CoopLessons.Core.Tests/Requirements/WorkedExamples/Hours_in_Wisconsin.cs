using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>Wis. Stat. § 118.165(1)(c), statute text: 875 hours = 52,500 minutes in a school year; breaks are no instruction (state guide).</summary>
public sealed class Hours_in_Wisconsin
{
    private static readonly DateOnly First = new(2025, 8, 4);

    [Fact]
    public void Of_175_days_with_lunch_taken_out_are_875_exactly()
    {
        // 345 minutes less 45 of lunch and breaks; as they stand they would be 60,375 minutes = 1,006.25 h.
        var standing = Of(new StateLog().Write(First, 175, 345 - 45));
        standing.Line("hours").AssertMet(52_500);
        Assert.Equal(1_006.25m, new Minutes(175 * 345).DecimalHours);
    }

    [Fact]
    public void Of_174_days_at_301_minutes_lack_126_minutes() =>
        Of(new StateLog().Write(First, 174, 301)).Line("hours").AssertShort(52_374, 126);

    [Fact]
    public void Are_enough_on_140_days_as_well()
    {
        var standing = Of(new StateLog().Write(First, 140, 375));
        standing.Line("hours").AssertMet(52_500);
        Assert.Equal(Verdict.Met, standing.Verdict);
    }

    private static PathwayStanding Of(StateLog log) => log.Under("US-WI", "home-based-private", StateLog.Aged(10, 4));
}
