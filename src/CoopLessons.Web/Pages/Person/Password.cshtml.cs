using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Pages.People;

/// <summary>A new password, against the old one.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class PasswordModel(AppDb db, UserManager<Person> people, SignInManager<Person> signIns) : PageModel
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public string? Email => User.Identity?.Name;

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
            return this.Again();
        var person = (await people.GetUserAsync(User))!;
        var result = await people.ChangePasswordAsync(person, Input.Old, Input.New);
        if (!result.Succeeded)
        {
            foreach (var error in result.Errors)
                this.Blame(IdentityResult.Failed(error), "", error.Code == nameof(IdentityErrorDescriber.PasswordMismatch) ? "Input.Old" : "Input.New");
            return this.Again();
        }

        // This sign-in ends as well: whoever copied its cookie before is out, too.
        await db.EndSessionsAsync(person.Id, null, HttpContext.RequestAborted);
        await signIns.SignOutAsync();
        this.Say("Your password is changed, and every device is signed out. Sign in with the new one.");
        return RedirectToPage("/Account/SignIn");
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the password you have used until now.")]
        [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
        [DataType(DataType.Password)]
        public string Old { get; set; } = "";

        [Required(ErrorMessage = "Choose a new password.")]
        [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
        [DataType(DataType.Password)]
        public string New { get; set; } = "";
    }
}
