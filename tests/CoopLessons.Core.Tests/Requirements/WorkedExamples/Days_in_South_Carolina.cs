using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>S.C. Code §§ 59-65-40, -45, -47, a copy and a reprint of the statute: 180 days, under the district of at least four and a half hours without lunch and recess.</summary>
public sealed class Days_in_South_Carolina
{
    // 92 days in each half of the year: 92 × 270, then 84 × 270 and 8 of 300 minutes less 35 of lunch: 49,640 minutes.
    private static readonly StateLog Log = new StateLog()
        .Write(new DateOnly(2025, 8, 4), 92, 270)
        .Write(new DateOnly(2026, 1, 5), 84, 270)
        .Write(new DateOnly(2026, 3, 30), 8, 300 - 35);

    [Fact]
    public void Of_at_least_270_minutes_lack_4_under_the_district_whatever_the_827_hours()
    {
        var standing = Of("option-1-district");
        standing.Line("days").AssertShort(176, 4);
        Assert.Equal(49_640, Log.Entries.Sum(e => e.Learners[0].Minutes.Value));
        Assert.EndsWith("8 logged days stay under 4:30 hours and do not count.", standing.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_any_length_are_184_under_an_association_92_in_each_half()
    {
        var standing = Of("option-3-association");
        standing.Line("days").AssertMet(184);
        Assert.Equal(Verdict.Met, standing.Verdict);
        Assert.Equal([92, 92], new[] { new DayRange(StateLog.Year.First, new DateOnly(2025, 12, 31)), new DayRange(new DateOnly(2026, 1, 1), StateLog.Year.Last) }
            .Select(half => SchoolDays.Of(HoursLedger.Of(AlderLog.Wren, AlderLog.Subjects, half, Log.Entries), new Minutes(60), Log.Marks).Strict));
    }

    [Fact]
    public void Of_the_named_association_are_its_own_figure_and_no_requirement()
    {
        var standing = Of("option-2-scaihs");
        standing.Line("days").AssertMet(184);
        Assert.False(standing.Line("days").Counts);
        Assert.Equal(Verdict.NotAsked, standing.Verdict);
    }

    private static PathwayStanding Of(string option) => Log.Under("US-SC", option, StateLog.Aged(9, 3));
}
