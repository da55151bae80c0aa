using CoopLessons.Core.Families;

namespace CoopLessons.Core.Units;

/// <summary>A learner, as far as cautions need to know them.</summary>
/// <param name="Age">Completed years by birth date, never the age of the work they do.</param>
public sealed record CautionedLearner(Guid Id, string Name, int Age, IReadOnlyCollection<Allergen> Allergies);

/// <summary>Something about a learner meets something in an activity, and an adult has to look.</summary>
public abstract record Caution(CautionedLearner Learner);

/// <summary>An ingredient holds what the learner is allergic to.</summary>
/// <param name="Met">At least one; in the order of the law's list.</param>
public sealed record AllergenMet(CautionedLearner Learner, string Ingredient, IReadOnlyList<Allergen> Met) : Caution(Learner);

/// <summary>The learner is under three and the activity has something small enough to choke on.</summary>
public sealed record SmallPartsMet(CautionedLearner Learner, HazardKind Kind) : Caution(Learner);

/// <summary>The learner is younger than the youngest for whom the activity is written.</summary>
public sealed record YoungerThanWritten(CautionedLearner Learner, int YoungestAge) : Caution(Learner);

/// <summary>
/// Where an activity and a learner call for an adult's look. An empty list says only that nothing written down meets;
/// it never says that an activity is safe.
/// </summary>
public static class Cautions
{
    /// <summary>
    /// Small parts are kept from children below this age, in years: 16 CFR 1501.2(a), toys and other articles for
    /// children under 3 years, 36 months (read in the eCFR's text as of 15 September 2021).
    /// </summary>
    public const int SmallPartsAge = 3;

    /// <summary>
    /// A small part is one that fits into the test cylinder of 16 CFR 1501.4 whole. Button cells and loose magnets do
    /// (its width of 31.7 mm stands from memory), so they are met in the same way.
    /// </summary>
    private static readonly HashSet<HazardKind> Small = [HazardKind.SmallParts, HazardKind.ButtonCells, HazardKind.Magnets];

    /// <summary>Every meeting, learner by learner in the order given; allergies first, then small parts, then ages.</summary>
    public static IReadOnlyList<Caution> Of(
        IReadOnlyList<CautionedLearner> learners, IReadOnlyList<Ingredient> ingredients, IReadOnlyList<Hazard> hazards, IReadOnlyList<LevelVariant> variants) =>
        [.. learners.SelectMany(l => Of(l, ingredients, hazards, variants))];

    private static IEnumerable<Caution> Of(
        CautionedLearner learner, IReadOnlyList<Ingredient> ingredients, IReadOnlyList<Hazard> hazards, IReadOnlyList<LevelVariant> variants)
    {
        foreach (var ingredient in ingredients)
        {
            Allergen[] met = [.. ingredient.Allergens.Intersect(learner.Allergies).Order()];
            if (met.Length > 0)
                yield return new AllergenMet(learner, ingredient.Name, met);
        }

        if (learner.Age < SmallPartsAge)
        {
            foreach (var kind in hazards.Select(h => h.Kind).Where(Small.Contains).Distinct())
                yield return new SmallPartsMet(learner, kind);
        }

        if (variants.Count > 0 && learner.Age < variants.Min(v => v.FromAge))
            yield return new YoungerThanWritten(learner, variants.Min(v => v.FromAge));
    }
}
