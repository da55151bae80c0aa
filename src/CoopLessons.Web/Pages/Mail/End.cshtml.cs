using CoopLessons.Data;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Mail;

/// <summary>Ends notices by mail, by a button or by the one POST that a mail program sends (RFC 8058 § 3.2): the link is all it has.</summary>
[IgnoreAntiforgeryToken]
[EnableRateLimiting(Access.Brake)]
public sealed class EndModel(AppDb db, MailLinks links) : PageModel
{
    public bool IsDone { get; private set; }

    public IActionResult OnGet(string secret) => links.ReadEnd(secret) is null ? NotFound() : Page();

    public async Task<IActionResult> OnPostAsync(string secret)
    {
        if (links.ReadEnd(secret) is not { } person)
            return NotFound();
        await db.MailChoices.Where(c => c.PersonId == person).ExecuteDeleteAsync(HttpContext.RequestAborted);
        await db.MailToSend.Where(m => m.PersonId == person && m.DoneAt == null).ExecuteDeleteAsync(HttpContext.RequestAborted);
        IsDone = true;
        return Page();
    }
}
