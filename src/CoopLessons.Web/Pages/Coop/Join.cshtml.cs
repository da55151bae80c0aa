using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Families;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A family opens the link by which a co-op invites it.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class JoinModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public CoopInvitation Invitation { get; private set; } = null!;

    public bool IsOpen => Invitation.IsOpen(Now);

    public bool BelongsAlready { get; private set; }

    public string CoopName { get; private set; } = "";

    /// <summary>What the co-op agreed on, to be read before joining.</summary>
    public string Agreement { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(string secret)
    {
        if (!await FindAsync(secret))
            return NotFound();
        if (!IsOpen)
            return Again(StatusCodes.Status410Gone);
        Input.GoBy = Family.Name;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string secret)
    {
        if (!await FindAsync(secret))
            return NotFound();
        if (BelongsAlready)
            return LocalRedirect($"/coop/{Invitation.CoopId}");
        if (!IsOpen)
            return Again(StatusCodes.Status410Gone);
        if (!ModelState.IsValid)
            return Again();
        Invitation.Take(Now);
        if (await Db.CoopFamilies.SingleOrDefaultAsync(f => f.CoopId == Invitation.CoopId && f.FamilyId == Family.Id, Ct) is { } before)
            before.Return(Input.GoBy, Now);
        else
            Db.CoopFamilies.Add(new CoopFamily(Invitation.CoopId, Family.Id, Input.GoBy, CoopPart.Member, Now));
        if (!await SaveNewAsync())
        {
            // Somebody was faster with the same link.
            await FindAsync(secret);
            return Again(StatusCodes.Status410Gone);
        }

        Say($"You belong to {CoopName} now. Show it what you want to show; nothing is shown by itself.");
        return LocalRedirect($"/coop/{Invitation.CoopId}");
    }

    private async Task<bool> FindAsync(string secret)
    {
        var hash = Data.Families.Invitation.Hash(secret);
        Db.Current.Hold(hash);
        // The co-op is not known before the link is read; whoever holds the secret may read this one row.
        if (await Db.CoopInvitations.IgnoreQueryFilters([AppDb.CoopFilter]).SingleOrDefaultAsync(i => i.SecretHash == hash, Ct) is not { } found)
            return false;
        Invitation = found;
        BelongsAlready = Db.Current.Coops.Contains(found.CoopId);
        if (!IsOpen)
            return true;
        // Whoever holds an open link may know which co-op it is from, and joins it with what is saved next.
        Db.Current.Enter(found.CoopId);
        (CoopName, Agreement) = await Db.Coops.Where(c => c.Id == found.CoopId).Select(c => new ValueTuple<string, string>(c.Name, c.Agreement)).SingleAsync(Ct);
        return true;
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Say how the others call your family.")]
        [StringLength(Data.Families.Family.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string GoBy { get; set; } = "";
    }
}
