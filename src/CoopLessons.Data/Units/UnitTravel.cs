using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;

namespace CoopLessons.Data.Units;

/// <summary>Units coming in from a bundle and going out as one.</summary>
public static class UnitTravel
{
    /// <summary>The largest weight that the bundle's schema knows.</summary>
    public const int MostWeight = 100;

    /// <summary>
    /// Adds the bundle as a unit on the family's shelf. Its subjects are met with the family's own by code, then by
    /// name; those the family lacks are added at the end of its list. Nothing is saved here.
    /// </summary>
    public static Task<Unit> TakeInAsync(AppDb db, UnitBundle bundle, CancellationToken ct) => TakeInAsync(db, bundle, Guid.CreateVersion7(), ct);

    /// <inheritdoc cref="TakeInAsync(AppDb, UnitBundle, CancellationToken)"/>
    /// <param name="id">Made on the page that sent it, so that a second sending is recognised.</param>
    public static async Task<Unit> TakeInAsync(AppDb db, UnitBundle bundle, Guid id, CancellationToken ct)
    {
        var met = await MetSubjects.OfAsync(db, new Dictionary<string, Guid>(), ct);
        return TakeIn(db, met.InOwn(bundle), id, met);
    }

    /// <inheritdoc cref="TakeInAsync(AppDb, UnitBundle, CancellationToken)"/>
    /// <param name="own">As <see cref="MetSubjects.InOwn"/> gave it.</param>
    public static Unit TakeIn(AppDb db, UnitBundle own, Guid id, MetSubjects met)
    {
        var unit = new Unit(id, own.Title, own.Summary, own.Weeks);
        Write(db, unit, own, met);
        db.Units.Add(unit);
        return unit;
    }

    /// <summary>
    /// Makes the unit what the bundle says. Activities are known by their codes; those that stay keep their days, their
    /// files and whether they are left out, and those that go take their days with them, as when they are removed by hand.
    /// </summary>
    /// <param name="unit">With subjects and activities loaded.</param>
    /// <param name="own">In the family's own codes.</param>
    public static void Write(AppDb db, Unit unit, UnitBundle own, MetSubjects met)
    {
        var ids = met.Own.ToDictionary(s => s.Code, s => s.Id, StringComparer.Ordinal);
        var before = ToBundle(unit, met.Own).Activities.ToDictionary(a => a.Code, StringComparer.Ordinal);
        unit.Describe(own.Title, own.Summary, own.Weeks);
        foreach (var subject in own.Subjects)
            unit.Hold(ids[subject.Code]);
        foreach (var activity in own.Activities)
        {
            if (!before.Remove(activity.Code, out var was))
                unit.Add(new Activity(Guid.CreateVersion7(), activity.Code, FactsOf(activity), DetailsOf(activity, ids)));
            else if (Text(was) != Text(activity))
                unit.Activities.Single(a => a.Code == activity.Code).Describe(FactsOf(activity), DetailsOf(activity, ids));
        }

        foreach (var code in before.Keys)
            db.Activities.Remove(unit.Drop(code));
        unit.HoldOnly(own.Subjects.Select(s => ids[s.Code]).ToHashSet());
    }

    /// <summary>The unit as a bundle, with what the family left out still in it.</summary>
    /// <param name="unit">With subjects and activities loaded.</param>
    public static UnitBundle ToBundle(Unit unit, IReadOnlyList<FamilySubject> subjects)
    {
        var codes = subjects.ToDictionary(s => s.Id, s => s.Code);
        var held = unit.Subjects.Select(s => s.SubjectId).ToHashSet();
        var there = unit.Activities.Select(a => a.Code).ToHashSet(StringComparer.Ordinal);
        return new UnitBundle(
            UnitBundle.FormatName,
            UnitBundle.CurrentVersion,
            unit.Title,
            unit.Summary,
            unit.Weeks,
            [.. subjects.Where(s => held.Contains(s.Id)).OrderBy(s => s.Order).Select(s => new BundleSubject(s.Code, s.Name))],
            [.. unit.Activities.OrderBy(a => a.Week).ThenBy(a => a.Order).ThenBy(a => a.Code, StringComparer.Ordinal).Select(a => ToBundle(a, codes, there))]);
    }

    private static ActivityFacts FactsOf(BundleActivity a) =>
        new(a.Week, a.Order, a.Title, a.Kind, a.Does, a.AdultNeed, a.HandsOnMinutes, a.WaitingMinutes, a.WaitingFor ?? "");

    private static ActivityDetails DetailsOf(BundleActivity a, Dictionary<string, Guid> ids) => new(
        [
            .. a.Subjects.Select(s => new ActivitySubject(ids[s.Code], s.Weight)),
            .. (a.Touches ?? []).Select(t => new ActivitySubject(ids[t], 0)),
        ],
        a.Variants ?? [], a.Supplies ?? [], a.Printables ?? [], a.Books ?? [], a.Hazards ?? [],
        // In the order in which a form shows them, so that saving it unchanged changes nothing.
        [.. (a.Ingredients ?? []).Select(i => i with { Allergens = [.. i.Allergens.Order()] })])
    {
        After = a.After ?? [],
        Ahead = a.Ahead ?? [],
    };

    // Order where it says nothing, empty lists and trailing zeros are no change.
    private static string Text(BundleActivity activity) =>
        UnitHash.Text(new UnitBundle(UnitBundle.FormatName, UnitBundle.CurrentVersion, "", "", 1, [], [activity]));

    private static BundleActivity ToBundle(Activity a, Dictionary<Guid, string> codes, HashSet<string> there) => new(
        a.Code, a.Week, a.Order, a.Title, a.Kind, a.Does,
        [.. a.Details.Subjects.Where(s => s.Weight > 0).Select(s => new BundleWeight(codes[s.SubjectId], s.Weight))],
        a.HandsOnMinutes, a.WaitingMinutes, a.AdultNeed,
        a.WaitingFor.Length > 0 ? a.WaitingFor : null,
        OrNull(a.Details.Touches.Select(t => codes[t])),
        OrNull(a.Details.Variants), OrNull(a.Details.Supplies), OrNull(a.Details.Printables),
        OrNull(a.Details.Books), OrNull(a.Details.Hazards), OrNull(a.Details.Ingredients), OrNull(a.Details.After.Where(there.Contains)),
        OrNull(a.Details.Ahead));

    private static List<T>? OrNull<T>(IEnumerable<T> all) => all.ToList() is { Count: > 0 } list ? list : null;
}
