namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>N.D.C.C. § 15.1-23-04, read at a county's school office: 175 days of four hours a day.</summary>
public sealed class Days_in_North_Dakota
{
    [Fact]
    public void Of_at_least_240_minutes_are_160_and_14_one_short_whatever_the_813_and_a_half_hours()
    {
        // 160 × 270 + 14 × 240 + 10 × 225 = 43,200 + 3,360 + 2,250 = 48,810 minutes = 813.5 h.
        var first = new DateOnly(2025, 8, 4);
        var log = new StateLog().Write(first, 160, 270).Write(first.AddDays(160), 14, 240).Write(first.AddDays(174), 10, 225);
        var standing = log.Under("US-ND", "home-education", StateLog.Aged(10, 4));
        Assert.Equal(48_810, log.Entries.Sum(e => e.Learners[0].Minutes.Value));
        standing.Line("days").AssertShort(174, 1);
        Assert.Equal("1 day of at least 4 hours is missing: 174 of 175 (N.D.C.C. § 15.1-23-04). 10 logged days stay under 4 hours and do not count.", standing.Sentence);
    }
}
