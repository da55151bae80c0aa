using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Families;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A leading family invites, says who has which part, and takes out.</summary>
public sealed class FamiliesModel(AppDb db, TimeProvider clock, ServerSettings settings) : CoopPage(db, clock)
{
    public const int MostInvitations = 40;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopFamily> Families { get; private set; } = [];

    public IReadOnlyList<CoopInvitation> Invitations { get; private set; } = [];

    /// <summary>The link just made; shown once, since the server keeps only its hash.</summary>
    public string? Link { get; private set; }

    protected override bool IsForLeaders => true;

    public bool IsLastLeader(CoopFamily family) => family.Leads && Families.Count(f => f.Leads) == 1;

    public async Task OnGetAsync()
    {
        await ListAsync();
        Input.NewId = Guid.CreateVersion7();
    }

    public async Task<IActionResult> OnPostInviteAsync()
    {
        await ListAsync();
        if (await Db.CoopInvitations.AnyAsync(i => i.CoopId == CoopId && i.Id == Input.NewId, Ct))
        {
            Say("This invitation was made already, and its link was shown then. If it is lost, withdraw the invitation and make another.");
            return Back();
        }

        if (Invitations.Count >= MostInvitations)
            ModelState.AddModelError("Input.Name", $"{MostInvitations} invitations are open. Withdraw one first.");
        if (!ModelState.IsValid)
            return Again();
        var secret = Invitation.NewSecret();
        Db.CoopInvitations.Add(new CoopInvitation(CoopId, Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId, secret, Input.Name, Mine, Now));
        // Whoever takes the inviting family out in this moment has not seen the link: one of the two must fail.
        Db.Entry(Mine).State = EntityState.Modified;
        if (!await SaveNewAsync())
            return AgainAfterOthers("Input.Name");
        Link = settings.AddressOf(Request, $"/coop/join/{secret}");
        await ListAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostWithdrawAsync(Guid invitationId)
    {
        ModelState.Clear();
        if (await Db.CoopInvitations.SingleOrDefaultAsync(i => i.CoopId == CoopId && i.Id == invitationId, Ct) is not { } invitation)
            return NotFound();
        invitation.Withdraw(Now);
        if (!await SaveAsync())
            return await AgainListedAsync(StatusCodes.Status409Conflict);
        Say($"The invitation for {invitation.ForWhom} is withdrawn.");
        return Back();
    }

    public async Task<IActionResult> OnPostPartAsync(Guid memberId, CoopPart? part)
    {
        ModelState.Clear();
        await ListAsync();
        if (Families.SingleOrDefault(f => f.FamilyId == memberId) is not { } family)
            return NotFound();
        if (part is not { } becomes || !Enum.IsDefined(becomes))
            return Refused("Choose which part the family has.");
        if (IsLastLeader(family) && becomes != CoopPart.Leader)
            return Refused("The last leader stays one: somebody must be able to invite and to say who has which part.");
        family.Become(becomes);
        if (!family.Leads)
            await Leaving.EndLinksAsync(Db, family, Now, Ct);
        // Two leaders who step down at the same moment must not both succeed.
        Db.Entry(Coop).State = EntityState.Modified;
        if (!await SaveAsync())
            return await AgainListedAsync(StatusCodes.Status409Conflict);
        Say($"The {family.Name} family is {CoopWords.A(becomes)} now.");
        return family.FamilyId == Family.Id && !family.Leads ? LocalRedirect($"/coop/{CoopId}") : Back();
    }

    public async Task<IActionResult> OnPostTakeOutAsync(Guid memberId)
    {
        ModelState.Clear();
        await ListAsync();
        if (Families.SingleOrDefault(f => f.FamilyId == memberId) is not { } family)
            return NotFound();
        if (IsLastLeader(family))
            return Refused("The last leader stays: somebody must be able to invite and to say who has which part.");
        await Leaving.TakeOutAsync(Db, family, Now, Ct);
        Db.Entry(Coop).State = EntityState.Modified;
        if (!await SaveAsync())
            return await AgainListedAsync(StatusCodes.Status409Conflict);
        if (family.FamilyId == Family.Id)
            return LocalRedirect("/coop");
        Say($"The {family.Name} family no longer belongs to the co-op. What it had shown is taken away.");
        return Back();
    }

    private LocalRedirectResult Back() => LocalRedirect($"/coop/{CoopId}/families");

    private IActionResult Refused(string sentence)
    {
        ModelState.AddModelError("", sentence);
        return Again();
    }

    private async Task<IActionResult> AgainListedAsync(int status)
    {
        await ListAsync();
        return Again(status);
    }

    private async Task ListAsync()
    {
        Families = await FamiliesAsync();
        Invitations = await Db.CoopInvitations.AsNoTracking().Where(i => i.CoopId == CoopId && i.WithdrawnAt == null && i.TakenAt == null && i.EndsAt > Now).OrderBy(i => i.MadeAt).ToListAsync(Ct);
    }

    public sealed class InputModel
    {
        /// <summary>Made with the form, so that a form sent twice makes one invitation.</summary>
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Say for which family the link is.")]
        [StringLength(Data.Families.Family.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";
    }
}
