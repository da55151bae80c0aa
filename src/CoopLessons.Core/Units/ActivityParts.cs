using CoopLessons.Core.Families;

namespace CoopLessons.Core.Units;

/// <summary>What sort of work an activity is.</summary>
public enum ActivityKind { Talk, ReadAloud, Reading, Writing, Making, Cooking, Experiment, Observing, Drawing, Music, Movement, Outing, Game, Research }

/// <summary>How much of an adult an activity takes: none, somebody beside, or an adult's own hands.</summary>
public enum AdultNeed { Alone, Beside, HandsOn }

/// <summary>For whom a quantity is meant.</summary>
public enum Per { Learner, Pair, Family, Group }

/// <summary>How a book is used.</summary>
public enum BookUse { Heard, ReadAlone, ListenedTo, LookedThrough }

/// <summary>What can hurt somebody.</summary>
public enum HazardKind { Heat, Blades, Glass, Chemicals, Water, SmallParts, ButtonCells, Magnets, FoodTemperature, RawFlour, Sun, Traffic, Tools, Animals, Darkness, Plants }

/// <summary>What learners between two ages do; both ages included, in completed years.</summary>
public sealed record LevelVariant(int FromAge, int ToAge, string Does);

/// <summary>Something an activity needs. The unit is one of the bundle schema's words.</summary>
public sealed record Supply(string Name, decimal Quantity, string Unit, Per Per, string? Note = null);

public sealed record Printable(string Title, int Pages, string? Note = null);

public sealed record Book(string Title, BookUse Use, string? Author = null, string? Isbn = null, string? Note = null);

/// <summary>A hazard and the usual caution, which never replaces the adult's own judgement.</summary>
public sealed record Hazard(HazardKind Kind, string Caution);

/// <summary>Something eaten, touched or breathed, and the major allergens in it.</summary>
public sealed record Ingredient(string Name, IReadOnlyList<Allergen> Allergens);

/// <summary>What sort of thing is begun days before an activity.</summary>
public enum AheadKind { Seeds, Eggs, Crystals, Sourdough, Order, Arrangement, Other }

/// <summary>Something that must be begun days before an activity, so that it is ready on its day.</summary>
/// <param name="What">A thing and no sentence, such as "Cress on cotton wool".</param>
/// <param name="TakesDays">Days from its beginning until it is ready; 1–365.</param>
/// <param name="KeepsDays">How many days it can wait once it is ready; 0 for its very day, null for as long as one likes.</param>
/// <param name="TendEveryDays">Somebody sees to it every so many days until the activity; 0 where nobody need.</param>
public sealed record AheadStart(string What, AheadKind Kind, int TakesDays, int? KeepsDays = null, int TendEveryDays = 0, string? Note = null)
{
    public const int MostDays = 365;
}

public static class LevelVariants
{
    /// <summary>
    /// What a learner of an age does: the variant whose ages hold it; else the nearest by years, the younger one
    /// where two are as near; null where there are none.
    /// </summary>
    public static LevelVariant? For(this IReadOnlyList<LevelVariant> variants, int age) =>
        variants.OrderBy(v => age < v.FromAge ? v.FromAge - age : age > v.ToAge ? age - v.ToAge : 0).ThenBy(v => v.FromAge).FirstOrDefault();
}
