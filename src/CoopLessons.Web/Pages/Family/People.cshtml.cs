using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>Who acts for the family, who is invited, and who is taken out.</summary>
public sealed class PeopleModel(AppDb db, TimeProvider clock, ServerSettings settings) : FamilyPage(db, clock)
{
    public const int MostInvitations = 20;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<Membership> Members { get; private set; } = [];

    public IReadOnlyList<Invitation> Invitations { get; private set; } = [];

    /// <summary>The link just made; shown once, since the server keeps only its hash.</summary>
    public string? Link { get; private set; }

    /// <summary>Who came with a brought family and cannot sign in here; an invitation makes them somebody who can.</summary>
    public IReadOnlySet<Guid> NamesOnly { get; private set; } = new HashSet<Guid>();

    public Guid Me => Db.Current.PersonId!.Value;

    public bool IsLastGuardian(Membership member) => member.Role == Role.Guardian && Members.Count(m => m.Role == Role.Guardian) == 1;

    public async Task OnGetAsync()
    {
        await ListAsync();
        Input.Id = Guid.CreateVersion7();
    }

    public async Task<IActionResult> OnPostInviteAsync()
    {
        await ListAsync();
        if (await IsMadeAsync())
            return MadeAlready();

        if (Invitations.Count >= MostInvitations)
            ModelState.AddModelError("Input.Name", $"{MostInvitations} invitations are open. Withdraw one first.");
        if (!ModelState.IsValid)
            return Again();
        var secret = Invitation.NewSecret();
        if (Members.SingleOrDefault(m => m.PersonId == Me) is not { } inviter)
            return Forbid();
        // Whoever takes the inviter out in this moment has not seen the link: one of the two must fail.
        Db.Entry(inviter).State = EntityState.Modified;
        Db.Invitations.Add(new Invitation(Input.Id == Guid.Empty ? Guid.CreateVersion7() : Input.Id, secret, Input.Name, Input.Role!.Value, Me, inviter.Name, Now));
        if (!await SaveNewAsync())
        {
            await ListAsync();
            return await IsMadeAsync() ? MadeAlready() : AgainAfterOthers("Input.Name");
        }

        Link = settings.AddressOf(Request, $"/join/{secret}");
        await ListAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostWithdrawAsync(Guid id)
    {
        if (await Db.Invitations.SingleOrDefaultAsync(i => i.Id == id, Ct) is not { } invitation)
            return NotFound();
        ModelState.Clear();
        invitation.Withdraw(Now);
        if (!await SaveAsync())
        {
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"The invitation for {invitation.ForWhom} is withdrawn.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostTakeOutAsync(Guid personId)
    {
        ModelState.Clear();
        await ListAsync();
        if (Members.SingleOrDefault(m => m.PersonId == personId) is not { } member)
            return NotFound();
        if (IsLastGuardian(member))
        {
            ModelState.AddModelError("", "The last guardian stays: somebody must be able to open the family. Invite another guardian first.");
            return Again();
        }

        Db.Memberships.Remove(member);
        // A link they kept would let them in again.
        foreach (var invitation in await Db.Invitations.Where(i => i.FromId == personId && i.WithdrawnAt == null && i.TakenAt == null).ToListAsync(Ct))
            invitation.Withdraw(Now);
        // Two guardians who take each other out at the same moment must not both succeed: the family's version lets one.
        Db.Entry(Family).State = EntityState.Modified;
        if (!await SaveAsync())
        {
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        if (personId == Me)
            return LocalRedirect("/");
        Say($"{member.Name} no longer belongs to the family.");
        return RedirectToPage();
    }

    private Task<bool> IsMadeAsync() => Db.Invitations.AnyAsync(i => i.Id == Input.Id, Ct);

    private RedirectToPageResult MadeAlready()
    {
        Say("This invitation was made already, and its link was shown then. If it is lost, withdraw the invitation and make another.");
        return RedirectToPage();
    }

    private async Task ListAsync()
    {
        Members = await Db.Memberships.OrderBy(m => m.Since).ThenBy(m => m.Name).ToListAsync(Ct);
        var members = Members.Select(m => m.PersonId).ToList();
        NamesOnly = (await Db.Users.Where(p => members.Contains(p.Id) && p.Email == null).Select(p => p.Id).ToListAsync(Ct)).ToHashSet();
        Invitations = await Db.Invitations.AsNoTracking().Where(i => i.WithdrawnAt == null && i.TakenAt == null && i.EndsAt > Now).OrderBy(i => i.MadeAt).ToListAsync(Ct);
    }

    public sealed class InputModel
    {
        /// <summary>Made with the form, so that a form sent twice makes one invitation.</summary>
        public Guid Id { get; set; }

        [Required(ErrorMessage = "Say for whom the link is.")]
        [StringLength(Person.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Choose what they may do.")]
        [AllowedValues(Data.Tenancy.Role.Guardian, Data.Tenancy.Role.Helper, ErrorMessage = "Choose what they may do.")]
        public Role? Role { get; set; } = Data.Tenancy.Role.Helper;
    }
}
