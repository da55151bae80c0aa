using CoopLessons.Core.Units;

namespace CoopLessons.Core.Coop;

/// <summary>
/// Holds rooms against the rules of a co-op. An empty answer says only that nothing written down is broken; it never says
/// that a room is safe.
/// </summary>
public static class Cover
{
    /// <summary>Every fault of every room, in the order of the rooms and of the rules, and whoever is in two rooms at once.</summary>
    /// <exception cref="ArgumentException">The rules have a fault; the message is the first of <see cref="CoverRules.Faults"/>.</exception>
    public static IReadOnlyList<CoverFault> Faults(IReadOnlyList<CoverRoom> rooms, CoverRules rules) =>
        [.. rooms.SelectMany(r => Faults(r, rules)), .. InTwoRooms(rooms)];

    /// <summary>Every fault of one room, in the order of the rules. A room without children needs nobody.</summary>
    /// <inheritdoc cref="Faults(IReadOnlyList{CoverRoom}, CoverRules)"/>
    public static IReadOnlyList<CoverFault> Faults(CoverRoom room, CoverRules rules)
    {
        if (rules.Faults() is [var first, ..])
            throw new ArgumentException(first, nameof(rules));
        if (room.Children.Count == 0)
            return [];
        return [.. Unrelated(room, rules), .. Ratio(room, rules), .. Size(room, rules), .. Allergens(room, rules)];
    }

    /// <summary>
    /// How many adults the ratios ask for. Each group's need is a fraction of an adult, young ones and older ones; the
    /// fractions are added, and the sum is rounded up once: 5 young ones and 7 older ones on site ask for 5/5 + 7/10, so 2.
    /// </summary>
    /// <param name="ages">Completed years, one a child.</param>
    /// <returns>0 for no children.</returns>
    public static int AdultsNeeded(IReadOnlyCollection<int> ages, bool offSite, CoverRules rules)
    {
        var young = ages.Count(a => a < rules.YoungBelow);
        var (perOld, perYoung) = Ratios(offSite, rules);
        var parts = checked((long)young * perOld + (long)(ages.Count - young) * perYoung);
        var whole = (long)perOld * perYoung;
        return (int)((parts + whole - 1) / whole);
    }

    internal static (int PerOld, int PerYoung) Ratios(bool offSite, CoverRules rules)
    {
        var old = offSite ? rules.ChildrenOffSite : rules.ChildrenOnSite;
        return (old, Math.Min(old, rules.YoungChildren));
    }

    private static List<RoomAdult> Counting(CoverRoom room, CoverRules rules) =>
        [.. room.Adults.DistinctBy(a => a.Id).Where(a => rules.GuestsCount || !a.Guest)];

    private static IEnumerable<CoverFault> Unrelated(CoverRoom room, CoverRules rules)
    {
        var adults = Counting(room, rules);
        var groups = rules.HouseholdCountsAsOne ? Kinship.Groups([.. adults.Select(a => (a.Family, a.Household))]).Distinct().Count() : adults.Count;
        var missing = rules.LeastUnrelated - groups;
        if (missing > 0)
            yield return new CoverFault(CoverFaultKind.TooFewUnrelated, room.Id, room.Period,
                CoopWords.TooFewUnrelated(room, adults, groups, missing, guests: adults.Count < room.Adults.DistinctBy(a => a.Id).Count()), missing);
    }

    private static IEnumerable<CoverFault> Ratio(CoverRoom room, CoverRules rules)
    {
        var needed = AdultsNeeded([.. room.Children.Select(c => c.Age)], room.OffSite, rules);
        var there = Counting(room, rules).Count;
        if (there < needed)
            yield return new CoverFault(CoverFaultKind.TooFewAdults, room.Id, room.Period, CoopWords.TooFewAdults(room, rules, needed, there), needed - there);
    }

    private static IEnumerable<CoverFault> Size(CoverRoom room, CoverRules rules)
    {
        var count = room.Children.Count;
        if (count > rules.MostChildren)
            yield return new CoverFault(CoverFaultKind.ClassTooLarge, room.Id, room.Period, CoopWords.TooLarge(room, rules.MostChildren.Value), count - rules.MostChildren.Value);
        var (youngest, oldest) = (room.Children.Min(c => c.Age), room.Children.Max(c => c.Age));
        if (oldest - youngest > rules.MostYearsApart)
            yield return new CoverFault(CoverFaultKind.AgesTooFarApart, room.Id, room.Period,
                CoopWords.TooFarApart(room, youngest, oldest, rules.MostYearsApart.Value), oldest - youngest - rules.MostYearsApart.Value);
    }

    private static IEnumerable<CoverFault> Allergens(CoverRoom room, CoverRules rules)
    {
        if (!rules.HeedsAllergies || room.Activity is not { } activity)
            yield break;
        foreach (var used in activity.Ingredients)
        {
            // What is used instead is in the room with all of them, not only with the child whose allergy asked for it.
            var instead = used.Swap is { } swap && !room.Children.Any(c => swap.Allergens.Any(c.Allergies.Contains)) ? swap : null;
            foreach (var child in room.Children)
                if (used.Ingredient.Allergens.Where(child.Allergies.Contains).Distinct().Order().ToList() is { Count: > 0 } met)
                    yield return Meeting(room, used.Ingredient, instead, child, met);
        }
    }

    private static AllergenFault Meeting(CoverRoom room, Ingredient ingredient, Ingredient? instead, RoomChild child, List<Families.Allergen> met) => new(
        instead is null ? CoverFaultKind.AllergenBlock : CoverFaultKind.AllergenSwap, room.Id, room.Period,
        CoopWords.AllergenOpenly(room, ingredient.Name, instead?.Name), child.Id, ingredient.Name, met, instead?.Name,
        CoopWords.AllergenByName(room, ingredient.Name, instead?.Name, child.Name, met),
        [.. room.Adults.Select(a => a.Id).Distinct()], child.Family);

    private static IEnumerable<CoverFault> InTwoRooms(IReadOnlyList<CoverRoom> rooms) =>
        from both in rooms.SelectMany(r => r.Adults.Select(a => (a.Id, Name: a.FullName, Room: r)).Concat(r.Children.Select(c => (c.Id, c.Name, Room: r))))
            .GroupBy(p => (p.Id, p.Room.Period))
        let places = both.DistinctBy(p => p.Room.Id).ToList()
        where places.Count > 1
        select new CoverFault(CoverFaultKind.InTwoRooms, places[1].Room.Id, both.Key.Period,
            CoopWords.InTwoRooms(places[0].Name, [.. places.Select(p => p.Room.Name)], both.Key.Period), places.Count - 1);
}
