using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

public sealed class A_part_of_a_year
{
    // RSMo § 167.012.2(2): 60,000, 36,000 and 24,000 minutes between the 7th and the 16th birthday; that the duty ends at
    // 16 stands in a summary. Cutting a figure down to the days is arithmetic, and no law's.
    [Fact]
    public void Before_the_16th_birthday_on_10_January_asks_193_of_365_days_and_leaves_the_verdict_open()
    {
        var standing = new StateLog().Write(new DateOnly(2025, 9, 1), 100, 300).Under("US-MO", "home-school", StateLog.Wren(new DateOnly(2010, 1, 10), 9));
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
        var line = standing.Line("hours");
        Assert.Equal(new DayRange(new DateOnly(2025, 7, 1), new DateOnly(2026, 1, 9)), line.Window.Asked);
        // 60,000 × 193 / 365 = 31,726.03, and so on: rounded up to the minute.
        Assert.Equal([(60_000, 31_727), (36_000, 19_036), (24_000, 12_691)], standing.Lines.Select(l => (l.Target!.Value.Value, l.ProRated!.Value.Value)));
        Assert.Equal(
            "500 of 1,000 hours. Only 1 July 2025 to 9 January 2026 is asked, because the duty ends with Wren's 16th birthday, 10 January 2026. Cut down to those days the figure would be 528:47 hours: arithmetic, not law.",
            line.Why);
    }

    [Fact]
    public void Is_met_all_the_same_where_it_holds_the_full_figure()
    {
        // From 1 July to 9 January 193 days: 134 × 450 = 60,300 minutes of core at home.
        var standing = new StateLog().Write(new DateOnly(2025, 7, 1), 134, 450).Under("US-MO", "home-school", StateLog.Wren(new DateOnly(2010, 1, 10), 9));
        Assert.All(standing.Lines, l => l.AssertMet(60_300));
        Assert.Equal(Verdict.Met, standing.Verdict);
    }

    [Fact]
    public void Does_not_count_what_is_logged_after_it_ended()
    {
        var standing = new StateLog().Write(new DateOnly(2026, 1, 9), 30, 300).Under("US-MO", "home-school", StateLog.Wren(new DateOnly(2010, 1, 10), 9));
        Assert.Equal(300, standing.Line("hours").Measured!.Value.Value);
    }

    [Fact]
    public void Begins_with_the_seventh_birthday_in_the_middle_of_the_year()
    {
        var february = new DateOnly(2026, 2, 1);
        var standing = new StateLog().Write(new DateOnly(2026, 1, 27), 10, 300).Under("US-MO", "home-school", StateLog.Wren(new DateOnly(2019, 2, 1), 1));
        Assert.Equal(new DayRange(february, new DateOnly(2026, 6, 30)), standing.Line("hours").Window.Asked);
        Assert.Equal(5 * 300, standing.Line("hours").Measured!.Value.Value);
        // 60,000 × 150 / 365 = 24,657.5.
        Assert.Equal(24_658, standing.Line("hours").ProRated!.Value.Value);
        Assert.Equal(["the duty begins with Wren's 7th birthday, 1 February 2026"], standing.Line("hours").Window.Why);
    }

    // Whoever is born on 29 February completes a year of life on 1 March of a common year (common practice, no source).
    [Fact]
    public void Begins_on_1_March_for_a_child_of_29_February()
    {
        var leapling = StateLog.Wren(new DateOnly(2020, 2, 29), 0);
        Assert.Equal([new DateOnly(2026, 3, 1), new DateOnly(2028, 2, 29)], new[] { 6, 8 }.Select(leapling.Birthday));
    }

    [Fact]
    public void On_either_side_of_a_move_has_a_window_of_its_own()
    {
        var log = new StateLog().Write(new DateOnly(2026, 1, 22), 20, 300);
        var moved = new DateOnly(2026, 2, 1);
        var missouri = log.Under("US-MO", "home-school", StateLog.InGrade(5), span: s => s with { Until = moved.AddDays(-1) });
        var kansas = log.Under("US-KS", "naps", StateLog.InGrade(5), span: s => s with { From = moved, Because = SpanReason.Moves });

        Assert.Equal(new DayRange(new DateOnly(2025, 7, 1), new DateOnly(2026, 1, 31)), missouri.Window.Asked);
        Assert.Equal(10 * 300, missouri.Line("hours").Measured!.Value.Value);
        Assert.Equal(["this pathway ended on 31 January 2026"], missouri.Window.Why);
        Assert.Equal(new DayRange(moved, StateLog.Year.Last), kansas.Window.Asked);
        Assert.Equal(10 * 300, kansas.Line("hours-1116").Measured!.Value.Value);
        Assert.Equal(["the family moved to Kansas on 1 February 2026"], kansas.Window.Why);
        Assert.Equal([Verdict.ForYouToJudge, Verdict.ForYouToJudge], new[] { missouri.Verdict, kansas.Verdict });
    }

    [Fact]
    public void From_1_November_on_draws_no_verdict_and_shows_what_the_days_would_make()
    {
        var november = new DateOnly(2025, 11, 1);
        var standing = new StateLog().Write(november, 140, 300).Under("US-WI", "home-based-private", StateLog.InGrade(5), span: s => s with { From = november });
        Assert.Equal(Verdict.ForYouToJudge, standing.Verdict);
        // 52,500 × 242 / 365 = 34,808.2 minutes.
        Assert.Equal((42_000, 34_809), (standing.Line("hours").Measured!.Value.Value, standing.Line("hours").ProRated!.Value.Value));
        Assert.Contains("because home instruction began on 1 November 2025. Cut down to those days the figure would be 580:09 hours: arithmetic, not law.", standing.Sentence, StringComparison.Ordinal);
    }

    // Common practice, no source: a beginning within a month of the family's first day is no mid-year start.
    [Theory]
    [InlineData("2025-07-02", false)]
    [InlineData("2025-08-01", false)]
    [InlineData("2025-08-02", true)]
    public void Is_no_part_when_home_instruction_begins_within_a_month_of_the_first_day(string from, bool part)
    {
        var standing = new StateLog().Write(StateLog.Year.First.AddDays(60), 100, 300).Under("US-WI", "home-based-private", StateLog.InGrade(5), span: s => s with { From = DateOnly.Parse(from, null) });
        Assert.Equal(part, standing.Window.IsPartial);
        Assert.Equal(part ? Verdict.ForYouToJudge : Verdict.NotMet, standing.Verdict);
    }

    [Fact]
    public void Is_a_part_from_the_day_of_a_move_on_however_early() =>
        Assert.True(new StateLog().Under("US-WI", "home-based-private", StateLog.InGrade(5), span: s => s with { From = StateLog.Year.First.AddDays(1), Because = SpanReason.Moves }).Window.IsPartial);

    [Fact]
    public void Under_another_pathway_of_the_same_place_says_so()
    {
        var standing = new StateLog().Under("US-WA", "private-school-extension", StateLog.InGrade(5), span: s => s with { From = new DateOnly(2026, 1, 5), Because = SpanReason.Changes });
        Assert.Equal(["this pathway began on 5 January 2026"], standing.Window.Why);
    }
}
