using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log;

/// <summary>What came of writing an entry.</summary>
public enum Written
{
    Now,

    /// <summary>The entry was there already: the page was sent twice. Nothing was changed.</summary>
    Before,

    /// <summary>Somebody saved a newer version of what the entry belongs to. Nothing was written.</summary>
    Overtaken,
}

public static class LogWriting
{
    /// <summary>Whether the family has an entry of that id, standing or removed.</summary>
    public static Task<bool> KnowsEntryAsync(this AppDb db, Guid id, CancellationToken ct) => db.LogEntries.AnyAsync(e => e.Id == id, ct);

    /// <summary>Saves a new entry. Of two sendings that arrive together one is written, and both are answered alike.</summary>
    public static async Task<Written> SaveOnceAsync(this AppDb db, Guid entryId, CancellationToken ct)
    {
        try
        {
            await db.SaveChangesAsync(ct);
            return Written.Now;
        }
        catch (DbUpdateException fault)
        {
            db.ChangeTracker.Clear();
            if (await db.KnowsEntryAsync(entryId, ct))
                return Written.Before;
            if (fault is DbUpdateConcurrencyException)
                return Written.Overtaken;
            throw;
        }
    }
}
