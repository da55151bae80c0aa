using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

public sealed class What_the_log_cannot_decide
{
    private static readonly DateOnly First = new(2025, 9, 1);

    [Fact]
    public void Is_a_figure_that_is_set_locally_until_the_family_enters_it()
    {
        var log = new StateLog().Write(First, 120, 300);
        var open = log.Under("US-WV", "approval", StateLog.InGrade(5));
        Assert.Equal(Verdict.ForYouToJudge, open.Verdict);
        Assert.Equal("120 days so far (W. Va. Code § 18-8-1(c)(1)). The figure is set locally: ask your office, and enter it here.", open.Sentence);

        var known = new StateLog { Choices = PathwayChoices.None with { Figures = new Dictionary<string, decimal> { ["days"] = 130 } } }.Write(First, 120, 300);
        known.Under("US-WV", "approval", StateLog.InGrade(5)).Line("days").AssertShort(120, 10);
    }

    [Fact]
    public void Is_what_hangs_on_a_grade_that_nobody_set()
    {
        var standing = new StateLog().Write(First, 220, 300).Under("US-NE", "exempt-school", StateLog.Aged(10));
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
        Assert.Equal("It depends on the grade, and none is set for Wren (92 NAC 13 § 004.01; Neb. Rev. Stat. §§ 79-101(7), 79-211).", standing.Sentence);

        var either = new StateLog().Write(First, 150, 300).Under("US-PA", "home-education", StateLog.Aged(10));
        Assert.Equal("One of these is enough (24 P.S. § 13-1327.1(c)). 30 days are missing: 150 of 180. Or: It depends on the grade, and none is set for Wren.", either.Sentence);
    }

    [Fact]
    public void Are_hours_of_subjects_that_match_none_of_the_familys()
    {
        var span = new PathwaySpan("US-MO", "Missouri", Catalog.Of50AndDc["US-MO"]!.Pathway("home-school")!, StateLog.Year.First, null, SpanReason.Begins, null, PathwayChoices.None);
        var standing = new StateLog().Write(First, 220, 300).Under(span, StateLog.InGrade(5));
        standing.Line("hours").AssertMet(66_000);
        Assert.Equal(Verdict.ForYouToJudge, standing.Line("core-hours").Verdict);
        Assert.Contains("match them first", standing.Line("core-hours").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_nothing_where_a_grade_is_asked_for_no_figure()
    {
        var standing = new StateLog().Write(First, 100, 300).Under("US-NE", "exempt-school", StateLog.InGrade(0));
        Assert.Equal("Nebraska gives Wren no number of days or hours in this grade.", standing.Sentence);
    }

    [Fact]
    public void Is_said_beside_a_figure_that_binds_others()
    {
        var standing = new StateLog().Write(First, 150, 300).Under("US-WY", "home-based", StateLog.InGrade(5));
        Assert.Equal("Wyoming gives Wren no binding number of days or hours under this pathway; it is for you to judge. Beside a figure that binds others: 25 days are missing: 150 of 175 (Wyo. Stat. § 21-4-301).", standing.Sentence);
        Assert.Equal(Verdict.NotAsked, standing.Verdict);
    }

    [Fact]
    public void Is_said_beside_a_figure_that_binds_under_a_condition()
    {
        // Ohio Admin. Code 3301-35-08(B): 455 hours where the school runs a half-day kindergarten; rule text.
        var standing = new StateLog().Write(First, 150, 300).Under("US-OH", "nonchartered-nonpublic-school", StateLog.InGrade(0));
        Assert.Equal("Ohio gives Wren no binding number of days or hours in this grade; it is for you to judge. Beside a figure that binds where the school runs a half-day kindergarten: 750 of 455 hours: met (Ohio Admin. Code 3301-35-08(B)).", standing.Sentence);
    }

    // 14 Del. C. § 2703A(b)(3) stands from memory in the catalog; RSMo § 167.012.2(2) in a summary, to be confirmed.
    [Fact]
    public void Rests_on_figures_from_memory_which_are_told_apart()
    {
        Assert.Equal(
            ["Regular and thorough instruction: from memory. Confirm with the state's office."],
            new StateLog().Under("US-DE", "district-coordinated", StateLog.InGrade(5)).Doubts);
        Assert.Equal(
            ["Hours of instruction, hours in core subjects and hours in core subjects at the regular home: not found in official text, or readings differ. Confirm with the state's office."],
            new StateLog().Under("US-MO", "home-school", StateLog.InGrade(5)).Doubts);
        Assert.Empty(new StateLog().Under("US-WI", "home-based-private", StateLog.InGrade(5)).Doubts);
        Assert.Empty(new StateLog().Under("US-MO", "home-school", StateLog.Aged(5, 0)).Doubts);
    }

    [Fact]
    public void Becomes_a_figure_that_counts_when_the_family_takes_it_as_its_goal()
    {
        var log = new StateLog { Choices = PathwayChoices.None with { Goals = new HashSet<string> { "days" } } }.Write(First, 150, 300);
        var standing = log.Under("US-TN", "accredited-distance", StateLog.InGrade(5));
        standing.Line("days").AssertShort(150, 30);
        Assert.Equal(Verdict.NotMet, standing.Verdict);
        Assert.Equal(["School days: from memory. Confirm with the state's office."], standing.Doubts);
    }
}
