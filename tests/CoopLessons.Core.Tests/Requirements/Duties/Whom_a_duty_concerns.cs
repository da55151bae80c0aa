using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class Whom_a_duty_concerns
{
    private static readonly Duty Notice = Paper(On("09-15"));

    private static LearnerFacts Born(string day) => Wren with { BirthDate = Day(day) };

    private static PathwaySpan Ages(int? from = null, string? by = null, int? to = null, DutyEnd ends = DutyEnd.Birthday, Duty? duty = null, string since = "2020-09-01") =>
        Under(Pathway(duty ?? Notice) with { Ages = new(Somewhere, from, MonthDay.TryParse(by, out var date) ? date : null, to, ends) }, since);

    // The tests of 8 NYCRR § 100.10(h)(2), read in a summary: a narrative may do in grades 1 to 3, a test is asked in 9 to 12.
    [Fact]
    public void Two_children_of_different_grades_have_different_lists()
    {
        var span = Under(Pathway(
            Paper(On("06-30"), id: "narrative") with { Grades = Grades.Parse("1-3") },
            Paper(On("06-30"), id: "test") with { Grades = Grades.Parse("9-12") }));

        Assert.Equal(["narrative"], List(span, learner: Wren with { Grade = 2 }).Select(d => d.Duty.Id));
        Assert.Equal(["test"], List(span, learner: Wren with { Grade = 9 }).Select(d => d.Duty.Id));
        Assert.Empty(List(span, learner: Wren with { Grade = 5 }));
    }

    [Fact]
    public void A_grade_not_told_lists_the_duty_and_says_what_decides()
    {
        var test = Only(Paper(On("06-30")) with { Grades = Grades.Parse("3,5,8") }, learner: Wren with { Grade = null });

        Assert.Equal("By 30 June; the grade decides whether it is asked (3,5,8).", test.Why);
    }

    // Neb. Rev. Stat. § 79-201: six before January 1 of the school year binds for the whole of it
    // (https://nebraskalegislature.gov/laws/statutes.php?statute=79-201).
    [Theory]
    [InlineData("2020-12-31", true)]
    [InlineData("2021-01-01", false)]
    [InlineData("2019-06-01", true)]
    public void A_child_of_that_age_by_the_date_is_bound_for_the_whole_year(string born, bool bound) =>
        Assert.Equal(bound, List(Ages(from: 6, by: "12-31"), learner: Born(born)).Count == 1);

    [Theory]
    [InlineData("2021-06-04", true)]
    [InlineData("2021-06-05", false)]
    public void Without_such_a_date_the_birthday_must_come_before_the_year_is_over(string born, bool bound) =>
        Assert.Equal(bound, List(Ages(from: 6), learner: Born(born)).Count == 1);

    // N.Y. Educ. Law § 3205, read in a summary: to the end of the school year in which the pupil turns 16; a birthday on
    // or after July 1 means one more year.
    [Theory]
    [InlineData("2010-06-30", false)]
    [InlineData("2010-07-01", true)]
    [InlineData("2011-06-30", true)]
    public void The_end_of_the_year_in_which_a_birthday_falls_may_end_the_duty(string born, bool bound) =>
        Assert.Equal(bound, List(Ages(to: 16, ends: DutyEnd.Year), learner: Born(born)).Count == 1);

    [Fact]
    public void A_duty_that_ends_on_a_birthday_is_gone_in_a_year_that_begins_on_it()
    {
        Assert.Empty(List(Ages(to: 16), learner: Born("2010-08-31")));
        Assert.Single(List(Ages(to: 16), learner: Born("2010-09-01")));
        Assert.Equal("By 15 September; the law's ages have ended for the child by then.", Assert.Single(List(Ages(to: 16), learner: Born("2010-09-01"))).Why);
    }

    [Theory]
    [InlineData("2018-08-31", false)]
    [InlineData("2018-09-01", true)]
    public void A_duty_may_have_ages_of_its_own(string born, bool asked) =>
        Assert.Equal(asked, List(Under(Pathway(Notice with { UnderAge = 8 })), learner: Born(born)).Count == 1);

    [Fact]
    public void Born_on_February_29_turns_older_on_March_1_of_a_common_year()
    {
        // From memory: a leap-day child's years are full on March 1 where there is no February 29.
        var child = Born("2016-02-29");

        Assert.Equal(Day("2027-03-01"), Assert.Single(List(Ages(duty: Paper(new OnBirthday(11))), learner: child)).Due);
        Assert.Equal(Day("2028-02-29"), Assert.Single(List(Ages(duty: Paper(new OnBirthday(12))), From("2027-08-30", "2028-06-02"), learner: child)).Due);
    }

    // La. R.S. 17:236.1, read in a summary: a paper when the child is 11.
    [Fact]
    public void A_birthday_stands_in_its_own_year_alone_and_is_marked_as_telling()
    {
        var span = Ages(duty: Paper(new OnBirthday(11), Repeats.Yearly));
        var row = Assert.Single(List(span));

        Assert.Equal((Day("2027-04-09"), "On the day on which the child turns 11.", true), (row.Due, row.Why, row.TellsBirthDate));
        Assert.Empty(List(span, From("2027-08-30", "2028-06-02")));
        Assert.False(Only(Notice).TellsBirthDate);
    }

    // Minn. Stat. § 120A.24, subd. 1(a): the first report by October 1 of the first school year after age 7
    // (https://www.revisor.mn.gov/statutes/2011/cite/120A.24).
    [Fact]
    public void A_paper_of_the_beginning_waits_for_the_age_of_a_child_taught_before_it()
    {
        var span = Ages(from: 7, by: "09-01", duty: Paper(On("10-01"), Repeats.Once), since: "2024-09-03");
        var child = Born("2019-05-05");

        Assert.Empty(List(span, From("2025-09-02", "2026-06-05"), learner: child));
        Assert.Equal(Day("2026-10-01"), Assert.Single(List(span, learner: child)).Due);
        Assert.Empty(List(span, From("2027-09-07", "2028-06-02"), learner: child));
    }

    [Fact]
    public void Days_counted_from_a_birthday_are_marked_as_telling_it()
    {
        var row = Assert.Single(List(Ages(from: 8, duty: Paper(After(LegalEvent.Begin, 14), Repeats.Once)), learner: Born("2018-11-03")));

        Assert.Equal((Day("2026-11-17"), "14 days after the law's ages began for the child on 3 November.", true), (row.Due, row.Why, row.TellsBirthDate));
    }

    [Fact]
    public void A_child_of_age_by_summer_is_first_taught_when_the_school_year_begins()
    {
        var row = Assert.Single(List(Ages(from: 8, duty: Paper(After(LegalEvent.Begin, 14), Repeats.Once)), learner: Born("2018-07-20")));

        Assert.Equal(Day("2026-09-14"), row.Due);
    }

    [Fact]
    public void A_child_of_age_by_next_years_date_is_not_bound_before_that_year()
    {
        var untilMidJuly = From("2026-07-15", "2027-07-14");

        Assert.Empty(List(Ages(from: 6, by: "12-31"), untilMidJuly, learner: Born("2021-03-03")));
        Assert.Single(List(Ages(from: 6, by: "12-31"), untilMidJuly, learner: Born("2020-03-03")));
    }

    [Fact]
    public void The_first_year_may_be_free()
    {
        var span = Under(Pathway(Notice with { NotFirstYear = true }), "2025-09-02");

        Assert.Empty(List(span, From("2025-09-02", "2026-06-05")));
        Assert.Single(List(span));
    }

    [Fact]
    public void Papers_of_others_and_voluntary_ones_stand_with_the_rest()
    {
        var span = Under(Pathway(Notice with { ByOthers = true }, Notice with { Id = "second", Voluntary = true }, Notice with { Id = "third", When = "only if asked" }));

        Assert.Equal(["paper", "second", "third"], List(span).Select(d => d.Duty.Id));
    }
}
