using CoopLessons.Data.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.People;

/// <summary>Ends this sign-in on the server; a copy of its cookie opens nothing any more.</summary>
public sealed class SignOutModel(SignInManager<Person> signIns) : PageModel
{
    /// <param name="others">Somebody else's work waits on this phone: a script took away what belongs to this person.</param>
    public async Task<IActionResult> OnPostAsync(bool others)
    {
        await signIns.SignOutAsync();
        Response.Headers["Clear-Site-Data"] = others ? "\"cache\"" : "\"cache\", \"storage\"";
        return LocalRedirect("/sign-in");
    }
}
