using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Start;

/// <summary>
/// An empty server is claimed: by founding the first family, or by loading the invented co-op. There is nothing here once
/// anybody has signed up.
/// </summary>
[EnableRateLimiting(Access.Brake)]
public sealed class FirstRunModel(
    AppDb db, Founding founding, UserManager<Person> people, SignInManager<Person> signIns, DemoCoop demo, FirstClaim claim, FirstRunWord word, TimeProvider clock) : PageModel
{
    // Named, or a form without these fields would be read as if it had them by their bare names.
    [BindProperty(Name = nameof(Input))]
    public FoundingInput Input { get; set; } = new();

    /// <summary>The word from the server's log, asked of other machines.</summary>
    [BindProperty]
    [StringLength(100, ErrorMessage = "The word is shorter.")]
    public string? Word { get; set; }

    public bool AsksForWord => !HttpContext.IsFromThisMachine();

    public string? WordFault => ModelState[nameof(Word)]?.Errors.FirstOrDefault()?.ErrorMessage;

    /// <summary>Which of the two forms was sent.</summary>
    public bool SentDemo { get; private set; }

    public MillraceLoaded? Loaded { get; private set; }

    /// <summary>Shown once.</summary>
    public string Password { get; private set; } = "";

    public string FirstRecords { get; private set; } = "";

    private CancellationToken Ct => HttpContext.RequestAborted;

    public async Task<IActionResult> OnGetAsync() => await IsClaimedAsync() ? NotFound() : Page();

    public async Task<IActionResult> OnPostAsync()
    {
        using var turn = await claim.TakeAsync(Ct);
        if (await IsClaimedAsync())
            return StatusCode(StatusCodes.Status409Conflict);
        CheckWord();
        if (!ModelState.IsValid)
            return this.Again();
        var (person, result) = await founding.FoundAsync(Input, Ct);
        if (!result.Succeeded)
        {
            this.Blame(result, "Input.Email", "Input.Password");
            return this.Again();
        }

        await signIns.SignInAsync(person, isPersistent: false);
        this.Say($"Welcome, {person.Name}. Begin with the children.");
        return LocalRedirect("/family");
    }

    public async Task<IActionResult> OnPostDemoAsync()
    {
        SentDemo = true;
        using var turn = await claim.TakeAsync(Ct);
        if (await IsClaimedAsync())
            return StatusCode(StatusCodes.Status409Conflict);
        foreach (var key in ModelState.Keys.Where(k => k.StartsWith("Input", StringComparison.Ordinal)).ToList())
            ModelState.Remove(key);
        CheckWord();
        if (!ModelState.IsValid)
            return this.Again();
        // Begun is finished, even if the visitor has gone: half a co-op would help nobody.
        (Loaded, Password) = await demo.LoadAsync(CancellationToken.None);
        var first = Loaded.Families[0];
        var guardian = await people.FindByIdAsync(first.Guardian.PersonId.ToString());
        await signIns.SignInAsync(guardian!, isPersistent: false);
        FirstRecords = await RecordsOfAsync(first);
        return Page();
    }

    private Task<bool> IsClaimedAsync() => db.Users.AnyAsync(Ct);

    private void CheckWord()
    {
        if (AsksForWord && !word.Is(Word))
            ModelState.AddModelError(nameof(Word), "This is not the word that stands in the server's log.");
    }

    /// <summary>The year that was finished last, or the one at hand while none is, of the first child of school age.</summary>
    private async Task<string> RecordsOfAsync(LoadedFamily family)
    {
        db.Current.Act(family.FamilyId, family.Guardian.PersonId, Role.Guardian);
        var today = (await db.Families.SingleAsync(Ct)).Today(clock);
        var year = await db.SchoolYears.Where(y => y.First <= today).OrderByDescending(y => y.Last < today).ThenByDescending(y => y.Last).Select(y => y.Id).FirstAsync(Ct);
        return $"/records?year={year}&learner={family.Learners.First(l => l.IsOfSchoolAge).Id}";
    }
}
