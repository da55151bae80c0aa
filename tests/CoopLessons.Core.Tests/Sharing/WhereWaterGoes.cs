using CoopLessons.Core.Families;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Sharing;

/// <summary>A unit that the Alders wrote for the co-op, small enough to follow by eye: four weeks, six activities.</summary>
internal static class WhereWaterGoes
{
    public static readonly BundleActivity Weir = new(
        "measure-weir", 1, 1, "Measure the weir", ActivityKind.Experiment, "Read the gauge. Write the height down.",
        [new("science", 2)], HandsOnMinutes: 40, WaitingMinutes: 0, AdultNeed.Beside,
        Touches: ["reading"],
        Variants: [new(5, 8, "Holds the string."), new(9, 12, "Reads the gauge.")],
        Supplies: [new("string", 2m, "m", Per.Pair), new("stick", 1m, "piece", Per.Learner)],
        Hazards: [new(HazardKind.Water, "Stay within an arm’s reach.")]);

    public static readonly BundleActivity Painting = new(
        "paint-river", 1, 2, "Paint the river", ActivityKind.Drawing, "Wet the paper and let blue run.", [new("art", 1)], 45, 30, AdultNeed.Alone, WaitingFor: "the paper dries");

    public static readonly BundleActivity Tale = new(
        "mill-race-tale", 2, 1, "A tale of the mill race", ActivityKind.Reading, "Read two chapters.", [new("reading", 2), new("history", 1)], 60, 0, AdultNeed.Alone,
        Variants: [new(5, 8, "Hears one chapter."), new(9, 14, "Reads both chapters.")],
        Books: [new("The Mill Race", BookUse.ReadAlone)]);

    public static readonly BundleActivity Watershed = new(
        "crumpled-watershed", 3, 1, "A crumpled watershed", ActivityKind.Making, "Crumple, colour, spray.", [new("science", 2), new("art", 1)], 45, 0, AdultNeed.Beside);

    public static readonly BundleActivity Creek = new(
        "creek-walk", 3, 2, "Creek walk", ActivityKind.Outing, "Walk down to the ford.", [new("science", 1)], 90, 0, AdultNeed.HandsOn,
        After: ["measure-weir"]);

    public static readonly BundleActivity Wheel = new(
        "mill-wheel", 4, 1, "A mill wheel", ActivityKind.Making, "Cut paddles and fix them to a cork.", [new("history", 2), new("science", 1)], 70, 0, AdultNeed.HandsOn,
        Ingredients: [new("flour paste", [Allergen.Wheat])],
        After: ["crumpled-watershed"]);

    public static readonly UnitBundle First = new(
        UnitBundle.FormatName, UnitBundle.CurrentVersion, "Where Water Goes", "Water from the cloud to the mill.", 4,
        [new("science", "Science"), new("art", "Art"), new("history", "History"), new("reading", "Reading")],
        [Weir, Painting, Tale, Watershed, Creek, Wheel]);

    public static BundleActivity In(this UnitBundle unit, string code) => unit.Activities.Single(a => a.Code == code);

    public static bool Has(this UnitBundle unit, string code) => unit.Activities.Any(a => a.Code == code);

    /// <summary>The unit with one activity otherwise.</summary>
    public static UnitBundle With(this UnitBundle unit, string code, Func<BundleActivity, BundleActivity> otherwise) =>
        unit with { Activities = [.. unit.Activities.Select(a => a.Code == code ? otherwise(a) : a)] };

    public static UnitBundle Plus(this UnitBundle unit, BundleActivity added) => unit with { Activities = [.. unit.Activities, added] };

    /// <summary>The unit without an activity, and without an “after” that names it.</summary>
    public static UnitBundle Without(this UnitBundle unit, string code) =>
        unit with { Activities = [.. unit.Activities.Where(a => a.Code != code).Select(a => a with { After = a.After?.Where(c => c != code).ToList() })] };

    public static Collision Only(this UnitMerge merge) => Assert.Single(merge.Collisions);

    public static void Same(UnitBundle expected, UnitBundle actual) => Assert.Equal(UnitHash.Text(expected), UnitHash.Text(actual));
}
