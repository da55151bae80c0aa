using CoopLessons.Data;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Start;

/// <summary>Sends each visitor where they begin.</summary>
public sealed class IndexModel(AppDb db, CurrentFamily current, TabletDoor tablets) : PageModel
{
    public async Task<IActionResult> OnGetAsync()
    {
        if (!await db.Users.AnyAsync(HttpContext.RequestAborted))
            return LocalRedirect("/first-run");
        if (User.Identity?.IsAuthenticated != true)
            return LocalRedirect(tablets.IsCarriedBy(HttpContext) ? "/tablet" : "/sign-in");
        return LocalRedirect(current.FamilyId is null ? "/person/found-family" : "/today");
    }
}
