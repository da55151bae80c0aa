using CoopLessons.Data.People;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Pages.Account;

/// <summary>A new person founds a family, where the host lets anybody do so.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class SignUpModel(Founding founding, SignInManager<Person> signIns, ServerSettings settings) : PageModel
{
    [BindProperty]
    public FoundingInput Input { get; set; } = new();

    public bool IsOpen => settings.SignUpIsOpen;

    public IActionResult OnGet() => User.Identity?.IsAuthenticated == true ? LocalRedirect("/") : Page();

    public async Task<IActionResult> OnPostAsync()
    {
        if (!IsOpen)
            return NotFound();
        if (User.Identity?.IsAuthenticated == true)
            return LocalRedirect("/");
        if (!ModelState.IsValid)
            return this.Again();
        var (person, result) = await founding.FoundAsync(Input, HttpContext.RequestAborted);
        if (!result.Succeeded)
        {
            this.Blame(result, "Input.Email", "Input.Password");
            return this.Again();
        }

        await signIns.SignInAsync(person, isPersistent: false);
        this.Say($"Welcome, {person.Name}. Begin with the children.");
        return LocalRedirect("/family");
    }
}
