using System.Text.Json;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sharing;

/// <summary>
/// What came in is held back, spot by spot, until the tree is a bundle by its rules. The tree that is mine is one, so
/// that this ends; each spot is put back to what mine has there and becomes something to decide.
/// </summary>
internal sealed class HoldingBack(UnitTree mine)
{
    public UnitTree Of(UnitTree merged, List<Clash> clashes)
    {
        while (Next(merged) is { } clash)
        {
            merged = merged.With(clash.Spot, mine.Get(clash.Spot));
            clashes.RemoveAll(c => clash.Spot.Holds(c.Spot));
            clashes.Add(clash);
        }

        return merged;
    }

    private Clash? Next(UnitTree merged)
    {
        var activities = BundleTree.Entries(merged, UnitTree.Activities).OrderBy(a => a.Key, StringComparer.Ordinal).ToList();
        return Rooms(merged)
            ?? activities.Select(a => Weeks(merged, a.Key, a.Value) ?? Subjects(merged, a.Key, a.Value) ?? Rooms(a.Key, a.Value) ?? After(merged, a.Key, a.Value)).FirstOrDefault(c => c is not null)
            ?? Circle(merged, activities);
    }

    /// <summary>Mine has the activity: a part of it goes back. Else it came in, and stays out.</summary>
    private UnitSpot Back(string code, string field, string? entry = null) => mine.Get(UnitTree.Activities, code) is null ? new UnitSpot(code, null) : new UnitSpot(code, field, entry);

    private Clash? Rooms(UnitTree merged)
    {
        var activities = BundleTree.Entries(merged, UnitTree.Activities).Select(a => a.Key).ToList();
        if (activities.Count == 0)
            return new Clash(new UnitSpot(BundleTree.Entries(mine, UnitTree.Activities).Select(a => a.Key).Order(StringComparer.Ordinal).First(), null), CollisionKind.NothingWouldBeLeft);
        if (activities.Count > ListRoom.Activities && Last(activities, k => mine.Get(UnitTree.Activities, k)) is { } code)
            return new Clash(new UnitSpot(code, null), CollisionKind.NoRoom);
        var subjects = BundleTree.Entries(merged, UnitTree.Subjects).Select(s => s.Key).ToList();
        if (subjects.Count == 0)
            return new Clash(new UnitSpot(null, UnitTree.Subjects, BundleTree.Entries(mine, UnitTree.Subjects).Select(s => s.Key).Order(StringComparer.Ordinal).First()), CollisionKind.NothingWouldBeLeft);
        return subjects.Count > ListRoom.Subjects && Last(subjects, k => mine.Get(UnitTree.Subjects, k)) is { } subject
            ? new Clash(new UnitSpot(null, UnitTree.Subjects, subject), CollisionKind.NoRoom)
            : null;
    }

    private Clash? Rooms(string code, UnitTree activity)
    {
        var lists = new[] { UnitTree.After }.Concat(BundleTree.Lists.Select(l => l.Field))
            .Select(field => (Name: field, Field: field, Keys: BundleTree.Entries(activity, field).Select(e => e.Key).ToList()))
            .Concat(new[] { "subjects", "touches" }.Select(name => (Name: name, Field: UnitTree.Subjects, Keys: BundleTree.Entries(activity, UnitTree.Subjects)
                .Where(s => BundleTree.Weight(s.Value) > 0 == (name == "subjects")).Select(s => s.Key).ToList())));
        foreach (var (name, field, keys) in lists.Where(l => l.Keys.Count > ListRoom.OfActivity[l.Name]))
        {
            var here = mine.Get(UnitTree.Activities, code, field);
            var changed = keys.Where(k => !UnitTree.Same(here?.Get(k), activity.Get(field, k))).ToList();
            var key = Last(changed, k => here?.Get(k)) ?? changed.Order(StringComparer.Ordinal).Last();
            return new Clash(new UnitSpot(code, field, key), CollisionKind.NoRoom);
        }

        return null;
    }

    private static string? Last(IEnumerable<string> keys, Func<string, UnitTree?> here) => keys.Where(k => here(k) is null).Order(StringComparer.Ordinal).LastOrDefault();

    private Clash? Weeks(UnitTree merged, string code, UnitTree activity)
    {
        var place = (Leaf)activity.Get(UnitSpot.Place)!;
        if (JsonSerializer.Deserialize<WeekOf>(place.Json, UnitBundle.Json)!.Week <= Number(merged.Get("weeks")))
            return null;
        return UnitTree.Same(place, mine.Get(UnitTree.Activities, code, UnitSpot.Place))
            ? new Clash(new UnitSpot(null, "weeks"), CollisionKind.AfterTheLastWeek, Title(activity))
            : new Clash(Back(code, UnitSpot.Place), CollisionKind.AfterTheLastWeek);
    }

    private Clash? Subjects(UnitTree merged, string code, UnitTree activity)
    {
        var named = BundleTree.Entries(activity, UnitTree.Subjects).ToList();
        if (named.Where(s => merged.Get(UnitTree.Subjects, s.Key) is null).Select(s => s.Key).Order(StringComparer.Ordinal).FirstOrDefault() is { } missing)
        {
            return mine.Get(UnitTree.Subjects, missing) is null
                ? new Clash(new UnitSpot(code, UnitTree.Subjects, missing), CollisionKind.NotHere)
                : new Clash(new UnitSpot(null, UnitTree.Subjects, missing), CollisionKind.StillNamedHere, Title(activity));
        }

        if (named.Any(s => BundleTree.Weight(s.Value) > 0))
            return null;
        var here = BundleTree.Entries(mine.Get(UnitTree.Activities, code), UnitTree.Subjects).Where(s => BundleTree.Weight(s.Value) > 0).Select(s => s.Key);
        return new Clash(Back(code, UnitTree.Subjects, here.Order(StringComparer.Ordinal).FirstOrDefault()), CollisionKind.NothingWouldBeLeft);
    }

    private Clash? After(UnitTree merged, string code, UnitTree activity)
    {
        if (BundleTree.Entries(activity, UnitTree.After).Select(a => a.Key).Where(a => merged.Get(UnitTree.Activities, a) is null).Order(StringComparer.Ordinal).FirstOrDefault() is not { } missing)
            return null;
        return mine.Get(UnitTree.Activities, missing) is null
            ? new Clash(new UnitSpot(code, UnitTree.After, missing), CollisionKind.NotHere)
            : new Clash(new UnitSpot(missing, null), CollisionKind.StillNamedHere, Title(activity));
    }

    private Clash? Circle(UnitTree merged, IReadOnlyList<(string Key, UnitTree Value)> activities)
    {
        var after = activities.ToDictionary(a => a.Key, a => BundleTree.Entries(a.Value, UnitTree.After).Select(e => e.Key).ToList(), StringComparer.Ordinal);
        bool Round(string from, string first) => ComesAfter.Circles(after.Select(a => (a.Key, (IReadOnlyList<string>)(a.Key == from ? [first] : a.Value)))).Contains(from);
        foreach (var code in ComesAfter.Circles(after.Select(a => (a.Key, (IReadOnlyList<string>)a.Value))).Order(StringComparer.Ordinal))
        {
            var brought = after[code].Where(a => mine.Get(UnitTree.Activities, code, UnitTree.After, a) is null && Round(code, a)).Order(StringComparer.Ordinal).FirstOrDefault();
            if (brought is not null)
                return new Clash(new UnitSpot(code, UnitTree.After, brought), CollisionKind.Circle, Title(merged.Get(UnitTree.Activities, brought)!));
        }

        return null;
    }

    internal static int Number(UnitTree? leaf) => JsonSerializer.Deserialize<int>(((Leaf)leaf!).Json);

    internal static string Title(UnitTree activity) => JsonSerializer.Deserialize<string>(((Leaf)activity.Get("title")!).Json)!;

    private sealed record WeekOf(int Week);
}
