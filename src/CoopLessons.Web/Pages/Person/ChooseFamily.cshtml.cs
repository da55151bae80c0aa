using CoopLessons.Data;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.People;

/// <summary>Somebody who belongs to several families chooses the one to act for.</summary>
public sealed class ChooseFamilyModel(AppDb db, CurrentFamily current, TimeProvider clock) : PageModel
{
    public IReadOnlyList<FamilyChoice> Families { get; private set; } = [];

    public Guid? Here => current.FamilyId;

    private CancellationToken Ct => HttpContext.RequestAborted;

    public async Task OnGetAsync() => Families = await FamilyChoice.OfAsync(db, current.PersonId!.Value, Ct);

    public async Task<IActionResult> OnPostAsync(Guid familyId)
    {
        var me = current.PersonId!.Value;
        if ((await FamilyChoice.OfAsync(db, me, Ct)).SingleOrDefault(f => f.FamilyId == familyId) is not { } chosen)
            return NotFound();
        current.Act(chosen.FamilyId, me, chosen.Role);
        var membership = await db.Memberships.SingleAsync(m => m.PersonId == me, Ct);
        membership.Choose(clock.GetUtcNow().UtcDateTime);
        await db.SaveChangesAsync(Ct);
        return LocalRedirect("/");
    }
}
