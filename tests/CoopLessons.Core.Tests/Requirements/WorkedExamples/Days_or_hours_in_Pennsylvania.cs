using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>24 P.S. § 13-1327.1(c), statute text quoted in a form: 180 days, or 900 hours at the elementary and 990 at the secondary level; nothing counts before the affidavit.</summary>
public sealed class Days_or_hours_in_Pennsylvania
{
    private static readonly DateOnly Affidavit = new(2025, 8, 4);

    // Before it 4 × 330; after it 150 × 330 + 26 × 360 = 58,860 minutes = 981 h on 176 days.
    private static readonly StateLog Log = new StateLog()
        .Write(new DateOnly(2025, 7, 28), 4, 330)
        .Write(Affidavit, 150, 330)
        .Write(Affidavit.AddDays(150), 26, 360);

    [Fact]
    public void Of_176_and_981_reach_neither_side_in_grade_7()
    {
        var standing = Of(7);
        standing.Line("days").AssertShort(176, 4);
        standing.Line("hours-secondary").AssertShort(58_860, 540);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
    }

    [Fact]
    public void Of_176_and_981_are_enough_through_the_hours_in_grade_6()
    {
        var standing = Of(6);
        standing.Line("days").AssertShort(176, 4);
        standing.Line("hours-elementary").AssertMet(58_860);
        Assert.Equal(Verdict.Met, standing.Verdict);
    }

    [Fact]
    public void Would_be_180_and_1_003_with_the_work_before_the_affidavit()
    {
        var standing = Log.Under("US-PA", "home-education", StateLog.InGrade(7));
        standing.Line("days").AssertMet(180);
        standing.Line("hours-secondary").AssertMet(60_180);
    }

    private static PathwayStanding Of(int grade) =>
        Log.Under("US-PA", "home-education", StateLog.InGrade(grade), span: s => s with { CountsFrom = Affidavit });
}
