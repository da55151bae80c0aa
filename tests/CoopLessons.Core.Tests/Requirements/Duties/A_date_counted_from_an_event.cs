using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class A_date_counted_from_an_event
{
    // 8 NYCRR § 100.10(b)(2): within 14 days of beginning after the school year has begun
    // (https://www.law.cornell.edu/regulations/new-york/8-NYCRR-100.10).
    [Theory]
    [InlineData(Repeats.Event, "US-NY/home/paper/1/2026-11-01")]
    [InlineData(Repeats.Once, "US-NY/home/paper/1")]
    public void Is_fourteen_days_after_starting_in_mid_year(Repeats repeats, string key)
    {
        var notice = Only(Paper(After(LegalEvent.Begin, 14), repeats), Under(Pathway(), "2026-11-01"));

        Assert.Equal((key, Day("2026-11-15")), (notice.Key, notice.Due));
        Assert.Equal("14 days after home instruction began on 1 November.", notice.Why);
    }

    // N.D.C.C. § 15.1-23-02: within 14 days of establishing residence in a district.
    [Fact]
    public void Is_fourteen_days_after_moving_in()
    {
        var statement = Only(Paper(After(LegalEvent.Move, 14), Repeats.Event), Under(Pathway(), "2027-01-20", because: SpanReason.Moves, code: "US-ND"));

        Assert.Equal(("US-ND/home/paper/1/2027-01-20", Day("2027-02-03")), (statement.Key, statement.Due));
        Assert.Equal("14 days after the family moved on 20 January.", statement.Why);
    }

    [Fact]
    public void Stands_once_for_every_time_that_it_happens()
    {
        var moved = Under(Pathway(Paper(After(LegalEvent.Move, 14), Repeats.Event)), "2026-10-05", because: SpanReason.Moves, code: "US-ND");
        var list = List(moved, dates: Events(Told(LegalEvent.Move, "2027-03-01"), Told(LegalEvent.Move, "2025-12-01")));

        Assert.Equal(
            [("US-ND/home/paper/1/2026-10-05", Day("2026-10-19")), ("US-ND/home/paper/1/2027-03-01", Day("2027-03-15"))],
            list.Select(d => (d.Key, d.Due!.Value)));
    }

    [Fact]
    public void Does_not_stand_while_nothing_has_happened()
    {
        foreach (var legal in new[] { LegalEvent.Move, LegalEvent.Withdrawal, LegalEvent.NoticeReceived, LegalEvent.FormReceived, LegalEvent.End })
            Assert.Empty(List(Under(Pathway(Paper(After(legal, 14), Repeats.Event)))));
    }

    // 16 V.S.A. § 166b: at least 10 business days before beginning. Counted by hand on the calendar of 2026: between
    // August 21 and September 8 lie ten of them, Labor Day (September 7) left out; between November 19 and December 7
    // lie ten, Thanksgiving Day (November 26) left out.
    [Theory]
    [InlineData("2026-09-08", "2026-08-21", "10 business days before home instruction begins on 8 September, with 10 whole ones between.")]
    [InlineData("2026-12-07", "2026-11-19", "10 business days before home instruction begins on 7 December, with 10 whole ones between.")]
    public void Before_a_beginning_leaves_whole_business_days_between(string begins, string due, string why)
    {
        var notice = Only(Paper(Before(LegalEvent.Begin, 10, DueUnit.BusinessDays), Repeats.Once), Under(Pathway(), begins));

        Assert.Equal((Day(due), why), (notice.Due, notice.Why));
    }

    // N.D.C.C. § 15.1-23-02: at least 5 days before home education begins, and once each year after.
    [Fact]
    public void Of_every_year_is_counted_from_the_school_years_first_day_once_instruction_goes_on()
    {
        var statement = Only(Paper(Before(LegalEvent.Begin, 5)));

        Assert.Equal(Day("2026-08-26"), statement.Due);
        Assert.Equal("5 days before the school year begins on 31 August (home instruction itself began in an earlier year).", statement.Why);
    }

    [Fact]
    public void Of_the_beginning_alone_does_not_return_in_later_years()
    {
        var span = Under(Pathway(Paper(After(LegalEvent.Begin, 10), Repeats.Once)), "2025-09-02");

        Assert.Single(List(span, From("2025-09-02", "2026-06-05")));
        Assert.Empty(List(span));
    }

    [Fact]
    public void Is_not_lost_when_instruction_begins_in_the_summer_between_two_years()
    {
        foreach (var begins in new[] { "2026-06-10", "2026-07-20" })
            Assert.Equal(Day(begins).AddDays(10), Only(Paper(After(LegalEvent.Begin, 10), Repeats.Once), Under(Pathway(), begins)).Due);
    }

    [Fact]
    public void Is_counted_from_the_beginning_that_the_family_told()
    {
        var notice = Only(Paper(After(LegalEvent.Begin, 10), Repeats.Event), Under(Pathway(), "2026-08-31"), dates: Events(Told(LegalEvent.Begin, "2026-09-14")));

        Assert.Equal(("US-NY/home/paper/1/2026-09-14", Day("2026-09-24")), (notice.Key, notice.Due));
    }

    [Fact]
    public void Follows_the_day_on_which_a_pathway_was_changed()
    {
        var changed = Only(Paper(After(LegalEvent.Begin, 30), Repeats.Once), Under(Pathway(), "2027-01-04", because: SpanReason.Changes));

        Assert.Equal((Day("2027-02-03"), "30 days after the child came under this pathway on 4 January."), (changed.Due, changed.Why));
    }

    [Theory]
    [InlineData(DueUnit.Weeks, "2026-10-27")]
    [InlineData(DueUnit.Months, "2026-12-29")]
    [InlineData(DueUnit.BusinessDays, "2026-10-05")]
    public void Knows_weeks_months_and_business_days(DueUnit unit, string due) =>
        Assert.Equal(Day(due), Only(Paper(After(LegalEvent.Begin, unit == DueUnit.Months ? 3 : 4, unit), Repeats.Once), Under(Pathway(), "2026-09-29")).Due);

    [Fact]
    public void Knows_the_familys_own_teaching_days()
    {
        var year = From("2026-08-31", "2027-06-04", new Break("apples", new DayRange(Day("2026-10-01"), Day("2026-10-09"))));

        Assert.Equal(Day("2026-10-13"), Only(Paper(After(LegalEvent.Begin, 3, DueUnit.SchoolDays), Repeats.Once), Under(Pathway(), "2026-09-29"), year).Due);
        Assert.Equal(Day("2026-09-29"), Only(Paper(Before(LegalEvent.Begin, 2, DueUnit.SchoolDays), Repeats.Once), Under(Pathway(), "2026-10-13"), year).Due);
        var none = Only(Paper(Before(LegalEvent.YearStart, 5, DueUnit.SchoolDays)));
        Assert.Null(none.Due);
        Assert.Contains("does not have so many teaching days", none.Why, StringComparison.Ordinal);
    }

    // O.C.G.A. § 20-2-690(c), read in a summary: a test at the end of grades 3, 6, 9 and 12.
    [Theory]
    [InlineData(3, true)]
    [InlineData(5, false)]
    [InlineData(6, true)]
    [InlineData(9, true)]
    [InlineData(10, false)]
    [InlineData(12, true)]
    public void At_the_end_of_some_grades_is_the_school_years_last_day(int grade, bool asked)
    {
        var test = Paper(new AtEvent(LegalEvent.YearEnd)) with { Grades = Grades.Parse("3,6,9,12") };
        var list = List(Under(Pathway(test), code: "US-GA"), learner: Wren with { Grade = grade });

        Assert.Equal(asked ? [Day("2027-06-04")] : [], list.Select(d => d.Due!.Value));
    }

    // KRS 159.160, read in a summary: within the first two weeks of the local public schools' year.
    [Fact]
    public void Waits_for_what_only_the_family_can_tell()
    {
        var notice = Paper(After(LegalEvent.PublicSchoolStart, 14));
        var waiting = Only(notice);

        Assert.Equal((null, DueOrigin.None, LegalEvent.PublicSchoolStart), (waiting.Due, waiting.Origin, waiting.Missing));
        Assert.Equal("Tell the day on which the local public schools open: due 14 days after the local public schools open.", waiting.Why);
        var told = Only(notice, dates: Events(Told(LegalEvent.PublicSchoolStart, "2025-08-13"), Told(LegalEvent.PublicSchoolStart, "2026-08-12")));
        Assert.Equal((Day("2026-08-26"), null), (told.Due, told.Missing));
    }

    // RSA 193-A:5, III: notice of termination within 15 days of ending
    // (https://gencourt.state.nh.us/rsa/html/XV/193-A/193-A-5.htm).
    [Theory]
    [InlineData("2027-02-12")]
    [InlineData("2027-02-13")]
    public void On_ending_outlives_the_stay_that_ended(string ended)
    {
        var notice = Only(Paper(After(LegalEvent.End, 15), Repeats.Event), Under(Pathway(), until: "2027-02-12"), dates: Events(Told(LegalEvent.End, ended)));

        Assert.Equal(Day(ended).AddDays(15), notice.Due);
    }

    [Fact]
    public void On_ending_in_the_summer_before_the_school_year_is_there_still()
    {
        var notice = Only(Paper(After(LegalEvent.End, 15), Repeats.Event), Under(Pathway(), until: "2026-07-20"), dates: Events(Told(LegalEvent.End, "2026-07-20")));

        Assert.Equal(Day("2026-08-04"), notice.Due);
        Assert.Empty(List(Under(Pathway(Paper(On("07-01"))), until: "2026-07-20")));
    }

    [Fact]
    public void On_an_ending_between_two_stays_belongs_to_the_stay_that_ended()
    {
        var first = Under(Pathway(Paper(After(LegalEvent.End, 15), Repeats.Event)), until: "2027-02-12");
        var second = first with { Code = "US-ND", From = Day("2027-03-15"), Until = null };

        var notice = Assert.Single(DutyList.Of(Wren, [first, second], Year, Events(Told(LegalEvent.End, "2027-02-14"))));
        Assert.Equal("US-NY/home/paper/1/2027-02-14", notice.Key);
    }

    [Fact]
    public void Of_the_place_is_left_out_where_it_passed_before_the_learner_came()
    {
        var opened = Events(Told(LegalEvent.PublicSchoolStart, "2026-08-12"));
        var late = Under(Pathway(Paper(After(LegalEvent.PublicSchoolStart, 14), id: "schools"), Paper(After(LegalEvent.YearStart, 14), id: "year")), "2026-11-02");

        Assert.Empty(List(late, dates: opened));
        Assert.Equal(["schools", "year"], List(late with { From = Year.Year.First }, dates: opened).Select(d => d.Duty.Id));
    }

    [Fact]
    public void Belongs_to_a_withdrawal_that_came_before_the_first_day_at_home()
    {
        var notice = Only(Paper(After(LegalEvent.Withdrawal, 10), Repeats.Event), Under(Pathway(), "2026-11-02"), dates: Events(Told(LegalEvent.Withdrawal, "2026-10-30")));

        Assert.Equal((Day("2026-11-09"), "10 days after the child left school on 30 October."), (notice.Due, notice.Why));
    }
}
