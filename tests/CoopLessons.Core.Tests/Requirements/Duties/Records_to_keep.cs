using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class Records_to_keep
{
    private static readonly Pathway WithRecords = Pathway() with
    {
        Records =
        [
            new("log", "a log of days", FigureStatus.Required, Somewhere, KeepYears: 2),
            new("tests", "test results", FigureStatus.Required, Somewhere, KeepAlways: true),
            new("samples", "samples of work", FigureStatus.Required, Somewhere),
        ],
    };

    [Fact]
    public void Are_kept_for_years_for_good_or_for_no_given_time() =>
        Assert.Equal(
            [("log", KeepingTime.ToADay, Day("2029-06-04")), ("tests", KeepingTime.Always, null), ("samples", KeepingTime.NotGiven, (DateOnly?)null)],
            RecordsList.Of([Under(WithRecords)], Year).Select(r => (r.Record.Id, r.Time, r.Until)));

    [Fact]
    public void Are_those_of_the_pathways_that_the_year_meets_each_once()
    {
        var first = Under(WithRecords, until: "2026-10-31");
        var back = Under(WithRecords, "2027-02-01");
        var gone = Under(WithRecords, "2020-09-01", "2024-06-01", code: "US-GA");

        Assert.Equal(3, RecordsList.Of([back, gone, first], Year).Count);
        Assert.Empty(RecordsList.Of([gone], Year));
    }

    [Fact]
    public void To_February_29_are_kept_to_the_28th_of_a_common_year() =>
        Assert.Equal(Day("2030-02-28"), RecordsList.Of([Under(WithRecords)], From("2027-08-30", "2028-02-29"))[0].Until);
}
