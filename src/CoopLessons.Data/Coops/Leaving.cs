using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops;

/// <summary>A family leaves a co-op, or is taken out of it.</summary>
public static class Leaving
{
    /// <summary>
    /// What the family had shown goes with it, and its open links end; what it published stays, under its name there. Saved
    /// by the caller.
    /// </summary>
    public static async Task TakeOutAsync(AppDb db, CoopFamily family, DateTime now, CancellationToken ct)
    {
        var (coop, id) = (family.CoopId, family.FamilyId);
        // Places and numbers go by a line of the list, so that nobody else loses one; attendance stays, as numbers without names.
        await Days.SigningUp.WithdrawAsync(db, coop, await db.ShownLearners.Where(l => l.CoopId == coop && l.FamilyId == id).Select(l => l.LearnerId).ToListAsync(ct), now, ct);
        db.OutingAnswers.RemoveRange(await db.OutingAnswers.Where(a => a.CoopId == coop && a.FamilyId == id).ToListAsync(ct));
        db.ShownLearners.RemoveRange(await db.ShownLearners.Where(l => l.CoopId == coop && l.FamilyId == id).ToListAsync(ct));
        db.ShownContacts.RemoveRange(await db.ShownContacts.Where(c => c.CoopId == coop && c.FamilyId == id).ToListAsync(ct));
        // The turns that its adults had stay with their names.
        foreach (var adult in await db.CoopAdults.Where(a => a.CoopId == coop && a.FamilyId == id).ToListAsync(ct))
            db.CoopAdults.Remove(adult);
        db.UnitUses.RemoveRange(await db.UnitUses.Where(u => u.CoopId == coop && u.FamilyId == id).ToListAsync(ct));
        db.TurnWishes.RemoveRange(await db.TurnWishes.Where(w => w.CoopId == coop && w.FamilyId == id).ToListAsync(ct));
        db.AdultsAway.RemoveRange(await db.AdultsAway.Where(a => a.CoopId == coop && a.FamilyId == id).ToListAsync(ct));
        await EndLinksAsync(db, family, now, ct);
        family.Leave(now);
    }

    /// <summary>Links that the family made and nobody has opened end: it leaves, or leads no longer. Saved by the caller.</summary>
    public static async Task EndLinksAsync(AppDb db, CoopFamily family, DateTime now, CancellationToken ct)
    {
        foreach (var invitation in await db.CoopInvitations.Where(i => i.CoopId == family.CoopId && i.FromId == family.FamilyId && i.WithdrawnAt == null && i.TakenAt == null).ToListAsync(ct))
            invitation.Withdraw(now);
    }
}
