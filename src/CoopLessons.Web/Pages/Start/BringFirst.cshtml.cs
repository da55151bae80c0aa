using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Start;

/// <summary>An empty server is claimed by somebody whose family comes from another one: a sign-in first, then the file.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class BringFirstModel(AppDb db, Founding founding, SignInManager<Person> signIns, FirstClaim claim, FirstRunWord word) : PageModel
{
    [BindProperty(Name = nameof(Input))]
    public AccountInput Input { get; set; } = new();

    /// <summary>The word from the server's log, asked of other machines.</summary>
    [BindProperty]
    [StringLength(100, ErrorMessage = "The word is shorter.")]
    public string? Word { get; set; }

    public bool AsksForWord => !HttpContext.IsFromThisMachine();

    private CancellationToken Ct => HttpContext.RequestAborted;

    public async Task<IActionResult> OnGetAsync() => await db.Users.AnyAsync(Ct) ? NotFound() : Page();

    public async Task<IActionResult> OnPostAsync()
    {
        using var turn = await claim.TakeAsync(Ct);
        if (await db.Users.AnyAsync(Ct))
            return StatusCode(StatusCodes.Status409Conflict);
        if (AsksForWord && !word.Is(Word))
            ModelState.AddModelError(nameof(Word), "This is not the word that stands in the server's log.");
        if (!ModelState.IsValid)
            return this.Again();
        var (person, result) = await founding.MakePersonAsync(Input, _ => { }, Ct);
        if (!result.Succeeded)
        {
            this.Blame(result, "Input.Email", "Input.Password");
            return this.Again();
        }

        await signIns.SignInAsync(person, isPersistent: false);
        return LocalRedirect("/person/bring");
    }
}
