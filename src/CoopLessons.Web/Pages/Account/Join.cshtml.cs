using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Account;

/// <summary>Somebody opens the link by which a family invites them.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class JoinModel(AppDb db, CurrentFamily current, Founding founding, UserManager<Person> people, SignInManager<Person> signIns, TimeProvider clock) : PageModel
{
    [BindProperty]
    public AccountInput Input { get; set; } = new();

    public Invitation? Invitation { get; private set; }

    public bool IsOpen => Invitation?.IsOpen(Now) == true;

    public string FamilyName { get; private set; } = "";

    public bool SignedIn => User.Identity?.IsAuthenticated == true;

    /// <summary>The visitor acts for this family already.</summary>
    public bool BelongsAlready { get; private set; }

    public string Here => Request.Path;

    public string Part => Invitation!.Role == Role.Guardian ? "a guardian" : "a helper";

    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    private CancellationToken Ct => HttpContext.RequestAborted;

    public async Task<IActionResult> OnGetAsync(string secret)
    {
        if (!await FindAsync(secret))
            return NotFound();
        if (!IsOpen)
            return this.Again(StatusCodes.Status410Gone);
        Input.Name = Invitation!.ForWhom;
        return Page();
    }

    /// <summary>Somebody who is signed in accepts.</summary>
    public async Task<IActionResult> OnPostAcceptAsync(string secret)
    {
        if (!await FindAsync(secret))
            return NotFound();
        if (!SignedIn)
            return RedirectToPage("/Account/SignIn", new { back = Here });
        if (BelongsAlready)
            return LocalRedirect("/");
        if (!IsOpen)
            return this.Again(StatusCodes.Status410Gone);
        var person = (await people.GetUserAsync(User))!;
        try
        {
            Accept(person);
            await db.SaveChangesAsync(Ct);
        }
        catch (DbUpdateException)
        {
            return await TakenAsync(secret);
        }

        return Welcome();
    }

    /// <summary>Somebody new makes a sign-in and accepts with it.</summary>
    public async Task<IActionResult> OnPostAsync(string secret)
    {
        if (!await FindAsync(secret))
            return NotFound();
        if (SignedIn)
            return LocalRedirect(Here);
        if (!IsOpen)
            return this.Again(StatusCodes.Status410Gone);
        if (!ModelState.IsValid)
            return this.Again();
        try
        {
            var (person, result) = await founding.MakePersonAsync(Input, Accept, Ct);
            if (!result.Succeeded)
            {
                this.Blame(result, "Input.Email", "Input.Password");
                return this.Again();
            }

            await signIns.SignInAsync(person, isPersistent: false);
        }
        catch (DbUpdateConcurrencyException)
        {
            return await TakenAsync(secret);
        }

        return Welcome();
    }

    private void Accept(Person person)
    {
        current.Act(Invitation!.FamilyId, person.Id, Invitation.Role);
        db.Memberships.Add(Invitation.Accept(person.Id, person.Name, Now));
    }

    private LocalRedirectResult Welcome()
    {
        this.Say($"You belong to the {FamilyName} family now, as {Part}.");
        return LocalRedirect("/");
    }

    /// <summary>Somebody was faster with the same link.</summary>
    private async Task<IActionResult> TakenAsync(string secret)
    {
        db.ChangeTracker.Clear();
        await FindAsync(secret);
        return this.Again(StatusCodes.Status410Gone);
    }

    private async Task<bool> FindAsync(string secret)
    {
        var me = current.PersonId;
        var hash = Invitation.Hash(secret);
        current.Hold(hash);
        // The family is not known before the link is read; whoever holds the secret may read this one row.
        Invitation = await db.Invitations.IgnoreQueryFilters([AppDb.FamilyFilter]).SingleOrDefaultAsync(i => i.SecretHash == hash, Ct);
        if (Invitation is null)
            return false;
        if (!IsOpen)
            return true;
        // Whoever holds an open link may know which family it is from.
        current.ActForProgram(Invitation.FamilyId);
        FamilyName = await db.Families.Select(f => f.Name).SingleAsync(Ct);
        BelongsAlready = me is { } person && await db.Memberships.AnyAsync(m => m.PersonId == person, Ct);
        return true;
    }
}
