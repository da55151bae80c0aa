using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log;

/// <summary>What became of a writing that a phone sent late.</summary>
public enum Sent
{
    /// <summary>It says what holds already, or it came before.</summary>
    Nothing,

    /// <summary>It holds now, where needed put together with what others wrote meanwhile.</summary>
    Holds,

    /// <summary>It collides with what others wrote meanwhile and stands beside it until somebody chooses.</summary>
    Aside,
}

/// <summary>Takes a writing of an entry that was made on a phone without a network.</summary>
public static class EntrySending
{
    // Each time somebody else saved in the same moment, it is read anew.
    private const int MostTries = 5;

    /// <param name="from">Number of the writing that it began from; null where it began from none, which collides unless it says the same.</param>
    /// <param name="author">With the id of the sending.</param>
    /// <returns>Null where others saved each time; nothing was written then.</returns>
    public static async Task<Sent?> TakeAsync(AppDb db, Guid entryId, int? from, EntryFacts facts, Author author, DateTime now, string why, CancellationToken ct)
    {
        for (var tries = 0; tries < MostTries; tries++)
        {
            db.ChangeTracker.Clear();
            if (author.SentAs is { } sending && await db.WasSentAsync(entryId, sending, ct))
                return Sent.Nothing;
            if (await db.EntryAsync(entryId, ct) is not { } found)
                return null;
            var outcome = await WriteAsync(db, found.Entry, found.Newest, from, facts, author, now, why, ct);
            try
            {
                await db.SaveChangesAsync(ct);
                return outcome;
            }
            catch (DbUpdateException) when (tries < MostTries - 1)
            {
                // The same number was given to another writing.
            }
            catch (DbUpdateException)
            {
                db.ChangeTracker.Clear();
            }
        }

        return null;
    }

    private static async Task<Sent> WriteAsync(
        AppDb db, LogEntry entry, LogRevision newest, int? from, EntryFacts facts, Author author, DateTime now, string why, CancellationToken ct)
    {
        if (!newest.Removed && newest.Facts.SaysTheSame(facts))
            return Sent.Nothing;
        if (!newest.Removed && from == newest.Number)
        {
            entry.Change(facts, author, now, why);
            return Sent.Holds;
        }

        var began = from is { } number
            ? await db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects).AsNoTracking().SingleOrDefaultAsync(r => r.EntryId == entry.Id && r.Number == number, ct)
            : null;
        var merge = began is null || newest.Removed ? null : EntryMerge.Of(began.Facts, newest.Facts, facts);
        if (merge is { Collides: false })
        {
            if (newest.Facts.SaysTheSame(merge.Merged))
                return Sent.Nothing;
            entry.Change(merge.Merged, author, now, why);
            return Sent.Holds;
        }

        entry.SetAside(facts, author, now, why);
        return Sent.Aside;
    }
}
