namespace CoopLessons.Core.Units;

/// <summary>A kind of food and the least temperature inside it, measured with a thermometer.</summary>
/// <param name="Fahrenheit">Whole degrees.</param>
/// <param name="RestMinutes">How long it rests afterwards before it is cut; 0 where nothing is said.</param>
public sealed record FoodTemperature(string Food, int Fahrenheit, int RestMinutes = 0)
{
    /// <summary>Degrees Celsius, rounded up, since it is a least temperature.</summary>
    public int Celsius => ((Fahrenheit - 32) * 5 + 8) / 9;
}

/// <summary>Least temperatures inside cooked food, as the United States' departments of agriculture and of health publish them.</summary>
public static class FoodTemperatures
{
    public const string Source = "Safe Minimum Cooking Temperatures Charts, foodsafety.gov (USDA and HHS), 12 April 2019";

    /// <summary>Below it cold food is kept, °F; above <see cref="HotFrom"/> hot food.</summary>
    public const int ColdTo = 40;

    public const int HotFrom = 140;

    public static IReadOnlyList<FoodTemperature> Least { get; } =
    [
        new("Poultry, whole, in parts or ground, and stuffing", 165),
        new("Ground beef, pork, veal or lamb", 160),
        new("Steaks, roasts and chops of beef, veal or lamb; fresh pork and ham", 145, 3),
        new("Ham that is reheated", 165),
        new("Dishes with eggs", 160),
        new("Leftovers and casseroles", 165),
        new("Fish with fins", 145),
    ];
}
