using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Feed;

/// <summary>What a program reads that holds a family's secret address, and is signed in nowhere.</summary>
[EnableRateLimiting(Access.Brake)]
public abstract class FeedDoor(AppDb db, CurrentFamily current) : PageModel
{
    protected AppDb Db { get; } = db;

    protected CancellationToken Ct => HttpContext.RequestAborted;

    protected CalendarAddress Address { get; private set; } = null!;

    /// <summary>From here on it reads as the address's family; of its co-ops only where the address tells of them.</summary>
    /// <returns>Why it stays shut; null where it opens.</returns>
    protected async Task<IActionResult?> OpenAsync(string secret)
    {
        var hash = Invitation.Hash(secret);
        current.Hold(hash);
        // The family is not known before the address is read; whoever holds the secret may read this one row.
        if (await Db.CalendarAddresses.IgnoreQueryFilters([AppDb.FamilyFilter]).AsNoTracking().SingleOrDefaultAsync(a => a.SecretHash == hash, Ct) is not { } address)
            return NotFound();
        if (address.EndedAt is not null)
            return StatusCode(StatusCodes.Status410Gone);
        Address = address;
        current.ActForProgram(address.FamilyId);
        if (address.WithCoops)
            current.BelongTo(await FamilyScope.CoopsOf(Db, address.FamilyId).ToListAsync(Ct));
        return null;
    }
}
