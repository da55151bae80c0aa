using CoopLessons.Data;
using CoopLessons.Web.Security;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Commands;

/// <summary>Finds what a command was given by name or by id; a name must fit one thing alone, capitals aside.</summary>
public static class Lookup
{
    private const int LongestList = 12;

    /// <summary>
    /// The family's id. Row security shows no role all families at once, so a name is looked for through the people: each
    /// person's own families. A family to which nobody belongs is found by its id alone.
    /// </summary>
    /// <exception cref="WrongUseException">None or several fit; the message names what is there.</exception>
    public static async Task<Guid> FamilyAsync(AppDb db, string said, CancellationToken ct)
    {
        if (Guid.TryParse(said, out var id))
        {
            db.Current.ActForProgram(id);
            return await db.Families.AnyAsync(f => f.Id == id, ct)
                ? id
                : throw new WrongUseException($"There is no family with the id {id:D}.");
        }

        var families = new Dictionary<Guid, string>();
        foreach (var person in await db.Users.Select(p => p.Id).ToListAsync(ct))
        {
            db.Current.Know(person);
            var theirs = FamilyScope.Memberships(db, person).Select(m => m.FamilyId);
            // No family is at hand yet: the filter would hide the very names that are looked through.
            var named = db.Families.IgnoreQueryFilters([AppDb.FamilyFilter]).Where(f => theirs.Contains(f.Id)).Select(f => new { f.Id, f.Name });
            foreach (var family in await named.ToListAsync(ct))
                families[family.Id] = family.Name;
        }

        return One("family", "families", said, [.. families.Select(f => (f.Key, f.Value))]);
    }

    /// <summary>The id of a learner of the family at hand.</summary>
    /// <exception cref="WrongUseException">None or several fit; the message names what is there.</exception>
    public static async Task<Guid> LearnerAsync(AppDb db, string said, CancellationToken ct)
    {
        var learners = await db.Learners.OrderBy(l => l.Order).Select(l => new { l.Id, l.Name }).ToListAsync(ct);
        if (Guid.TryParse(said, out var id) && learners.Any(l => l.Id == id))
            return id;
        return One("learner", "learners", said, [.. learners.Select(l => (l.Id, l.Name))]);
    }

    private static Guid One(string one, string many, string said, IReadOnlyList<(Guid Id, string Name)> all)
    {
        var fitting = all.Where(a => string.Equals(a.Name, said.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        if (fitting.Count == 1)
            return fitting[0].Id;
        if (fitting.Count > 1)
            throw new WrongUseException($"“{said}” fits {fitting.Count} {many}; give the id: {Listed(fitting.Select(f => f.Id.ToString("D")))}.");
        throw new WrongUseException(all.Count == 0
            ? $"There is no {one} “{said}”; there are no {many} at all."
            : $"There is no {one} “{said}”; there is {Listed(all.Select(a => $"“{a.Name}”").Order(StringComparer.Ordinal))}.");
    }

    private static string Listed(IEnumerable<string> items)
    {
        var all = items.ToList();
        return string.Join(", ", all.Take(LongestList)) + (all.Count > LongestList ? $" and {all.Count - LongestList} more" : "");
    }
}
