using CoopLessons.Data;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.People;

/// <summary>A family that a person belongs to.</summary>
public sealed record FamilyChoice(Guid FamilyId, string Name, Role Role)
{
    public string Part => Role == Role.Guardian ? "guardian" : "helper";

    /// <summary>The person's families, the one chosen last first.</summary>
    public static async Task<IReadOnlyList<FamilyChoice>> OfAsync(AppDb db, Guid personId, CancellationToken ct)
    {
        var memberships = await FamilyScope.Memberships(db, personId).ToListAsync(ct);
        var ids = memberships.Select(m => m.FamilyId).ToList();
        // A person may read the names of all families they belong to, not only of the one they act for.
        var names = await db.Families.IgnoreQueryFilters([AppDb.FamilyFilter]).Where(f => ids.Contains(f.Id)).ToDictionaryAsync(f => f.Id, f => f.Name, ct);
        return [.. memberships.Select(m => new FamilyChoice(m.FamilyId, names[m.FamilyId], m.Role))];
    }
}

public static class SignInSessions
{
    /// <summary>Ends every sign-in of a person but one, and the tablets that they made for the family at hand.</summary>
    /// <returns>How many were ended.</returns>
    public static async Task<int> EndSessionsAsync(this AppDb db, Guid personId, string? exceptHash, CancellationToken ct) =>
        await db.SignInSessions.Where(s => s.PersonId == personId && s.KeyHash != exceptHash).ExecuteDeleteAsync(ct)
        + await db.FamilyTablets.Where(t => t.MadeById == personId).ExecuteDeleteAsync(ct);
}
