using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops;

/// <summary>What a family agreed to show stays true: the copies follow the child.</summary>
public static class Showing
{
    /// <summary>
    /// To be called where a child is changed: an allergy that is added must be read by whoever holds a class. A child who is
    /// set aside is shown no longer. Saved by the caller.
    /// </summary>
    public static async Task FollowAsync(AppDb db, Learner learner, DateOnly today, DateTime now, CancellationToken ct)
    {
        foreach (var shown in await db.ShownLearners.Where(s => s.FamilyId == learner.FamilyId && s.LearnerId == learner.Id).ToListAsync(ct))
        {
            if (learner.SetAside)
            {
                await Days.SigningUp.WithdrawAsync(db, shown.CoopId, [learner.Id], now, ct);
                db.ShownLearners.Remove(shown);
            }
            else
                shown.Show(learner, shown.Age is not null, shown.ShowsAllergies, today);
        }
    }
}
