using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class A_date_of_every_year
{
    // 8 NYCRR § 100.10(b)(1): notice by July 1 each school year (https://www.law.cornell.edu/regulations/new-york/8-NYCRR-100.10).
    [Fact]
    public void Of_the_summer_is_that_before_the_school_year()
    {
        var notice = Only(Paper(On("07-01")));

        Assert.Equal((Day("2026-07-01"), DueOrigin.Computed, "By 1 July."), (notice.Due, notice.Origin, notice.Why));
    }

    // 24 P.S. § 13-1327.1: the evaluator's certification by June 30 (state office, its pages on home education evaluators).
    [Fact]
    public void Of_June_is_that_at_the_school_years_end() =>
        Assert.Equal(Day("2027-06-30"), Only(Paper(On("06-30"))).Due);

    // Va. Code § 22.1-254.1, read in a summary: evidence of progress by August 1 after the school year.
    [Fact]
    public void Asked_for_after_the_school_year_is_the_first_one_past_its_last_day()
    {
        var progress = Only(Paper(On("08-01", after: true)));

        Assert.Equal((Day("2027-08-01"), "By 1 August 2027, the first after the school year's last day, 4 June."), (progress.Due, progress.Why));
    }

    // 20-A M.R.S. § 5001-A(3)(A)(1)(b): a letter before October 1 (state office, http://maine.gov/doe/index.php/node/566).
    [Fact]
    public void That_is_the_first_day_too_late_is_due_on_the_day_before()
    {
        var letter = Only(Paper(On("10-01", before: true)));

        Assert.Equal((Day("2026-09-30"), "Before 1 October, so by 30 September."), (letter.Due, letter.Why));
    }

    // Delaware's enrollment statement, due October 5 or the Friday before a weekend (state office,
    // https://education.delaware.gov/families/k12/homeschools-and-private-schools/annual-reporting). October 5 was a
    // Saturday in 2024, a Sunday in 2025 and is a Monday in 2026.
    [Theory]
    [InlineData(2024, "2024-10-04", "By 5 October; that is a Saturday, so the Friday before, 4 October.")]
    [InlineData(2025, "2025-10-03", "By 5 October; that is a Sunday, so the Friday before, 3 October.")]
    [InlineData(2026, "2026-10-05", "By 5 October.")]
    public void That_goes_back_to_Friday_does_so_from_a_weekend_alone(int year, string due, string why)
    {
        var statement = Only(Paper(On("10-05", weekend: WeekendRule.FridayBefore)), Under(Pathway(), "2023-09-01"), From($"{year}-08-26", $"{year + 1}-06-05"));

        Assert.Equal((Day(due), why), (statement.Due, statement.Why));
    }

    // 92 NAC 13 § 003, in the state department's instructions: the forms by July 15.
    [Fact]
    public void Is_looked_for_from_July_on_though_the_school_year_begins_in_June()
    {
        var year = From("2026-06-01", "2027-05-28");

        Assert.Equal(Day("2026-07-15"), Only(Paper(On("07-15")), year: year).Due);
        Assert.Equal(Day("2027-06-30"), Only(Paper(On("06-30")), year: year).Due);
    }

    [Fact]
    public void Lies_inside_a_school_year_that_is_a_calendar_year()
    {
        var year = From("2027-01-01", "2027-12-31");

        Assert.Equal(Day("2027-06-30"), Only(Paper(On("06-30")), year: year).Due);
        Assert.Equal(Day("2027-08-01"), Only(Paper(On("08-01")), year: year).Due);
    }

    [Fact]
    public void On_February_29_falls_on_March_1_of_a_common_year() =>
        Assert.Equal(Day("2027-03-01"), Only(Paper(On("02-29"))).Due);

    [Fact]
    public void Leaves_its_lead_before_itself()
    {
        var test = Only(Paper(On("06-30")) with { Lead = 60 });

        Assert.Equal(Day("2027-05-01"), test.BeginBy);
        Assert.Null(Only(Paper(On("06-30"))).BeginBy);
    }

    [Fact]
    public void Is_left_out_where_it_passed_before_the_learner_came()
    {
        Assert.Empty(List(Under(Pathway(Paper(On("07-01"))), "2026-11-01")));
        Assert.Single(List(Under(Pathway(Paper(On("07-01"))), "2026-08-31")));
    }

    [Fact]
    public void Asked_only_once_stays_though_it_passed_before_the_learner_came()
    {
        var report = Only(Paper(On("10-01"), Repeats.Once), Under(Pathway(), "2026-11-01"));

        Assert.Equal((Day("2026-10-01"), "By 1 October; that was before instruction began here, so ask the office."), (report.Due, report.Why));
    }

    [Fact]
    public void Is_left_out_before_its_law_and_after_it()
    {
        var duty = Paper(On("10-01"));

        Assert.Empty(List(Under(Pathway(duty with { From = Day("2026-10-02") }))));
        Assert.Single(List(Under(Pathway(duty with { From = Day("2026-10-01"), Until = Day("2026-10-01") }))));
        Assert.Empty(List(Under(Pathway(duty with { Until = Day("2026-09-30") }))));
    }

    [Fact]
    public void Is_read_from_a_file_of_the_catalog()
    {
        var place = Catalog.Read("""
            {
              "$schema": "jurisdiction.schema.json", "code": "US-NY", "name": "New York",
              "pathways": [{
                "id": "home", "name": "Home instruction", "summary": "One paper.",
                "source": { "cite": "§ 1", "basis": "memory", "checked": "2026-11-25" },
                "ages": { "source": { "cite": "§ 1", "basis": "memory", "checked": "2026-11-25" } },
                "subjects": [], "requirements": [], "records": [], "notes": [],
                "duties": [{
                  "id": "notice", "kind": "notice", "what": "notice", "words": "by 1 July each school year",
                  "due": { "rule": "later-of", "of": [{ "rule": "on", "date": "07-01" }, { "rule": "after", "event": "begin", "count": 2, "unit": "business-days" }] },
                  "repeats": "yearly", "status": "required",
                  "source": { "cite": "§ 1", "basis": "memory", "checked": "2026-11-25" }
                }]
              }]
            }
            """);
        var notice = Assert.Single(List(Under(place.Pathways[0], "2026-09-04", code: place.Code)));

        // Friday September 4; Monday is Labor Day.
        Assert.Equal(("US-NY/home/notice/1", Day("2026-09-09")), (notice.Key, notice.Due));
    }
}
