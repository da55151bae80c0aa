using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Units;

/// <summary>Against the chart "Safe Minimum Cooking Temperatures" of foodsafety.gov (USDA and HHS), 12 April 2019, and the two-hour rule of USDA's Food Safety and Inspection Service.</summary>
public class Least_temperatures_of_cooked_food
{
    [Theory]
    [InlineData("Poultry", 165, 0)]
    [InlineData("Ground beef", 160, 0)]
    [InlineData("Steaks", 145, 3)]
    [InlineData("Ham that is reheated", 165, 0)]
    [InlineData("Dishes with eggs", 160, 0)]
    [InlineData("Leftovers", 165, 0)]
    [InlineData("Fish", 145, 0)]
    public void They_are_those_of_the_published_chart(string food, int fahrenheit, int rest)
    {
        var least = Assert.Single(FoodTemperatures.Least, t => t.Food.StartsWith(food, StringComparison.Ordinal));
        Assert.Equal((fahrenheit, rest), (least.Fahrenheit, least.RestMinutes));
    }

    [Theory]
    [InlineData(145, 63)]
    [InlineData(160, 72)]
    [InlineData(165, 74)]
    public void Celsius_is_rounded_up(int fahrenheit, int celsius)
    {
        // The chart's usual conversions are 62.8, 71.1 and 73.9 °C.
        Assert.Equal(celsius, new FoodTemperature("Soup", fahrenheit).Celsius);
    }

    [Fact]
    public void The_usual_caution_names_the_limits_of_the_two_hour_rule()
    {
        var caution = HazardCare.Of(HazardKind.FoodTemperature).Caution;
        Assert.All(new[] { $"{FoodTemperatures.ColdTo} °F", $"{FoodTemperatures.HotFrom} °F", "two hours", "one hour above 90 °F" }, text => Assert.Contains(text, caution, StringComparison.Ordinal));
        Assert.Equal((40, 140), (FoodTemperatures.ColdTo, FoodTemperatures.HotFrom));
    }
}
