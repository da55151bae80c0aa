using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Units;

/// <summary>
/// The subjects of bundles met with a family's own: by what was met before, then by code, then by name. Those that the
/// family lacks are added at the end of its list, unsaved.
/// </summary>
public sealed class MetSubjects
{
    private readonly AppDb _db;
    private readonly List<FamilySubject> _own;
    private readonly Dictionary<string, Guid> _ids;

    private MetSubjects(AppDb db, List<FamilySubject> own, Dictionary<string, Guid> ids) => (_db, _own, _ids) = (db, own, ids);

    /// <summary>Own subjects by the codes of the bundles.</summary>
    public IReadOnlyDictionary<string, Guid> Ids => _ids;

    /// <summary>The family's own, with those that were added.</summary>
    public IReadOnlyList<FamilySubject> Own => _own;

    /// <param name="known">What was met before; empty at first.</param>
    public static async Task<MetSubjects> OfAsync(AppDb db, IReadOnlyDictionary<string, Guid> known, CancellationToken ct)
    {
        await db.Subjects.LoadAsync(ct);
        // With those that an earlier bundle added and nobody saved yet.
        var own = db.Subjects.Local.OrderBy(s => s.Order).ToList();
        return new MetSubjects(db, own, known.Where(k => own.Any(s => s.Id == k.Value)).ToDictionary(StringComparer.Ordinal));
    }

    /// <summary>
    /// The bundle in the family's own codes and names. Two of its subjects may meet one of the family's: their weights are
    /// added, and drawn down to the largest that travels.
    /// </summary>
    public UnitBundle InOwn(UnitBundle bundle)
    {
        var met = bundle.Subjects.ToDictionary(s => s.Code, Meet, StringComparer.Ordinal);
        return bundle with
        {
            Subjects = [.. bundle.Subjects.Select(s => met[s.Code]).DistinctBy(s => s.Id).OrderBy(s => s.Order).Select(s => new BundleSubject(s.Code, s.Name))],
            Activities = [.. bundle.Activities.Select(a => a with { Subjects = Weights(a, met), Touches = Touches(a, met) })],
        };
    }

    /// <summary>A bundle of the family's in the codes and names by which the other side knows the subjects.</summary>
    /// <param name="names">The other side's subjects.</param>
    public UnitBundle InTheirs(UnitBundle own, IReadOnlyList<BundleSubject> names)
    {
        var theirs = new Dictionary<string, BundleSubject>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            if (_ids.TryGetValue(name.Code, out var id) && _own.Find(s => s.Id == id) is { } subject)
                theirs.TryAdd(subject.Code, name);
        }

        var taken = theirs.Values.Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        string Code(string code) => theirs.TryGetValue(code, out var there) ? there.Code : Free(code, taken);
        return own with
        {
            Subjects = [.. own.Subjects.Select(s => theirs.GetValueOrDefault(s.Code) ?? s with { Code = Code(s.Code) })],
            Activities = [.. own.Activities.Select(a => a with { Subjects = [.. a.Subjects.Select(w => w with { Code = Code(w.Code) })], Touches = a.Touches is { } touches ? [.. touches.Select(Code)] : null })],
        };
    }

    // One of the family's own may have a code under which the other side knows something else.
    private static string Free(string code, HashSet<string> taken)
    {
        if (!taken.Contains(code))
            return code;
        var stem = code.Length > 36 ? code[..36].TrimEnd('-') : code;
        return Enumerable.Range(2, 30).Select(n => $"{stem}-{n}").First(c => !taken.Contains(c));
    }

    private FamilySubject Meet(BundleSubject subject)
    {
        var own = _ids.TryGetValue(subject.Code, out var id) ? _own.Single(s => s.Id == id) : Found(subject) ?? Added(subject);
        _ids[subject.Code] = own.Id;
        return own;
    }

    private FamilySubject? Found(BundleSubject subject) =>
        _own.FirstOrDefault(s => s.Code == subject.Code) ?? _own.FirstOrDefault(s => string.Equals(s.Name, subject.Name, StringComparison.OrdinalIgnoreCase));

    private FamilySubject Added(BundleSubject subject)
    {
        var added = new FamilySubject(Guid.CreateVersion7(), subject.Code, string.Concat(subject.Name.EnumerateRunes().Take(FamilySubject.LongestName)), _own.Count == 0 ? 0 : _own.Max(s => s.Order) + 1);
        _own.Add(added);
        _db.Subjects.Add(added);
        return added;
    }

    private static List<BundleWeight> Weights(BundleActivity activity, Dictionary<string, FamilySubject> met)
    {
        var sums = activity.Subjects.GroupBy(s => met[s.Code].Code).Select(g => new BundleWeight(g.Key, g.Sum(s => s.Weight))).ToList();
        var largest = sums.Max(s => s.Weight);
        return largest <= UnitTravel.MostWeight ? sums : [.. sums.Select(s => s with { Weight = Math.Max(1, s.Weight * UnitTravel.MostWeight / largest) })];
    }

    private static List<string>? Touches(BundleActivity activity, Dictionary<string, FamilySubject> met) =>
        (activity.Touches ?? []).Select(t => met[t].Code).Distinct().Except(activity.Subjects.Select(s => met[s.Code].Code)).ToList() is { Count: > 0 } touches ? touches : null;
}
