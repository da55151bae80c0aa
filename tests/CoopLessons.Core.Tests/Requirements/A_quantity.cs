using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements;

public sealed class A_quantity
{
    [Theory]
    [InlineData(0, Measure.Minutes, "0 hours")]
    [InlineData(1, Measure.Minutes, "0:01 hours")]
    [InlineData(60, Measure.Minutes, "1 hour")]
    [InlineData(61, Measure.Minutes, "1:01 hours")]
    [InlineData(120, Measure.Minutes, "2 hours")]
    [InlineData(1_650, Measure.Minutes, "27:30 hours")]
    [InlineData(62_400, Measure.Minutes, "1,040 hours")]
    [InlineData(60_165, Measure.Minutes, "1,002:45 hours")]
    [InlineData(0, Measure.Days, "0 days")]
    [InlineData(1, Measure.Days, "1 day")]
    [InlineData(180, Measure.Days, "180 days")]
    [InlineData(1, Measure.Months, "1 month")]
    [InlineData(9, Measure.Months, "9 months")]
    public void Is_told_in_its_unit(int value, Measure measure, string words) => Assert.Equal(words, new Quantity(value, measure).ToString());

    [Theory]
    [InlineData(247.5, 14_850)]
    [InlineData(1_062, 63_720)]
    [InlineData(0.25, 15)]
    public void Of_hours_is_whole_minutes(double hours, int minutes) => Assert.Equal(new Quantity(minutes, Measure.Minutes), Quantity.OfHours((decimal)hours));

    [Fact]
    public void Of_a_length_in_minutes_is_that_length() => Assert.Equal(new Quantity(605, Measure.Minutes), Quantity.Of(new Minutes(605)));

    [Theory]
    [InlineData(370, 400, 30)]
    [InlineData(400, 400, 0)]
    [InlineData(401, 400, 0)]
    public void Misses_to_a_figure_what_is_left_and_never_less_than_nothing(int value, int figure, int missing) =>
        Assert.Equal(new Quantity(missing, Measure.Days), new Quantity(value, Measure.Days).MissingTo(new Quantity(figure, Measure.Days)));
}
