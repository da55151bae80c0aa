using CoopLessons.Core.Families;
using CoopLessons.Data.Coops.Days;

namespace CoopLessons.Data.Coops.Off;

/// <summary>A child of the family that stays at home, as the family itself knows it.</summary>
/// <param name="Age">Completed years on that day.</param>
public sealed record HomeChild(Guid Id, string Name, int Age, IReadOnlyCollection<Allergen> Allergies)
{
    /// <summary>The classes that it takes; null where nobody signed it up for any and its age says.</summary>
    public IReadOnlyCollection<Guid>? Classes { get; init; }
}

/// <summary>Something that a class uses and that holds what the child is allergic to.</summary>
/// <param name="Instead">What would do and holds none of it; null where nothing is known.</param>
public sealed record HomeAllergen(string Thing, IReadOnlyList<Allergen> Holds, string? Instead);

/// <summary>What a child does at home of one class.</summary>
/// <param name="Does">The class's own words for this age, or for the class where none are written for the age.</param>
/// <param name="IsWrittenForHome">Whether the words are meant for home.</param>
public sealed record HomeTask(CoopClass Class, IReadOnlyList<string> Does, bool IsWrittenForHome, IReadOnlyList<HomeAllergen> Allergens);

/// <summary>What spoils when a day falls through.</summary>
/// <param name="With">Names of those who teach the class and have it; empty where nobody is named.</param>
public sealed record SpoilsSoon(string What, string Class, IReadOnlyList<string> With);

/// <summary>A class day at home: what each child of a family can do of its classes, each from the class's own activity.</summary>
public static class HomeDay
{
    /// <summary>For each child what it can do, in the order of the classes; a child of no class has an empty list.</summary>
    public static IReadOnlyList<(HomeChild Child, IReadOnlyList<HomeTask> Tasks)> For(IReadOnlyList<CoopClass> held, IReadOnlyList<HomeChild> children) =>
        [.. children.Select(c => (c, (IReadOnlyList<HomeTask>)[.. held.Where(k => Takes(c, k)).Select(k => Task(c, k))]))];

    /// <param name="adults">Those whom the families named to the co-op.</param>
    public static IReadOnlyList<SpoilsSoon> Spoils(IReadOnlyList<CoopClass> held, IReadOnlyList<CoopAdult> adults) =>
        [.. held.SelectMany(k => k.Details.Perishables.Select(p => new SpoilsSoon(p, k.Title, [.. adults.Where(a => !a.Gone && k.Details.Teachers.Contains(a.Id)).Select(a => a.Name).Order(StringComparer.OrdinalIgnoreCase)])))];

    private static bool Takes(HomeChild child, CoopClass held) => child.Classes?.Contains(held.Id) ?? (held.FromAge <= child.Age && child.Age <= held.ToAge);

    private static HomeTask Task(HomeChild child, CoopClass held)
    {
        var written = held.Details.HomeVersions.Where(v => v.FromAge <= child.Age && child.Age <= v.ToAge).Select(v => v.Does).ToList();
        var allergens = held.Details.Uses.Select(u => (u, Holds: u.Ingredient.Allergens.Where(child.Allergies.Contains).Distinct().Order().ToList())).Where(m => m.Holds.Count > 0)
            .Select(m => new HomeAllergen(m.u.Ingredient.Name, m.Holds, m.u.Swap is { } swap && !swap.Allergens.Any(child.Allergies.Contains) ? swap.Name : null));
        return new HomeTask(held, written.Count > 0 ? written : held.Does.Length > 0 ? [held.Does] : [], written.Count > 0, [.. allergens]);
    }
}
