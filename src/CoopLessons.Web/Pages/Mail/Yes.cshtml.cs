using System.Security.Cryptography;
using CoopLessons.Data;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Mail;

/// <summary>An address proves to be its person's. By a button, since programs open links of mails by themselves.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class YesModel(AppDb db, MailLinks links, TimeProvider clock) : PageModel
{
    public bool IsDone { get; private set; }

    public async Task<IActionResult> OnGetAsync(string secret) => await PersonAsync(secret) is null ? NotFound() : Page();

    public async Task<IActionResult> OnPostAsync(string secret)
    {
        if (await PersonAsync(secret) is not { } person)
            return NotFound();
        await db.Users.Where(p => p.Id == person).ExecuteUpdateAsync(s => s.SetProperty(p => p.EmailConfirmed, true), HttpContext.RequestAborted);
        IsDone = true;
        return Page();
    }

    /// <summary>Whose address it is, as long as it is theirs.</summary>
    private async Task<Guid?> PersonAsync(string secret)
    {
        if (links.ReadProof(secret, clock.GetUtcNow().UtcDateTime) is not { } told)
            return null;
        var address = await db.Users.Where(p => p.Id == told.PersonId).Select(p => p.Email).SingleOrDefaultAsync(HttpContext.RequestAborted);
        return address is not null && CryptographicOperations.FixedTimeEquals(MailLinks.Of(address), told.Address) ? told.PersonId : null;
    }
}
