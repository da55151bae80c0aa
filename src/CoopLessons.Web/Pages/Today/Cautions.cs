using System.Globalization;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;

namespace CoopLessons.Web.Pages.Today;

/// <summary>A place where an activity meets a child who is there: a word for the line and a sentence for its inside.</summary>
public sealed record Caution(string Word, string Sentence);

/// <summary>
/// Where hazards and allergens of an activity meet the children who take part. The usual cautions are printed with
/// them; they do not replace the adult's own judgement.
/// </summary>
public static class Cautions
{
    // 16 CFR 1501.2: small parts are a hazard to children under three.
    private const int OldEnoughForSmallParts = 3;

    public static IReadOnlyList<Caution> For(IReadOnlyList<Hazard> hazards, IReadOnlyList<Ingredient> ingredients, IReadOnlyList<Learner> learners, DateOnly date)
    {
        var cautions = new List<Caution>();
        foreach (var kind in hazards.Select(h => h.Kind).Distinct().Where(IsSmall))
        {
            foreach (var learner in learners.Where(l => l.AgeOn(date) < OldEnoughForSmallParts))
                cautions.Add(new Caution($"{Name(kind)}: {learner.Name}", $"{learner.Name} is under three. Keep the {Name(kind)} out of reach."));
        }

        foreach (var ingredient in ingredients)
        {
            foreach (var learner in learners)
            {
                var met = ingredient.Allergens.Intersect(learner.Allergies).Select(Name).ToList();
                if (met.Count > 0)
                    cautions.Add(new Caution($"{DayWords.Names(met)}: {learner.Name}", $"{learner.Name} has an allergy to {DayWords.Names(met)}, and this uses {ingredient.Name}. Read the label, and take something else where you must."));
            }
        }

        if (ingredients.Count > 0)
        {
            foreach (var learner in learners.Where(l => l.AllergyNote.Length > 0))
                cautions.Add(new Caution($"allergy: {learner.Name}", $"You wrote of {learner.Name}: {learner.AllergyNote}"));
        }

        return [.. cautions.Distinct()];
    }

    private static bool IsSmall(HazardKind kind) => kind is HazardKind.SmallParts or HazardKind.ButtonCells or HazardKind.Magnets;

    public static string Name(HazardKind kind) => kind switch
    {
        HazardKind.SmallParts => "small parts",
        HazardKind.ButtonCells => "button cells",
        HazardKind.FoodTemperature => "food temperature",
        HazardKind.RawFlour => "raw flour",
        _ => kind.ToString().ToLowerInvariant(),
    };

    public static string Name(Allergen allergen) => allergen == Allergen.TreeNuts ? "tree nuts" : allergen.ToString().ToLowerInvariant();

    /// <summary>“2 sheets each”, “250 g”, “1 piece for the group”.</summary>
    public static string Quantity(Supply supply)
    {
        var amount = supply.Quantity.ToString("0.##", CultureInfo.InvariantCulture);
        var many = supply.Quantity != 1 && (supply.Unit is "piece" or "sheet" or "cup") ? "s" : "";
        var per = supply.Per switch { Per.Learner => " each", Per.Pair => " for two", Per.Group => " for the group", _ => "" };
        return $"{amount} {supply.Unit}{many}{per}";
    }
}
