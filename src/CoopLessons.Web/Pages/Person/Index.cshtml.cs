using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using Person = CoopLessons.Data.People.Person;

namespace CoopLessons.Web.Pages.People;

/// <summary>A person's own sign-in: name, password, authenticator app, families, and the devices they are signed in on.</summary>
public sealed class IndexModel(AppDb db, CurrentFamily current, UserManager<Person> people, TimeProvider clock) : PageModel
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public string Email { get; private set; } = "";

    public bool HasAuthenticator { get; private set; }

    public int CodesLeft { get; private set; }

    public IReadOnlyList<Device> Devices { get; private set; } = [];

    public IReadOnlyList<FamilyChoice> Families { get; private set; } = [];

    private CancellationToken Ct => HttpContext.RequestAborted;

    private Guid Me => current.PersonId!.Value;

    public async Task OnGetAsync()
    {
        await ShowAsync();
        Input.Name = (await people.GetUserAsync(User))!.Name;
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
        {
            await ShowAsync();
            return this.Again();
        }

        var person = (await people.GetUserAsync(User))!;
        person.Name = Input.Name;
        await people.UpdateAsync(person);
        this.Say("Your name is saved. Each family calls you as it did before.");
        return RedirectToPage();
    }

    /// <summary>Ends one sign-in of this person's own.</summary>
    public async Task<IActionResult> OnPostEndAsync(string? id)
    {
        if (id is not { Length: <= 64 } || await db.SignInSessions.Where(s => s.PersonId == Me && s.KeyHash == id).ExecuteDeleteAsync(Ct) == 0)
            return NotFound();
        this.Say("That device is signed out.");
        return RedirectToPage();
    }

    /// <summary>Ends a tablet that this person made for the family at hand.</summary>
    public async Task<IActionResult> OnPostEndTabletAsync(Guid tabletId)
    {
        if (await db.FamilyTablets.Where(t => t.MadeById == Me && t.Id == tabletId).ExecuteDeleteAsync(Ct) == 0)
            return NotFound();
        this.Say("No list opens on that tablet any more.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostEndOthersAsync()
    {
        var ended = await db.EndSessionsAsync(Me, SessionStore.HashHere(HttpContext), Ct);
        this.Say(ended == 0 ? "You were signed in on no other device." : "All other devices are signed out.");
        return RedirectToPage();
    }

    private async Task ShowAsync()
    {
        var person = (await people.GetUserAsync(User))!;
        (Email, HasAuthenticator) = (person.Email!, person.TwoFactorEnabled);
        CodesLeft = HasAuthenticator ? await people.CountRecoveryCodesAsync(person) : 0;
        Families = await FamilyChoice.OfAsync(db, Me, Ct);
        var family = await db.Families.AsNoTracking().SingleOrDefaultAsync(Ct);
        ViewData["Family"] = family?.Name;
        var now = clock.GetUtcNow().UtcDateTime;
        var here = SessionStore.HashHere(HttpContext);
        var zone = family?.Zone ?? TimeZoneInfo.Utc;
        DateTime Local(DateTime instant) => TimeZoneInfo.ConvertTimeFromUtc(instant, zone);
        Devices = [.. (await db.SignInSessions.AsNoTracking().Where(s => s.PersonId == Me && s.EndsAt > now).OrderByDescending(s => s.StartedAt).ToListAsync(Ct))
            .Select(s => new Device(s.KeyHash, Device.NameOf(s.Device), Local(s.StartedAt), Local(s.EndsAt), s.KeyHash == here))
            .Concat((await db.FamilyTablets.AsNoTracking().Where(t => t.MadeById == Me && t.EndsAt > now).OrderByDescending(t => t.MadeAt).ToListAsync(Ct))
                .Select(t => new Device("", Device.NameOf(t.Device), Local(t.MadeAt), Local(t.EndsAt), false, t.Id)))
            .OrderByDescending(d => d.IsThis)];
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give your name.")]
        [StringLength(Person.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";
    }
}
