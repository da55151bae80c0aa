using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>A family takes a shared unit into its own hands.</summary>
public static class TakingUp
{
    /// <summary>Adds a unit on the family's shelf that knows where it came from. Saved by the caller, who has the file shelf's turn.</summary>
    /// <param name="revision">The newest.</param>
    /// <param name="id">Made on the page that sent it, so that a second sending is recognised.</param>
    public static async Task<Unit> TakeUpAsync(AppDb db, FileShelf shelf, SharedRevision revision, Guid id, Author by, DateTime now, CancellationToken ct)
    {
        var met = await MetSubjects.OfAsync(db, new Dictionary<string, Guid>(), ct);
        var bundle = revision.Bundle;
        var unit = UnitTravel.TakeIn(db, met.InOwn(bundle.Content), id, met);
        var origin = new UnitOrigin(id, revision.SharedUnitId, bundle, met.Ids);
        origin.ComeFrom(revision.Author, revision.CoopId, revision.Number);
        db.UnitOrigins.Add(origin);
        await ReachAsync(db, revision, now, ct);
        await TravellingFiles.AttachAsync(db, shelf, unit, revision.CoopId, await PrintsAsync(db, revision.CoopId, revision.SharedUnitId, revision.Number, ct), [], by, now, ct);
        return unit;
    }

    /// <summary>Tells the co-op which revision the family has in its hands.</summary>
    public static async Task ReachAsync(AppDb db, SharedRevision revision, DateTime now, CancellationToken ct)
    {
        var family = db.Current.FamilyId!.Value;
        var use = await db.UnitUses.SingleOrDefaultAsync(u => u.CoopId == revision.CoopId && u.FamilyId == family && u.SharedUnitId == revision.SharedUnitId, ct);
        if (use is null)
            db.UnitUses.Add(use = new UnitUse(revision.CoopId, family, revision.SharedUnitId, now));
        use.Reach(revision.Number);
    }

    public static async Task<IReadOnlyList<TravellingPrint>> PrintsAsync(AppDb db, Guid coopId, Guid sharedId, int number, CancellationToken ct) =>
        [.. (await db.SharedPrints.AsNoTracking().Where(p => p.CoopId == coopId && p.SharedUnitId == sharedId && p.Number == number).ToListAsync(ct)).Select(p => p.Travelling)];
}
