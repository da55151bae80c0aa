using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Sharing;

/// <summary>
/// Small units and what families do to them: few codes, few values, so that edits meet. An edit that would break a rule
/// of bundles is not made.
/// </summary>
internal static class AnyUnit
{
    private static readonly string[] Codes = ["creek", "dam", "gauge", "mill", "pump", "weir"];
    private static readonly string[] SubjectCodes = ["art", "history", "reading", "science"];

    private static readonly Gen<int> Small = Gen.Int[0, 11];

    /// <summary>An edit: which kind, of which activity, of which entry, to which value. The last kinds are all of what comes after what, since a circle takes two that fit.</summary>
    private static readonly Gen<(int Kind, int Which, int Entry, int Value)> Edits = Gen.Select(Gen.Int[0, 28], Gen.Int[0, 5], Gen.Int[0, 3], Small);

    public static readonly Gen<UnitBundle> Units =
        from weeks in Gen.Int[2, 4]
        from values in Small.Array[6]
        from edits in Edits.Array[0, 8]
        select After(edits, Plain(weeks, values));

    /// <summary>A unit and two versions of it: some edits are one side's own, some are answered by an edit of the other side that meets them.</summary>
    public static readonly Gen<(UnitBundle Base, UnitBundle Mine, UnitBundle Theirs)> Versions =
        from unit in Units
        from mine in Edits.Array[0, 4]
        from theirs in Edits.Array[0, 4]
        from met in Gen.Select(Edits, Edits, Gen.Bool).Array[0, 3]
        let here = met.Select(m => m.Item3 ? m.Item1 : Meeting(m.Item1, m.Item2))
        let there = met.Select(m => m.Item3 ? Meeting(m.Item1, m.Item2) : m.Item1)
        select (unit, After([.. here, .. mine], unit), After([.. there, .. theirs], unit));

    /// <summary>With the revision after next.</summary>
    public static readonly Gen<(UnitBundle Base, UnitBundle Mine, UnitBundle Theirs, UnitBundle Third)> MoreVersions =
        from three in Versions
        from third in Edits.Array[0, 5]
        select (three.Base, three.Mine, three.Theirs, After(third, three.Theirs));

    private static UnitBundle Plain(int weeks, int[] values) => new(
        UnitBundle.FormatName, UnitBundle.CurrentVersion, "Where Water Goes", "Water.", weeks,
        [.. SubjectCodes.Select(c => new BundleSubject(c, c.ToUpperInvariant()))],
        [.. values.Take(4).Select((v, i) => Fresh(Codes[i], v, weeks))]);

    private static BundleActivity Fresh(string code, int v, int weeks) => new(
        code, 1 + v % Math.Min(2, weeks), 1 + v % 3, $"The {code}", (ActivityKind)(v % 14), $"Do {v}.", v % 2 == 0 ? [new(SubjectCodes[v % 4], 1 + v % 3)] : [new(SubjectCodes[v % 4], 1), new(SubjectCodes[(v + 1) % 4], 2)], 10 + v, v % 2 * 30, (AdultNeed)(v % 3),
        WaitingFor: v % 2 == 1 ? "it dries" : null,
        Supplies: [new("string", 1 + v, "m", Per.Pair), new("paper", 2, "sheet", Per.Learner)],
        Hazards: v % 3 == 0 ? [new(HazardKind.Water, "Stay near.")] : null);

    private static UnitBundle After((int Kind, int Which, int Entry, int Value)[] edits, UnitBundle unit) => edits.Aggregate(unit, (u, e) =>
    {
        var edited = Edited(u, e.Kind, Codes[e.Which], e.Entry, e.Value);
        return edited.Activities.Count > 0 && BundleRules.Faults(edited).Count == 0 && edited.Activities.All(a => a.Subjects.Count > 0) ? edited : u;
    });

    /// <summary>What another family may do where the first did something: the same spot otherwise, or what cannot stand beside it.</summary>
    private static (int Kind, int Which, int Entry, int Value) Meeting((int Kind, int Which, int Entry, int Value) edit, (int Kind, int Which, int Entry, int Value) other) => edit.Kind switch
    {
        1 => (6, other.Which, 0, 2 + other.Value % 2),
        2 => (11, other.Which, edit.Entry, 1),
        4 when other.Value % 2 == 0 => (14, other.Which, 1, edit.Which),
        4 => (8, edit.Which, 0, other.Value),
        >= 11 and <= 13 => (11 + other.Value % 3, edit.Which, other.Entry, other.Which),
        14 or 15 or 16 or > 23 => (14, edit.Value % 6, 1, edit.Which),
        _ => (edit.Kind, edit.Which, edit.Entry, other.Value),
    };

    private static UnitBundle Edited(UnitBundle u, int kind, string code, int entry, int value) => kind switch
    {
        0 => u with { Title = $"Water {value}" },
        1 => u with { Weeks = 2 + value % 4 },
        2 => WithoutSubject(u, SubjectCodes[entry]),
        3 => u with { Subjects = [.. u.Subjects.Where(s => s.Code != SubjectCodes[entry]), new(SubjectCodes[entry], $"Name {value % 3}")] },
        4 => u.Without(code),
        5 => u.Has(code) ? u : u.Plus(Fresh(code, value, u.Weeks)),
        _ => u.With(code, a => Edited(a, kind, entry, value)),
    };

    private static BundleActivity Edited(BundleActivity a, int kind, int entry, int value) => kind switch
    {
        6 or 7 => a with { Week = 1 + value % 4, Order = 1 + value % 3 },
        8 => a with { HandsOnMinutes = 10 + value },
        9 => a with { Does = $"Do {value}." },
        10 => value % 2 == 0 ? a with { WaitingMinutes = 0, WaitingFor = null } : a with { WaitingMinutes = 10 * value, WaitingFor = "it dries" },
        11 or 12 => a with { Subjects = [.. a.Subjects.Where(s => s.Code != SubjectCodes[entry]), .. value % 3 == 0 ? Array.Empty<BundleWeight>() : [new(SubjectCodes[entry], value)]], Touches = [.. (a.Touches ?? []).Where(t => t != SubjectCodes[entry])] },
        13 => a with { Subjects = [.. a.Subjects.Where(s => s.Code != SubjectCodes[entry])], Touches = [.. (a.Touches ?? []).Where(t => t != SubjectCodes[entry]), SubjectCodes[entry]] },
        14 or 15 or 16 or > 23 => a with { After = [.. (a.After ?? []).Where(c => c != Codes[value % 6]), .. entry == 0 ? Array.Empty<string>() : [Codes[value % 6]]] },
        17 => a with { Supplies = [.. (a.Supplies ?? []).Select((s, i) => i == entry ? s with { Quantity = 1 + value / 4m, Note = value % 3 == 0 ? null : $"Note {value}" } : s)] },
        18 => a with { Supplies = [.. (a.Supplies ?? []).Where((_, i) => i != entry)] },
        19 => a with { Supplies = [.. (a.Supplies ?? []).Take(entry), new($"thing {value}", 1, "piece", Per.Family), .. (a.Supplies ?? []).Skip(entry)] },
        20 => a with { Supplies = [.. (a.Supplies ?? []).Skip(1), .. (a.Supplies ?? []).Take(1)] },
        21 => a with { Variants = value % 2 == 0 ? [new(5, 8, $"Does {value}.")] : [new(5, 8, "Watches."), new(9, 12, $"Writes {value}.")] },
        22 => a with { Ingredients = [new("Paste", [.. Enum.GetValues<Allergen>().Where((_, i) => (value + entry >> i % 4 & 1) == 1)])], Books = [new($"Tale {value % 2}", BookUse.Heard, Isbn: entry == 0 ? null : "9780000000002")] },
        23 => a with { Ahead = [new(value % 2 == 0 ? "Cress" : "cress", AheadKind.Seeds, 1 + value)], Hazards = [new(HazardKind.Water, $"Caution {value % 3}.")] },
        _ => a,
    };

    private static UnitBundle WithoutSubject(UnitBundle u, string code) => u with
    {
        Subjects = [.. u.Subjects.Where(s => s.Code != code)],
        Activities = [.. u.Activities.Select(a => a with { Subjects = [.. a.Subjects.Where(s => s.Code != code)], Touches = a.Touches?.Where(t => t != code).ToList() })],
    };
}
