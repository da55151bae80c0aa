using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests.Credits;

public class A_transcript
{
    private static readonly GradeAverage None = GradeAverage.Of(GradeScale.Plain, []);

    private static TranscriptLine Line(CourseArea area, int? awarded) =>
        new("A course", area, CourseLevel.Usual, CreditBasis.Hours, Minutes.Zero, null, awarded is { } credits ? new CreditCount(credits) : null, awarded is null ? "in progress" : "A");

    private static readonly Transcript Two = new(
        new TranscriptHeading("Alder home school", "", "Wren", null, null, "Parent or guardian"),
        [
            new TranscriptYear("2026–27", 9, [Line(CourseArea.Science, 100), Line(CourseArea.English, 75)], None),
            new TranscriptYear("2027–28", 10, [Line(CourseArea.Science, 50), Line(CourseArea.Arts, null)], None),
        ],
        GradeScale.Plain, None, [], new DateOnly(2028, 1, 2));

    [Fact]
    public void Adds_up_what_was_awarded_by_year_by_area_and_in_all()
    {
        Assert.Equal(["1.75", "0.50"], Two.Years.Select(y => y.Awarded.Text));
        Assert.Equal([(CourseArea.English, "0.75"), (CourseArea.Science, "1.50")], Two.ByArea.Select(a => (a.Area, a.Awarded.Text)));
        Assert.Equal(("2.25", 4), (Two.Awarded.Text, Two.Courses));
    }

    [Theory]
    [InlineData(2025, 5, 30, "2024–25")]
    [InlineData(2025, 6, 30, "2024–25")]
    [InlineData(2025, 7, 1, "2025–26")]
    [InlineData(2000, 1, 1, "1999–00")]
    public void Calls_a_year_that_nobody_named_by_the_months_from_July_to_June(int year, int month, int day, string name)
    {
        var date = new DateOnly(year, month, day);
        Assert.Equal(name, Transcript.YearOf(date));
        Assert.Equal(new DayRange(new DateOnly(month >= 7 ? year : year - 1, 7, 1), new DateOnly(month >= 7 ? year + 1 : year, 6, 30)), Transcript.MonthsOf(date));
    }

    [Fact]
    public void Says_each_method_and_marks_common_practice_as_such()
    {
        Assert.Contains("120 hours", CreditWords.Method(CreditBasis.Hours, CreditCount.CarnegieUnit, 300), StringComparison.Ordinal);
        Assert.Contains("150:00 hours", CreditWords.Method(CreditBasis.Hours, new Minutes(150 * 60), 300), StringComparison.Ordinal);
        Assert.Contains("3 college credits make 1 credit (common practice, no source)", CreditWords.Method(CreditBasis.CollegeCourse, CreditCount.CarnegieUnit, 300), StringComparison.Ordinal);
        Assert.Contains("3.5 college credits", CreditWords.Method(CreditBasis.CollegeCourse, CreditCount.CarnegieUnit, 350), StringComparison.Ordinal);
    }
}
