using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

/// <summary>From one place to another on November 1, with fixed dates in both and a notice after moving in.</summary>
public class A_move_in_mid_year
{
    private static readonly PathwaySpan Before = Under(
        Pathway(Paper(On("10-01"), id: "autumn"), Paper(On("06-30"), id: "summer"), Paper(new InTerms(4), id: "reports")), until: "2026-10-31", code: "US-NY");

    private static readonly PathwaySpan After = Under(
        Pathway(Paper(On("10-15"), id: "autumn"), Paper(On("05-15"), id: "spring"), Paper(SmallLaw.After(LegalEvent.Move, 14), Repeats.Event, "arrival")),
        "2026-11-01",
        because: SpanReason.Moves,
        code: "US-ND");

    private static IReadOnlyList<DatedDuty> Both(DutyDates? dates = null) => DutyList.Of(Wren, [After, Before], Year, dates ?? DutyDates.None);

    [Fact]
    public void Leaves_each_place_what_falls_due_while_the_learner_is_there() =>
        Assert.Equal(
            ["US-NY/home/autumn/1", "US-ND/home/arrival/1/2026-11-01", "US-ND/home/spring/1"],
            Both().Select(d => d.Key));

    [Fact]
    public void Gives_a_notice_that_came_before_it_to_the_place_left()
    {
        var answer = Paper(SmallLaw.After(LegalEvent.NoticeReceived, 10), Repeats.Event, "answer");
        var list = DutyList.Of(
            Wren,
            [Before with { Pathway = Pathway(answer) }, After with { Pathway = Pathway(answer) }],
            Year,
            Events(Told(LegalEvent.NoticeReceived, "2026-10-10"), Told(LegalEvent.NoticeReceived, "2026-11-10")));

        Assert.Equal(["US-NY/home/answer/1/2026-10-10", "US-ND/home/answer/1/2026-11-10"], list.Select(d => d.Key));
    }

    [Fact]
    public void And_back_again_gives_keys_of_their_own()
    {
        var home = Under(Pathway(Paper(new InYear())), until: "2026-10-31");
        var back = home with { From = Day("2027-02-01"), Until = null, Because = SpanReason.Moves };

        Assert.Equal(
            ["US-NY/home/paper/1", "US-NY/home/paper/1/2027-02-01"],
            DutyList.Of(Wren, [home, back], Year, DutyDates.None).Select(d => d.Key));
    }

    // N.D.C.C. § 15.1-23-09(2)(b): the claim goes with the statement of intent, at least 5 days before beginning.
    [Fact]
    public void Keeps_what_goes_with_a_paper_that_comes_before_the_first_day()
    {
        var statement = Paper(SmallLaw.Before(LegalEvent.Begin, 5), id: "statement");
        var list = List(After with { Pathway = Pathway(statement, Paper(new WithDuty("statement"), id: "claim")) });

        Assert.Equal([("statement", Day("2026-10-27")), ("claim", Day("2026-10-27"))], list.Select(d => (d.Duty.Id, d.Due!.Value)));
    }

    [Fact]
    public void Keeps_papers_on_beginning_for_the_new_place_too()
    {
        var once = Paper(SmallLaw.After(LegalEvent.Begin, 30), Repeats.Once, "once");
        var list = DutyList.Of(Wren, [Before with { Pathway = Pathway(once) }, After with { Pathway = Pathway(once) }], Year, DutyDates.None);

        Assert.Equal(("US-ND/home/once/1", Day("2026-12-01")), (Assert.Single(list).Key, list[0].Due));
    }
}
