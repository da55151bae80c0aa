using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>O.C.G.A. § 20-2-690(c)(5), read in a school district's copy: the equivalent of 180 days of at least four and a half hours.</summary>
public sealed class Days_in_Georgia
{
    private static readonly DayRange Declared = new(new DateOnly(2025, 9, 1), new DateOnly(2026, 8, 31));

    // 150 × 300 + 28 × 270 + 20 × 240 = 45,000 + 7,560 + 4,800 = 57,360 minutes = 956 h on 198 days.
    private static readonly StateLog Log = new StateLog { School = new TeachingCalendar(Declared, Weekdays.MondayToFriday, []) }
        .Write(Declared.First, 150, 300)
        .Write(Declared.First.AddDays(150), 28, 270)
        .Write(Declared.First.AddDays(178), 20, 240);

    [Fact]
    public void Of_at_least_270_minutes_are_150_and_28_of_198_two_short_beside_956_hours()
    {
        var standing = Log.Under("US-GA", "home-study", StateLog.Wren(new DateOnly(2015, 3, 1), 4), new DateOnly(2026, 9, 15));
        standing.Line("days").AssertShort(178, 2);
        Assert.EndsWith("20 logged days stay under 4:30 hours and do not count.", standing.Line("days").Why, StringComparison.Ordinal);
        standing.Line("hours").AssertMet(57_360);
        Assert.False(standing.Line("hours").Counts);
        Assert.Contains("2 days of at least 4:30 hours are missing: 178 of 180 (O.C.G.A. § 20-2-690(c)).", standing.Sentence, StringComparison.Ordinal);
    }
}
