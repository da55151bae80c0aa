using CoopLessons.Data;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Start;

/// <summary>Sends each visitor where they begin.</summary>
public sealed class IndexModel(AppDb db, CurrentFamily current) : PageModel
{
    public async Task<IActionResult> OnGetAsync()
    {
        if (!await db.Users.AnyAsync(HttpContext.RequestAborted))
            return LocalRedirect("/first-run");
        if (User.Identity?.IsAuthenticated != true)
            return LocalRedirect("/sign-in");
        return LocalRedirect(current.FamilyId is null ? "/person/found-family" : "/today");
    }
}
