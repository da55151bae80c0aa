using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>An author gives a unit, as it stands in the author's hands, to all of a co-op.</summary>
public static class Publishing
{
    /// <summary>
    /// Adds the next revision. A file that is named goes onto the co-op's shelf at once; its row, like everything else, is
    /// saved by the caller.
    /// </summary>
    /// <param name="shared">Null for the first revision.</param>
    /// <param name="prints">Which of the unit's files travel.</param>
    public static async Task<SharedRevision> PublishAsync(
        AppDb db, FileShelf shelf, CoopFamily author, SharedUnit? shared, Unit unit, PublishedBundle bundle, string note, IReadOnlyCollection<PrintSource> prints, DateTime now, CancellationToken ct)
    {
        if (shared is null)
            db.SharedUnits.Add(shared = new SharedUnit(author.CoopId, author, unit));
        var revision = shared.Publish(author, bundle, note, now);
        db.SharedRevisions.Add(revision);
        var codes = unit.Activities.ToDictionary(a => a.Id, a => a.Code);
        var hashes = prints.Select(p => p.Hash).ToHashSet(StringComparer.Ordinal);
        var files = await db.StoredFiles.Where(f => hashes.Contains(f.Hash)).ToDictionaryAsync(f => f.Hash, ct);
        foreach (var source in prints)
        {
            if (await TravellingFiles.CopyAsync(shelf, author.FamilyId, author.CoopId, source.Hash, ct))
                db.SharedPrints.Add(new SharedPrint(revision, codes[source.ActivityId], source, files[source.Hash]));
        }

        return revision;
    }
}
