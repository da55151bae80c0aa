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

/// <summary>A hazard for which an adult usually stays nearer to the learner than the activity asks.</summary>
/// <param name="Usual">Nearer than what is written; see <see cref="HazardCare"/>.</param>
public sealed record NearerAdult(CautionedLearner Learner, HazardKind Kind, AdultNeed Usual) : Caution(Learner);

/// <summary>A small child is in the house who takes no part, and what the others work with burns, cuts, drowns or poisons.</summary>
/// <param name="Kinds">At least one, in the order of the activity's list.</param>
public sealed record WithinReach(CautionedLearner Learner, IReadOnlyList<HazardKind> Kinds) : Caution(Learner);

/// <summary>What an activity holds that can meet a learner.</summary>
/// <param name="AdultNeed">How much of an adult it asks for.</param>
public sealed record ActivityCare(
    IReadOnlyList<Ingredient> Ingredients, IReadOnlyList<Hazard> Hazards, IReadOnlyList<LevelVariant> Variants, AdultNeed AdultNeed);

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
    public static IReadOnlyList<HazardKind> Small { get; } = [HazardKind.SmallParts, HazardKind.ButtonCells, HazardKind.Magnets];

    /// <summary>A child below this age who is only in the room is kept out of reach (common practice, no source).</summary>
    public const int OutOfReachAge = 5;

    /// <summary>What a child in the room reaches for and is hurt by at once.</summary>
    private static readonly HashSet<HazardKind> Reached = [HazardKind.Heat, HazardKind.Blades, HazardKind.Glass, HazardKind.Chemicals, HazardKind.Water, HazardKind.Tools, HazardKind.Plants, HazardKind.ButtonCells, HazardKind.Magnets];

    /// <summary>
    /// Every meeting, learner by learner in the order of those present; of each, allergies first, then small parts, then ages,
    /// then how near an adult is, then what lies within reach.
    /// </summary>
    /// <param name="taking">Who does it.</param>
    /// <param name="present">Everybody who is in the house, those who do it among them or not.</param>
    public static IReadOnlyList<Caution> Of(IReadOnlyList<CautionedLearner> taking, IReadOnlyList<CautionedLearner> present, ActivityCare care)
    {
        var doing = taking.Select(l => l.Id).ToHashSet();
        return [.. present.UnionBy(taking, l => l.Id).SelectMany(l => Of(l, doing.Contains(l.Id), care))];
    }

    private static IEnumerable<Caution> Of(CautionedLearner learner, bool takesPart, ActivityCare care)
    {
        foreach (var ingredient in care.Ingredients)
        {
            Allergen[] met = [.. ingredient.Allergens.Intersect(learner.Allergies).Order()];
            if (met.Length > 0)
                yield return new AllergenMet(learner, ingredient.Name, met);
        }

        var kinds = care.Hazards.Select(h => h.Kind).Distinct().ToList();
        if (learner.Age < SmallPartsAge)
        {
            foreach (var kind in kinds.Where(Small.Contains))
                yield return new SmallPartsMet(learner, kind);
        }

        if (takesPart)
        {
            var youngest = care.Variants.Count == 0 ? 0 : care.Variants.Min(v => v.FromAge);
            if (learner.Age < youngest)
                yield return new YoungerThanWritten(learner, youngest);
            foreach (var kind in kinds.Where(k => HazardCare.Of(k).UsualFor(learner.Age) > care.AdultNeed && !(Small.Contains(k) && learner.Age < SmallPartsAge)))
                yield return new NearerAdult(learner, kind, HazardCare.Of(kind).UsualFor(learner.Age));
        }
        else if (learner.Age < OutOfReachAge && kinds.Where(k => Reached.Contains(k) && !(Small.Contains(k) && learner.Age < SmallPartsAge)).ToList() is { Count: > 0 } reached)
        {
            yield return new WithinReach(learner, reached);
        }
    }
}
