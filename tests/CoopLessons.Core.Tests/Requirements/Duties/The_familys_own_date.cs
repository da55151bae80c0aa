using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class The_familys_own_date
{
    [Fact]
    public void Wins_over_a_computed_one_and_is_shown_as_such()
    {
        var notice = Only(Paper(On("10-01")) with { Lead = 7 }, dates: Own("US-NY/home/paper/1", "2026-09-20"));

        Assert.Equal((Day("2026-09-20"), Day("2026-09-13"), DueOrigin.SetByFamily), (notice.Due, notice.BeginBy, notice.Origin));
        Assert.Equal("Your own date; otherwise 1 October: by 1 October.", notice.Why);
    }

    [Fact]
    public void Stands_where_the_event_has_not_been_told()
    {
        var notice = Only(Paper(After(LegalEvent.FormReceived, 14)), dates: Own("US-NY/home/paper/1", "2026-09-20"));

        Assert.Equal((Day("2026-09-20"), null, DueOrigin.SetByFamily), (notice.Due, notice.Missing, notice.Origin));
    }

    [Fact]
    public void Stands_where_the_law_names_none()
    {
        var test = Only(Paper(new InYear()) with { Lead = 60 });

        Assert.Equal((null, null, DueOrigin.None, null), (test.Due, test.BeginBy, test.Origin, test.Missing));
        Assert.Equal("Once in the school year; the law names no date.", test.Why);
        Assert.Equal(Day("2027-04-01"), Only(Paper(new InYear()) with { Lead = 60 }, dates: Own("US-NY/home/paper/1", "2027-04-01")).Due);
    }

    [Fact]
    public void Is_left_out_when_the_learner_has_moved_away_before_it() =>
        Assert.Empty(List(Under(Pathway(Paper(On("10-01"))), until: "2026-12-31"), dates: Own("US-NY/home/paper/1", "2027-01-05")));

    // 8 NYCRR § 100.10(g): four reports on dates that the parent sets in the plan.
    [Fact]
    public void Replaces_a_proposed_end_of_a_term_and_leaves_the_others()
    {
        // 278 days from August 31 to June 4: their quarters end after 70, 140, 209 and 278 days.
        var span = Under(Pathway(Paper(new InTerms(4), id: "reports"), Paper(new WithDuty("reports"), id: "assessment")));
        var list = List(span, dates: Own("US-NY/home/reports/2", "2027-01-29"));

        Assert.Equal(
            [("2026-11-08", DueOrigin.Proposed), ("2027-01-29", DueOrigin.SetByFamily), ("2027-03-27", DueOrigin.Proposed), ("2027-06-04", DueOrigin.Proposed)],
            list.Where(d => d.Duty.Id == "reports").Select(d => ($"{d.Due:yyyy-MM-dd}", d.Origin)));
        Assert.All(list.Where(d => d.Duty.Id == "reports"), d => Assert.Equal(4, d.Of));
    }

    // 8 NYCRR § 100.10(h): the assessment with the fourth quarterly report.
    [Fact]
    public void Of_the_last_report_takes_along_what_is_due_with_it()
    {
        var span = Under(Pathway(Paper(new WithDuty("reports"), id: "assessment"), Paper(new InTerms(4), id: "reports")));

        var proposed = List(span).Single(d => d.Duty.Id == "assessment");
        Assert.Equal((Day("2027-06-04"), DueOrigin.Proposed), (proposed.Due, proposed.Origin));
        var set = List(span, dates: Own("US-NY/home/reports/4", "2027-06-18")).Single(d => d.Duty.Id == "assessment");
        Assert.Equal((Day("2027-06-18"), DueOrigin.Computed), (set.Due, set.Origin));
        Assert.Equal("Together with “a paper” (number 4 of 4) on 18 June.", set.Why);
    }

    [Fact]
    public void Is_missing_on_both_while_a_paper_waits_for_one_that_waits()
    {
        var span = Under(Pathway(Paper(After(LegalEvent.FormReceived, 14), id: "plan"), Paper(new WithDuty("plan"), id: "test")));

        Assert.All(List(span), d => Assert.Equal((null, LegalEvent.FormReceived), (d.Due, d.Missing)));
    }

    [Fact]
    public void Ends_no_round_of_papers_that_wait_for_each_other()
    {
        var span = Under(Pathway(Paper(new WithDuty("b"), id: "a"), Paper(new WithDuty("a"), id: "b")));

        Assert.Equal(["a", "b"], List(span).Where(d => d.Due is null).Select(d => d.Duty.Id));
    }
}
