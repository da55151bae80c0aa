using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests.Credits;

public class How_far_a_credit_is
{
    private static CreditForecast Of(int minutes, int aim) => CreditForecast.Of(new Minutes(minutes), new CreditCount(aim), CreditCount.CarnegieUnit);

    [Fact]
    public void Is_what_is_lacking_of_its_hours()
    {
        var forecast = Of(4000, 100);
        Assert.Equal((7200, 3200, "0.55"), (forecast.Needed.Value, forecast.Lacking.Value, forecast.Earned.Text));
    }

    [Fact]
    public void Is_nothing_once_they_are_there() => Assert.Equal((0, 0), (Of(8000, 100).Lacking.Value, Of(8000, 100).AWeekOver(0)!.Value.Value));

    [Fact]
    public void Reaches_its_aim_with_just_the_minutes_that_it_asks_for()
    {
        for (var aim = 1; aim <= CreditCount.Most; aim++)
        {
            var needed = CreditForecast.Of(Minutes.Zero, new CreditCount(aim), new Minutes(7201)).Needed;
            Assert.Equal(aim, CreditCount.ByHours(needed, new Minutes(7201)).Hundredths);
            Assert.Equal(aim - 1, CreditCount.ByHours(new Minutes(needed.Value - 1), new Minutes(7201)).Hundredths);
        }
    }

    [Fact]
    public void Is_divided_over_the_weeks_that_are_left()
    {
        Assert.Equal(320, Of(4000, 100).AWeekOver(10)!.Value.Value);
        Assert.Equal(1067, Of(4000, 100).AWeekOver(3)!.Value.Value);
        Assert.Null(Of(4000, 100).AWeekOver(0));
    }

    [Theory]
    [InlineData("2027-05-31", "2027-05-31", 1)]
    [InlineData("2027-05-24", "2027-05-31", 2)]
    [InlineData("2027-05-25", "2027-05-31", 1)]
    [InlineData("2027-06-01", "2027-05-31", 0)]
    public void Counts_a_begun_week_as_one(string today, string last, int weeks) =>
        Assert.Equal(weeks, CreditForecast.WeeksLeft(DateOnly.Parse(today, System.Globalization.CultureInfo.InvariantCulture), DateOnly.Parse(last, System.Globalization.CultureInfo.InvariantCulture)));
}
