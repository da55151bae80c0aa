using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>RSMo § 167.012.2(2), of which a summary was read, and § 167.013.2(2)-(3), statute text: 1,000 hours, 600 of core, 400 of core at home.</summary>
public sealed class Hours_in_Missouri
{
    private const string Home = "home-school";

    // Core at home 149 × 150 = 22,350 and elsewhere 96 × 150 = 14,400; other at home 145 × 87 = 12,615 and elsewhere
    // 120 × 90 = 10,800. Before the year, in June 2025, core at home 12 × 150 = 1,800.
    private static readonly StateLog Log = new StateLog()
        .Write(new DateOnly(2025, 9, 1), 149, 150)
        .Write(new DateOnly(2025, 9, 1), 96, 150, place: Place.Coop)
        .Write(new DateOnly(2025, 10, 1), 145, 87, StateLog.Other)
        .Write(new DateOnly(2025, 10, 1), 120, 90, StateLog.Other, Place.Elsewhere)
        .Write(new DateOnly(2025, 6, 2), 12, 150);

    [Theory]
    [InlineData(Home)]
    [InlineData("fpe-school")]
    public void Of_which_372_and_a_half_were_core_at_home_lack_27_and_a_half(string pathway)
    {
        var standing = Log.Under("US-MO", pathway, StateLog.Aged(12));
        standing.Line("hours").AssertMet(22_350 + 14_400 + 12_615 + 10_800);
        standing.Line("core-hours").AssertMet(22_350 + 14_400);
        standing.Line("core-hours-home").AssertShort(22_350, 1_650);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
        Assert.Contains("27:30 hours of core at home are missing: 372:30 of 400 (RSMo § 167.01", standing.Sentence, StringComparison.Ordinal);
        Assert.Contains("Met: 1,002:45 of 1,000 hours; 612:30 of 600 hours of core.", standing.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_the_year_before_would_have_been_enough() =>
        Assert.Equal(24_150, Log.Entries.Where(e => e.Split[0].SubjectId == StateLog.Core.Id && e.Place == Place.Home).Sum(e => e.Learners[0].Minutes.Value));

    [Theory]
    [InlineData(16)]
    [InlineData(6)]
    public void Are_asked_of_nobody_below_7_or_from_16_on(int age)
    {
        var standing = Log.Under("US-MO", Home, StateLog.Aged(age));
        Assert.All(standing.Lines, l => l.AssertNotAsked());
        Assert.Equal(Verdict.NotAsked, standing.Verdict);
    }
}
