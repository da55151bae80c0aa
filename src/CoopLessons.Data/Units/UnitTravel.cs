using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

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
        await db.Subjects.LoadAsync(ct);
        // With those that an earlier bundle added and nobody saved yet.
        var own = db.Subjects.Local.OrderBy(s => s.Order).ToList();
        var ids = new Dictionary<string, Guid>(StringComparer.Ordinal);
        foreach (var subject in bundle.Subjects)
            ids[subject.Code] = Meet(db, own, subject).Id;

        var unit = new Unit(id, bundle.Title, bundle.Summary, bundle.Weeks);
        foreach (var subject in bundle.Subjects)
            unit.Hold(ids[subject.Code]);
        foreach (var activity in bundle.Activities)
            unit.Add(new Activity(Guid.CreateVersion7(), activity.Code, FactsOf(activity), DetailsOf(activity, ids)));
        db.Units.Add(unit);
        return unit;
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

    private static FamilySubject Meet(AppDb db, List<FamilySubject> own, BundleSubject subject)
    {
        var known = own.FirstOrDefault(s => s.Code == subject.Code)
            ?? own.FirstOrDefault(s => string.Equals(s.Name, subject.Name, StringComparison.OrdinalIgnoreCase));
        if (known is not null)
            return known;
        var added = new FamilySubject(Guid.CreateVersion7(), subject.Code, string.Concat(subject.Name.EnumerateRunes().Take(FamilySubject.LongestName)), own.Count == 0 ? 0 : own.Max(s => s.Order) + 1);
        own.Add(added);
        db.Subjects.Add(added);
        return added;
    }

    private static ActivityFacts FactsOf(BundleActivity a) =>
        new(a.Week, a.Order, a.Title, a.Kind, a.Does, a.AdultNeed, a.HandsOnMinutes, a.WaitingMinutes, a.WaitingFor ?? "");

    private static ActivityDetails DetailsOf(BundleActivity a, Dictionary<string, Guid> ids) => new(
        [
            .. Weights(a, ids),
            .. (a.Touches ?? []).Select(t => ids[t]).Distinct().Except(a.Subjects.Select(s => ids[s.Code])).Select(id => new ActivitySubject(id, 0)),
        ],
        a.Variants ?? [], a.Supplies ?? [], a.Printables ?? [], a.Books ?? [], a.Hazards ?? [],
        // In the order in which a form shows them, so that saving it unchanged changes nothing.
        [.. (a.Ingredients ?? []).Select(i => i with { Allergens = [.. i.Allergens.Order()] })])
    {
        After = a.After ?? [],
        Ahead = a.Ahead ?? [],
    };

    /// <summary>Two of the bundle's subjects may meet one of the family's: their weights are added, and drawn down to the largest that travels.</summary>
    private static IEnumerable<ActivitySubject> Weights(BundleActivity a, Dictionary<string, Guid> ids)
    {
        var sums = a.Subjects.GroupBy(s => ids[s.Code]).Select(g => new ActivitySubject(g.Key, g.Sum(s => s.Weight))).ToList();
        var largest = sums.Max(s => s.Weight);
        return largest <= MostWeight ? sums : sums.Select(s => s with { Weight = Math.Max(1, s.Weight * MostWeight / largest) });
    }

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
