using System.Security.Claims;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Authorization;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Security;

/// <summary>
/// Finds, for each request of a signed-in person, the family they act for: the membership chosen last. It is asked of
/// the database each time, so that somebody who was taken out of a family is out with the next request. Without a person,
/// the family's tablet may be there.
/// </summary>
public sealed class FamilyScope(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, CurrentFamily current, AppDb db, TabletDoor tablets)
    {
        if (Guid.TryParse(context.User.FindFirstValue(ClaimTypes.NameIdentifier), out var personId) && IsPage(context))
        {
            current.Know(personId);
            var membership = await Memberships(db, personId).FirstOrDefaultAsync(context.RequestAborted);
            if (membership is not null)
            {
                current.Act(membership.FamilyId, personId, membership.Role);
                current.BelongTo(await CoopsOf(db, membership.FamilyId).ToListAsync(context.RequestAborted));
            }
        }
        else if (IsPage(context) && context.GetEndpoint()?.Metadata.GetMetadata<IAllowAnonymous>() is null)
        {
            await tablets.EnterAsync(context);
        }

        await next(context);
    }

    /// <summary>The person's memberships, the one chosen last first.</summary>
    public static IQueryable<Membership> Memberships(AppDb db, Guid personId) =>
        // The family is not known yet: a person's own memberships are what tells it.
        db.Memberships.IgnoreQueryFilters([AppDb.FamilyFilter]).AsNoTracking()
            .Where(m => m.PersonId == personId).OrderByDescending(m => m.ChosenAt).ThenBy(m => m.FamilyId);

    /// <summary>The co-ops that a family belongs to now.</summary>
    public static IQueryable<Guid> CoopsOf(AppDb db, Guid familyId) =>
        // Which co-ops are the family's is not known yet: its own parts in them are what tells it.
        db.CoopFamilies.IgnoreQueryFilters([AppDb.CoopFilter]).Where(f => f.FamilyId == familyId && f.LeftAt == null).OrderBy(f => f.Since).Select(f => f.CoopId);

    private static bool IsPage(HttpContext context) => context.GetEndpoint()?.Metadata is { } told
        && (told.GetMetadata<Microsoft.AspNetCore.Mvc.RazorPages.PageActionDescriptor>() is not null || told.GetMetadata<AsksForFamily>() is not null);
}

/// <summary>Marks an address that is no page and needs to know for which family it is asked.</summary>
public sealed class AsksForFamily;
