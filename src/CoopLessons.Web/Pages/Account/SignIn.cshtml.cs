using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.People;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Pages.Account;

/// <summary>Signing in with e-mail and password; an authenticator app's code is asked for on the next page.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class SignInModel(UserManager<Person> people, SignInManager<Person> signIns, TabletDoor tablets) : PageModel
{
    // One sentence for every failure, so that nobody learns which addresses are known here.
    public const string Refusal = "This e-mail and password do not go together. After many wrong tries a sign-in rests for five minutes.";

    // Checked where no person is found, so that the answer takes as long as for one who is.
    private static string? _standIn;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    /// <summary>Where the visitor was going.</summary>
    [BindProperty(SupportsGet = true), MaxLength(1000)]
    public string? Back { get; set; }

    /// <summary>Whether children open their lists on this device.</summary>
    public bool IsTablet => tablets.IsCarriedBy(HttpContext);

    public IActionResult OnGet() => User.Identity?.IsAuthenticated == true ? this.GoBack(Back) : Page();

    public async Task<IActionResult> OnPostAsync()
    {
        if (User.Identity?.IsAuthenticated == true)
            return this.GoBack(Back);
        if (!ModelState.IsValid)
            return this.Again();
        var person = await people.FindByEmailAsync(Input.Email);
        var result = person is null ? Microsoft.AspNetCore.Identity.SignInResult.Failed : await signIns.PasswordSignInAsync(person, Input.Password, Input.Remember, lockoutOnFailure: true);
        if (result.Succeeded)
            return this.GoBack(Back);
        if (result.RequiresTwoFactor)
            return RedirectToPage("/Account/Code", new { back = Back, remember = Input.Remember });
        if (person is null || result.IsLockedOut)
            SpendTheSameTime();
        ModelState.AddModelError("Input.Password", Refusal);
        return this.Again();
    }

    private void SpendTheSameTime()
    {
        var nobody = Person.Named("", "");
        _standIn ??= people.PasswordHasher.HashPassword(nobody, Guid.NewGuid().ToString());
        people.PasswordHasher.VerifyHashedPassword(nobody, _standIn, Input.Password);
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the e-mail address you signed up with.")]
        [StringLength(AccountRules.LongestEmail, ErrorMessage = "An e-mail address has at most {1} signs.")]
        public string Email { get; set; } = "";

        [Required(ErrorMessage = "Give your password.")]
        [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
        [DataType(DataType.Password)]
        public string Password { get; set; } = "";

        public bool Remember { get; set; }
    }
}
