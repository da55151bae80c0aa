using CoopLessons.Data.Evidence;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Files;

/// <summary>Keeps a family's shelf and the rows that name its files in step.</summary>
public static class ShelfTidying
{
    /// <summary>Longer than an upload and the saving of its row take.</summary>
    public static readonly TimeSpan Young = TimeSpan.FromHours(1);

    /// <summary>
    /// Forgets pieces whose way back has ended, and files that nothing uses any longer, whether their use was removed by
    /// itself or went with its activity, and takes them from the shelf. For somebody who has the shelf's turn; saves.
    /// </summary>
    /// <param name="now">UTC.</param>
    public static async Task TidyAsync(this FileShelf shelf, AppDb db, DateTime now, CancellationToken ct)
    {
        var family = db.Current.FamilyId!.Value;
        var forgotten = now - Piece.WayBack;
        // A test that named such a piece stays without it.
        await db.Assessments.Where(a => db.Pieces.Any(p => p.Id == a.PieceId && p.RemovedAt < forgotten)).ExecuteUpdateAsync(s => s.SetProperty(a => a.PieceId, (Guid?)null), ct);
        await db.Pieces.Where(p => p.RemovedAt < forgotten).ExecuteDeleteAsync(ct);
        var unused = await db.StoredFiles
            .Where(f => !db.PrintSources.Any(s => s.Hash == f.Hash) && !db.Pieces.Any(p => p.Hash == f.Hash || p.SmallHash == f.Hash || p.OriginalHash == f.Hash))
            .ToListAsync(ct);
        // What came with a unit and waits there is named by a list within its row.
        var waiting = (await db.ArrivedPacks.AsNoTracking().ToListAsync(ct)).SelectMany(p => p.Prints).Select(p => p.Hash).ToHashSet(StringComparer.Ordinal);
        unused.RemoveAll(f => waiting.Contains(f.Hash));
        if (unused.Count > 0)
        {
            db.StoredFiles.RemoveRange(unused);
            await db.SaveChangesAsync(ct);
        }

        var kept = await db.StoredFiles.Select(f => f.Hash).ToListAsync(ct);
        foreach (var gone in unused)
            await shelf.RemoveAsync(family, gone.Hash, ct);
        await shelf.SweepAsync(family, kept.ToHashSet(), now - Young, ct);
        shelf.Arriving.Sweep(now);
    }
}
