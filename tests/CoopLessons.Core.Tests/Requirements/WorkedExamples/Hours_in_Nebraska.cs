using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>Neb. Rev. Stat. §§ 79-101(5)-(8), 79-211; 92 NAC 13 § 004.01, statute text: 1,032 hours in grades 1 to 8, 1,080 in 9 to 12.</summary>
public sealed class Hours_in_Nebraska
{
    private static readonly DateOnly First = new(2025, 8, 4);

    // 205 × 300 = 61,500 minutes = 1,025 h.
    [Fact]
    public void Of_1_025_lack_7_in_grade_8_and_55_in_grade_9_and_kindergarten_asks_none()
    {
        var log = new StateLog().Write(First, 205, 300);
        log.Under("US-NE", "exempt-school", StateLog.InGrade(8)).Line("hours-1-8").AssertShort(61_500, 420);
        log.Under("US-NE", "exempt-school", StateLog.InGrade(9)).Line("hours-9-12").AssertShort(61_500, 3_300);
        Assert.Equal(Verdict.NotAsked, log.Under("US-NE", "exempt-school", StateLog.InGrade(0)).Verdict);
    }

    [Fact]
    public void Are_added_as_minutes_so_that_203_days_of_305_lack_five_minutes()
    {
        // Days rounded to 5.1 h would sum to 1,035.3 h and pass.
        var standing = new StateLog().Write(First, 203, 305).Under("US-NE", "exempt-school", StateLog.InGrade(8));
        standing.Line("hours-1-8").AssertShort(61_915, 5);
    }

    [Fact]
    public void Are_cut_down_to_273_of_365_days_for_a_start_in_October_as_advice_alone()
    {
        // 61,920 × 273 / 365 = 46,312.8 minutes = 771.88 h, rounded up to the minute.
        var october = new DateOnly(2025, 10, 1);
        var log = new StateLog().Write(october, 150, 300);
        var line = log.Under("US-NE", "exempt-school", StateLog.InGrade(8), span: s => s with { From = october }).Line("hours-1-8");
        Assert.Equal((Verdict.ForYouToJudge, 46_313, 61_920), (line.Verdict, line.ProRated!.Value.Value, line.Target!.Value.Value));
        Assert.Equal(new DayRange(october, new DateOnly(2026, 6, 30)), line.Window.Asked);
    }
}
