using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

/// <summary>The sources of the figures stand with the worked examples of each state.</summary>
public sealed class One_log_under_several_laws
{
    [Fact]
    public void Lacks_20_hours_of_core_at_home_in_Missouri_though_all_and_core_are_enough()
    {
        var standing = Under("US-MO", "home-school");
        standing.Line("hours").AssertMet(62_400);
        standing.Line("core-hours").AssertMet(38_400);
        standing.Line("core-hours-home").AssertShort(22_800, 1_200);
        Assert.Equal("20 hours of core at home are missing: 380 of 400 (RSMo § 167.012.2(2)). Met: 1,040 of 1,000 hours; 640 of 600 hours of core.", standing.Sentence);
        Assert.Same(standing.Line("core-hours-home"), standing.Deciding);
    }

    [Fact]
    public void Is_for_the_family_to_judge_in_Kansas_with_the_public_terms_figures_beside_it()
    {
        var standing = Under("US-KS", "naps");
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
        Assert.StartsWith("Instruction is given for a time substantially equivalent to that of the public schools of the district (K.S.A. 72-3120(a)(2)).", standing.Sentence, StringComparison.Ordinal);
        var beside = standing.Others.Single(o => o.Requirement.Id == "days-or-hours");
        Assert.Equal("One of these is enough. 82 days of at least 6 hours are missing: 104 of 186. 56 logged days stay under 6 hours and do not count. Or: 76 hours are missing: 1,040 of 1,116.", beside.Why);
    }

    [Fact]
    public void Is_enough_in_Pennsylvania_through_900_hours_though_20_days_are_missing()
    {
        var standing = Under("US-PA", "home-education");
        standing.Line("days").AssertShort(160, 20);
        Assert.Equal(Verdict.Met, standing.Verdict);
        Assert.Equal("1,040 of 900 hours: met (24 P.S. § 13-1327.1(c)). One is enough.", standing.Sentence);
    }

    [Fact]
    public void Lacks_20_days_in_New_York_and_its_quarters_are_shown()
    {
        var standing = Under("US-NY", "home-instruction");
        standing.Line("days").AssertShort(160, 20);
        standing.Line("hours-1-6").AssertMet(62_400);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
        // 30 days of 450 in September; 74 of 450 and 18 of 300 to 31 December; 30 of 300 and 8 of 150 to 31 March; none after.
        Assert.Equal([13_500, 38_700, 10_200, 0], standing.Line("quarter-hours-1-6").Parts.Select(p => p.Measured!.Value.Value));
        Assert.Equal("225 · 645 · 170 · 0 hours in the 4 parts of the year, beside 225 each.", standing.Line("quarter-hours-1-6").Why);
    }

    [Fact]
    public void Lacks_28_days_of_four_and_a_half_hours_in_Georgia()
    {
        var standing = Under("US-GA", "home-study");
        standing.Line("days").AssertShort(152, 28);
        Assert.Equal("28 days of at least 4:30 hours are missing: 152 of 180 (O.C.G.A. § 20-2-690(c)). 8 logged days stay under 4:30 hours and do not count.", standing.Sentence);
    }

    [Fact]
    public void Of_800_hours_over_150_days_lacks_25_days_in_North_Dakota()
    {
        var standing = new StateLog().Write(new DateOnly(2025, 9, 1), 150, 320).Under("US-ND", "home-education", StateLog.InGrade(5));
        Assert.Equal(Verdict.NotMet, standing.Verdict);
        Assert.Equal("25 days of at least 4 hours are missing: 150 of 175 (N.D.C.C. § 15.1-23-04).", standing.Sentence);
    }

    [Fact]
    public void Of_1_100_hours_over_160_days_lacks_10_days_in_Kentucky()
    {
        // 80 × 410 + 80 × 415 = 66,000 minutes.
        var standing = new StateLog().Write(new DateOnly(2025, 9, 1), 80, 410).Write(new DateOnly(2025, 11, 20), 80, 415).Under("US-KY", "private-school", StateLog.InGrade(5));
        Assert.Equal(Verdict.NotMet, standing.Verdict);
        Assert.Equal("10 days are missing: 160 of 170 (KRS 158.070 and 158.080). Met: 1,100 of 1,062 hours.", standing.Sentence);
    }

    [Fact]
    public void Of_399_hours_of_core_at_home_lacks_one_in_the_singular()
    {
        // Core at home 133 × 180 = 399 h, at the co-op 101 × 120 = 202 h, other 200 × 120 = 400 h.
        var first = new DateOnly(2025, 9, 1);
        var standing = new StateLog().Write(first, 133, 180).Write(first, 101, 120, place: Place.Coop).Write(first, 200, 120, StateLog.Other).Under("US-MO", "home-school", StateLog.InGrade(5));
        Assert.StartsWith("1 hour of core at home is missing: 399 of 400 (RSMo § 167.012.2(2)).", standing.Sentence, StringComparison.Ordinal);
    }

    private static PathwayStanding Under(string code, string pathway) => OneThousandAndFortyHours.Log.Under(code, pathway, StateLog.InGrade(5));
}
