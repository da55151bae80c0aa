using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.People;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Pages.Account;

/// <summary>The second step of signing in: a code of the authenticator app.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class CodeModel(SignInManager<Person> signIns) : PageModel
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    [BindProperty(SupportsGet = true), MaxLength(1000)]
    public string? Back { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool Remember { get; set; }

    public async Task<IActionResult> OnGetAsync() =>
        await signIns.GetTwoFactorAuthenticationUserAsync() is null ? RedirectToPage("/Account/SignIn") : Page();

    public async Task<IActionResult> OnPostAsync()
    {
        if (await signIns.GetTwoFactorAuthenticationUserAsync() is null)
            return RedirectToPage("/Account/SignIn");
        if (!ModelState.IsValid)
            return this.Again();
        var code = Input.Code.Replace(" ", "", StringComparison.Ordinal);
        if ((await signIns.TwoFactorAuthenticatorSignInAsync(code, Remember, rememberClient: false)).Succeeded)
            return this.GoBack(Back);
        ModelState.AddModelError("Input.Code", "This code does not open, or has been used. Wait for the next one. After many wrong tries a sign-in rests for five minutes.");
        return this.Again();
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the six digits that the app shows.")]
        [StringLength(12, ErrorMessage = "A code has six digits.")]
        public string Code { get; set; } = "";
    }
}
