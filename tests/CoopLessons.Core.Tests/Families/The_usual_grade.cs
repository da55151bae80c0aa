using CoopLessons.Core.Families;

namespace CoopLessons.Core.Tests.Families;

/// <summary>Common practice, no source: the age on September 1, less five.</summary>
public sealed class The_usual_grade
{
    private static readonly DateOnly July = new(2026, 7, 1);

    [Theory]
    [InlineData("2021-09-01", 0)] // five on the day itself
    [InlineData("2021-09-02", null)] // five a day later
    [InlineData("2020-09-01", 1)]
    [InlineData("2011-02-26", 10)]
    [InlineData("2008-09-02", 12)]
    [InlineData("2008-09-01", null)] // eighteen: past grade 12
    public void Follows_the_age_on_the_first_of_September(string birth, int? grade) =>
        Assert.Equal(grade, UsualGrade.In(July, DateOnly.Parse(birth, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void Of_a_year_that_begins_in_winter_is_that_of_the_autumn_before()
    {
        var birth = new DateOnly(2018, 8, 8);
        Assert.Equal(UsualGrade.In(new DateOnly(2025, 8, 18), birth), UsualGrade.In(new DateOnly(2026, 1, 5), birth));
    }
}
