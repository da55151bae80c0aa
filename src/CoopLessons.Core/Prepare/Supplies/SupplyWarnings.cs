using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>A child meets an allergen in a good of an activity, and an adult has to look.</summary>
/// <param name="Met">Whom it meets and what; its ingredient is the good, or the ingredient behind it.</param>
/// <param name="For">Title of the activity, or empty for what was put on the list by hand.</param>
/// <param name="Because">The words by which it was found, such as "semolina"; empty where the activity marks it itself.</param>
public sealed record SupplyWarning(AllergenMet Met, string For, IReadOnlyList<FoundAllergen> Because);

/// <summary>A good that is none of the nine and still worth a question to whoever treats the child.</summary>
public sealed record SupplyAside(CautionedLearner Learner, string Good, BesideAllergen Word);

/// <summary>
/// Who is allergic to what is in a list of supplies. No warning never means that something can be eaten: it means that
/// nothing written down meets.
/// </summary>
public static class SupplyWarnings
{
    /// <summary>The warnings of one good in one activity, child by child.</summary>
    /// <param name="learners">All who are near, whether they take part or are in the room.</param>
    /// <param name="names">What the good is called: by the activity, and by the family.</param>
    /// <param name="ingredients">The activity's own, of which those that touch the good count with what they mark.</param>
    public static IReadOnlyList<SupplyWarning> OfGood(
        IReadOnlyList<CautionedLearner> learners, IReadOnlyList<string> names, string activity, IReadOnlyList<Ingredient> ingredients)
    {
        var marked = ingredients.Where(i => names.Any(n => GoodName.Touches(n, i.Name))).SelectMany(i => i.Allergens).ToHashSet();
        var found = names.SelectMany(AllergenWords.In).DistinctBy(f => f.Allergen).ToList();
        return [.. learners.Select(l => Warn(l, names[0], activity, marked, found)).OfType<SupplyWarning>()];
    }

    /// <summary>The warnings of ingredients behind which no supply stands, by what is marked and by their words.</summary>
    public static IReadOnlyList<SupplyWarning> OfIngredients(
        IReadOnlyList<CautionedLearner> learners, IReadOnlyList<string> supplies, string activity, IReadOnlyList<Ingredient> ingredients) =>
        [.. ingredients.Where(i => !supplies.Any(s => GoodName.Touches(s, i.Name)))
            .SelectMany(i => learners.Select(l => Warn(l, i.Name, activity, [.. i.Allergens], AllergenWords.In(i.Name)))).OfType<SupplyWarning>()];

    /// <summary>
    /// One warning a child and activity, with all that is met in it. Two activities of one title stay two, unless they say the
    /// very same.
    /// </summary>
    /// <param name="warnings">Each with the id of its activity; null for what was put on the list by hand.</param>
    public static IReadOnlyList<SupplyWarning> Together(IEnumerable<(Guid? ActivityId, SupplyWarning Warning)> warnings) =>
        [.. warnings.GroupBy(w => (w.Warning.Met.Learner.Id, w.ActivityId), w => w.Warning).Select(g => g.First() with
            {
                Met = g.First().Met with { Met = [.. g.SelectMany(w => w.Met.Met).Distinct().Order()] },
                Because = [.. g.SelectMany(w => w.Because).DistinctBy(f => f.Allergen)],
            })
            .DistinctBy(w => (w.Met.Learner.Id, w.For, string.Join(',', w.Met.Met)))];

    /// <summary>What stands beside an allergen of a child without being it.</summary>
    public static IReadOnlyList<SupplyAside> Asides(IReadOnlyList<CautionedLearner> learners, string good) =>
        [.. learners.SelectMany(l => l.Allergies.SelectMany(a => AllergenWords.BesideIn(good, a)).Select(b => new SupplyAside(l, good, b)))];

    private static SupplyWarning? Warn(CautionedLearner learner, string good, string activity, HashSet<Allergen> marked, IReadOnlyList<FoundAllergen> found)
    {
        Allergen[] met = [.. learner.Allergies.Where(a => marked.Contains(a) || found.Any(f => f.Allergen == a)).Order()];
        return met.Length == 0 ? null
            : new SupplyWarning(new AllergenMet(learner, good, met), activity, [.. found.Where(f => met.Contains(f.Allergen) && !marked.Contains(f.Allergen))]);
    }
}
