using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.People;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Pages.Account;

/// <summary>The second step of signing in for somebody whose phone is lost.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class RecoveryModel(SignInManager<Person> signIns, UserManager<Person> people) : PageModel
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
        if (await signIns.GetTwoFactorAuthenticationUserAsync() is not { } person)
            return RedirectToPage("/Account/SignIn");
        if (!ModelState.IsValid)
            return this.Again();
        if (!await people.IsLockedOutAsync(person) && (await signIns.TwoFactorRecoveryCodeSignInAsync(Input.Code)).Succeeded)
        {
            this.Say($"You are in. {await people.CountRecoveryCodesAsync(person)} recovery codes are left; “Your sign-in” makes new ones.");
            return this.GoBack(Back);
        }

        await people.AccessFailedAsync(person);
        ModelState.AddModelError("Input.Code", "This recovery code does not open, or has been used. After many wrong tries a sign-in rests for five minutes.");
        return this.Again();
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give one of your recovery codes.")]
        [StringLength(40, ErrorMessage = "A recovery code is shorter.")]
        public string Code { get; set; } = "";
    }
}
