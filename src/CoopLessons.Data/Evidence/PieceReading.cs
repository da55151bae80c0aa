using CoopLessons.Core.Calendar;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Evidence;

public static class PieceReading
{
    /// <summary>Pieces that were not removed.</summary>
    public static IQueryable<Piece> StandingPieces(this AppDb db) => db.Pieces.Where(p => p.RemovedAt == null);

    /// <summary>What stands of an entry of the log, in the order of the day.</summary>
    public static async Task<IReadOnlyList<Piece>> PiecesOfEntryAsync(this AppDb db, Guid entryId, CancellationToken ct) =>
        InOrder(await db.StandingPieces().AsNoTracking().Where(p => p.EntryId == entryId).ToListAsync(ct));

    /// <summary>What stands of some days, in the order in which it was taken.</summary>
    public static async Task<IReadOnlyList<Piece>> PiecesInAsync(this AppDb db, DayRange days, CancellationToken ct) =>
        InOrder(await db.StandingPieces().AsNoTracking().Where(p => p.Date >= days.First && p.Date <= days.Last).ToListAsync(ct));

    /// <summary>Pieces that were removed and can still be brought back, the last one first.</summary>
    /// <param name="now">UTC.</param>
    public static async Task<IReadOnlyList<Piece>> RemovedPiecesAsync(this AppDb db, DateTime now, CancellationToken ct)
    {
        var since = now - Piece.WayBack;
        return await db.Pieces.AsNoTracking().Where(p => p.RemovedAt >= since).OrderByDescending(p => p.RemovedAt).ToListAsync(ct);
    }

    private static List<Piece> InOrder(List<Piece> pieces) =>
        [.. pieces.OrderBy(p => p.Date).ThenBy(p => p.TakenAt ?? int.MaxValue).ThenBy(p => p.BroughtAt).ThenBy(p => p.Id)];
}
