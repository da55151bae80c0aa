using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.WorkedExamples;

/// <summary>K.S.A. 72-3115, statute text, which binds public schools; the six-hour day is the state office's. A home school is substantially equivalent: no row is a requirement.</summary>
public sealed class The_public_term_of_Kansas
{
    private static readonly DateOnly First = new(2025, 8, 4);

    [Fact]
    public void In_grade_5_is_reached_through_1_175_hours_with_150_days_of_six()
    {
        // 150 × 360 + 50 × 330 = 70,500 minutes.
        var standing = Of(5, new StateLog().Write(First, 150, 360).Write(First.AddDays(150), 50, 330));
        standing.Line("days-186").AssertShort(150, 36);
        standing.Line("hours-1116").AssertMet(70_500);
        AssertGoal(standing, "days-or-hours", Verdict.Met);
    }

    [Fact]
    public void In_grade_12_is_181_days_and_1_086_hours_exactly()
    {
        var standing = Of(12, new StateLog().Write(First, 181, 360));
        standing.Line("days-181").AssertMet(181);
        standing.Line("hours-1086").AssertMet(65_160);
        AssertGoal(standing, "days-or-hours-12", Verdict.Met);
    }

    [Fact]
    public void In_grade_11_lacks_5_days_and_30_hours_with_the_log_of_grade_12()
    {
        var standing = Of(11, new StateLog().Write(First, 181, 360));
        standing.Line("days-186").AssertShort(181, 5);
        standing.Line("hours-1116").AssertShort(65_160, 1_800);
        AssertGoal(standing, "days-or-hours", Verdict.NotMet);
    }

    [Fact]
    public void In_grade_11_is_reached_without_one_day_of_six_hours()
    {
        // 180 × 359 + 10 × 250 = 67,120 minutes = 1,118 h 40 min.
        var standing = Of(11, new StateLog().Write(First, 180, 359).Write(First.AddDays(180), 10, 250));
        standing.Line("days-186").AssertShort(0, 186);
        standing.Line("hours-1116").AssertMet(67_120);
        AssertGoal(standing, "days-or-hours", Verdict.Met);
    }

    [Fact]
    public void In_kindergarten_is_186_days_of_any_length_or_465_hours_from_seven_on()
    {
        var log = new StateLog().Write(First, 186, 150);
        var standing = log.Under("US-KS", "naps", StateLog.Aged(7, 0));
        standing.Line("days-186-k").AssertMet(186);
        standing.Line("hours-465").AssertMet(27_900);
        AssertGoal(standing, "days-or-hours-k", Verdict.Met);
        log.Under("US-KS", "naps", StateLog.Aged(6, 0)).Line("days-or-hours-k").AssertNotAsked();
    }

    private static PathwayStanding Of(int grade, StateLog log) => log.Under("US-KS", "naps", StateLog.Aged(grade + 5, grade));

    // The whole stays for the family to judge, whatever a figure says that binds others.
    private static void AssertGoal(PathwayStanding standing, string id, Verdict verdict)
    {
        Assert.Equal((verdict, false), (standing.Line(id).Verdict, standing.Line(id).Counts));
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
    }
}
