using System.Text.Json;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Travel;

/// <summary>
/// Who the grown-ups of a brought family are here. Whoever brings it takes the place of the guardian of the same id or name, or
/// a new one. Everybody else is a name that nobody can sign in with, and a helper; somebody who signs in here already is
/// put into no family by a file.
/// </summary>
internal sealed class BroughtPeople
{
    private readonly Person _bringer;
    private readonly Guid? _selfThere;
    private readonly HashSet<Guid> _names;

    private BroughtPeople(Person bringer, Guid? selfThere, HashSet<Guid> names) => (_bringer, _selfThere, _names) = (bringer, selfThere, names);

    /// <summary>The bringer was nobody of the family there.</summary>
    public bool BringerIsNew => _selfThere is null;

    /// <param name="members">Rows of the file’s memberships.</param>
    public static async Task<BroughtPeople> OfAsync(AppDb db, Person bringer, IReadOnlyList<JsonElement> members, CancellationToken ct)
    {
        var there = members.Select(m => (Id: m.GetProperty(nameof(Membership.PersonId)).GetGuid(), Name: m.GetProperty(nameof(Membership.Name)).GetString() ?? "", Role: m.GetProperty(nameof(Membership.Role)).GetString())).ToList();
        var named = there.Where(m => m.Role == nameof(Role.Guardian) && string.Equals(m.Name, bringer.Name, StringComparison.OrdinalIgnoreCase)).Take(2).ToList();
        Guid? self = there.Exists(m => m.Id == bringer.Id) ? bringer.Id : named is [var one] ? one.Id : null;
        var names = new HashSet<Guid>();
        foreach (var other in there.Where(m => m.Id != self && m.Id != bringer.Id).DistinctBy(m => m.Id))
        {
            if (await db.Users.SingleOrDefaultAsync(p => p.Id == other.Id, ct) is { } known)
            {
                if (!known.IsNameOnly)
                    continue;
            }
            else
            {
                db.Users.Add(Person.NameOnly(other.Id, other.Name.Length > Person.LongestName ? other.Name[..Person.LongestName] : other.Name));
            }

            names.Add(other.Id);
        }

        return new BroughtPeople(bringer, self, names);
    }

    /// <summary>The person's id here; null where nobody here is that person.</summary>
    public Guid? Here(Guid there) => there == _selfThere ? _bringer.Id : _names.Contains(there) ? there : null;
}
