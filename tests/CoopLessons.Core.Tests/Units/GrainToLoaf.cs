using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Units;

/// <summary>A small unit without a fault, from which each test spoils one thing.</summary>
internal static class GrainToLoaf
{
    public static readonly BundleActivity Bread = new(
        "bake-bread", 1, 1, "Bake a loaf", ActivityKind.Cooking, "Mix, knead, wait, bake.",
        [new("science", 2), new("arithmetic", 1)],
        HandsOnMinutes: 45,
        WaitingMinutes: 90,
        AdultNeed.HandsOn,
        WaitingFor: "the dough rises",
        Touches: ["history"],
        Variants: [new(4, 7, "Shapes a roll."), new(8, 12, "Weighs the flour.")],
        Supplies: [new("flour", 2.5m, "cup", Per.Family)],
        Printables: [new("Loaf record", 2)],
        Books: [new("The Miller's Day", BookUse.Heard)],
        Hazards: [new(HazardKind.Heat, "An adult opens the oven.")],
        Ingredients: [new("flour", [Allergen.Wheat])]);

    public static readonly BundleActivity Sorting = new(
        "sort-grain", 2, 1, "Sort grain", ActivityKind.Observing, "Sort by size.", [new("science", 1)], 20, 0, AdultNeed.Alone);

    public static readonly UnitBundle Bundle = new(
        UnitBundle.FormatName, UnitBundle.CurrentVersion, "From Grain to Loaf", "A month around bread.", 2,
        [new("science", "Science"), new("arithmetic", "Arithmetic"), new("history", "History")],
        [Bread, Sorting]);

    public static UnitBundle With(BundleActivity first) => Bundle with { Activities = [first, Sorting] };
}
