using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.Account;

/// <summary>Answers shared by pages on which no family is at hand.</summary>
public static class AccountAnswers
{
    /// <summary>To where the visitor was going, if that is on this server; else to the beginning.</summary>
    public static IActionResult GoBack(this PageModel page, string? back) =>
        page.LocalRedirect(page.Url.IsLocalUrl(back) && back.All(IsPrintable) ? back : "/");

    // A header holds nothing else; our own addresses need nothing else.
    private static bool IsPrintable(char sign) => sign is > ' ' and < '\x7f';

    /// <summary>The form once more, with what was typed and the messages beside the fields.</summary>
    public static IActionResult Again(this PageModel page, int status = StatusCodes.Status422UnprocessableEntity)
    {
        page.Response.StatusCode = status;
        return page.Page();
    }

    /// <summary>A sentence that the next page says, once.</summary>
    public static void Say(this PageModel page, string sentence) => page.TempData["Said"] = sentence;

    /// <summary>Why an account could not be made or changed, beside the field that it concerns.</summary>
    public static void Blame(this PageModel page, IdentityResult result, string emailField, string passwordField)
    {
        foreach (var error in result.Errors)
        {
            var (field, message) = error.Code switch
            {
                nameof(IdentityErrorDescriber.DuplicateEmail) => (emailField, "Somebody has signed up with this e-mail already. Sign in instead."),
                nameof(IdentityErrorDescriber.DuplicateUserName) => (emailField, ""),
                nameof(IdentityErrorDescriber.InvalidEmail) or nameof(IdentityErrorDescriber.InvalidUserName) => (emailField, "This is not an e-mail address."),
                nameof(IdentityErrorDescriber.PasswordTooShort) => (passwordField, $"A password has at least {Security.SignIns.ShortestPassword} signs."),
                nameof(IdentityErrorDescriber.PasswordMismatch) => (passwordField, "This is not your password."),
                _ => (passwordField, error.Description),
            };
            if (message.Length > 0)
                page.ModelState.AddModelError(field, message);
        }
    }
}

/// <summary>Bounds of what an account holds.</summary>
public static class AccountRules
{
    /// <summary>RFC 5321 § 4.5.3.1.3 limits a path to 256 octets, two of which are its brackets.</summary>
    public const int LongestEmail = 254;
}
