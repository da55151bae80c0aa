using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests.Credits;

/// <summary>
/// Source: Sub. S.B. 55 of the 122nd General Assembly of Ohio, enacting § 3313.603(A) of the Revised Code, read on
/// 28 November 2026 at archives.legislature.state.oh.us: "one unit" is a minimum of 120 hours of course instruction,
/// 150 for a laboratory course; "one-half unit" a minimum of 60.
/// </summary>
public class The_Carnegie_unit
{
    [Theory]
    [InlineData(120, 100)]
    [InlineData(60, 50)]
    public void Is_what_the_statute_says(int hours, int hundredths) =>
        Assert.Equal(hundredths, CreditCount.ByHours(new Minutes(hours * 60), CreditCount.CarnegieUnit).Hundredths);

    [Fact]
    public void Takes_longer_in_a_laboratory_where_a_family_counts_so() =>
        Assert.Equal(100, CreditCount.ByHours(new Minutes(150 * 60), new Minutes(150 * 60)).Hundredths);

    [Theory]
    [InlineData(0, "0.00")]
    [InlineData(71, "0.00")]
    [InlineData(72, "0.01")]
    [InlineData(7199, "0.99")]
    [InlineData(7200, "1.00")]
    [InlineData(10850, "1.50")]
    public void Counts_whole_hundredths_of_72_minutes_and_claims_no_part_of_one(int minutes, string credits) =>
        Assert.Equal(credits, CreditCount.ByHours(new Minutes(minutes), CreditCount.CarnegieUnit).Text);

    // Common practice, no source.
    [Theory]
    [InlineData(300, "1.00")]
    [InlineData(400, "1.33")]
    [InlineData(150, "0.50")]
    public void Is_three_college_credits_as_is_usual(int college, string credits) =>
        Assert.Equal(credits, CreditCount.ByCollege(college, CreditCount.UsualCollegeCredits).Text);

    [Theory]
    [InlineData("1", 100)]
    [InlineData(".5", 50)]
    [InlineData("0,25", 25)]
    [InlineData(" 1.50 ", 150)]
    public void Is_read_as_it_is_typed(string typed, int hundredths)
    {
        Assert.True(CreditCount.TryRead(typed, out var count));
        Assert.Equal(hundredths, count.Hundredths);
    }

    [Theory]
    [InlineData("")]
    [InlineData("one")]
    [InlineData("-1")]
    [InlineData("0.333")]
    [InlineData("1e3")]
    [InlineData("99999999999")]
    public void Is_refused_where_it_is_no_number_of_hundredths(string typed) => Assert.False(CreditCount.TryRead(typed, out _));
}
