using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log.Sheets;

/// <summary>An entry that was changed since it came in, and so stayed when its import was taken out.</summary>
public sealed record StayedEntry(Guid Id, DateOnly Date, string What);

/// <summary>Takes a sheet’s good rows into the log at once, and out again at once.</summary>
public static class SheetTaking
{
    private const int AtOnce = 400;

    /// <summary>All good rows or none, and the sheet goes with it. A second sending finds the import there and changes nothing.</summary>
    /// <param name="thereToo">Whether rows that equal an entry go in all the same.</param>
    /// <returns>False where the same was taken in at the same moment.</returns>
    public static async Task<bool> TakeAsync(AppDb db, SheetAtHand at, bool thereToo, Author by, DateTime now, CancellationToken ct)
    {
        var rows = at.Reading.Rows.Where(r => thereToo || !at.There.Contains(r.Line)).ToList();
        var why = Why(at.Sheet.FileName);
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        db.Add(new LogImport(at.Sheet.Id, at.Sheet.FileName, by, now, rows.Select(r => r.Line), at.Reading.Faults.Count, at.Reading.Rows.Count - rows.Count));
        db.Remove(at.Sheet);
        await AddSubjectsAsync(db, at, ct);
        try
        {
            await db.SaveChangesAsync(ct);
            foreach (var some in rows.Chunk(AtOnce))
            {
                db.ChangeTracker.Clear();
                foreach (var row in some)
                {
                    var facts = new EntryFacts(row.Date, row.Start is { } start ? start.Hour * 60 + start.Minute : null, row.What, row.Place, row.Note, row.Times, row.Split, []);
                    db.LogEntries.Add(LogEntry.Write(LogImport.EntryId(at.Sheet.Id, row.Line), facts, by, now, why: why));
                }

                await db.SaveChangesAsync(ct);
            }

            await transaction.CommitAsync(ct);
            return true;
        }
        catch (DbUpdateException)
        {
            db.ChangeTracker.Clear();
            return false;
        }
    }

    /// <summary>
    /// Takes every entry of the import out of the log, each with its reason; the history keeps them. One that somebody changed
    /// since stays and is named. Saved here, all or none.
    /// </summary>
    public static async Task<IReadOnlyList<StayedEntry>> UndoAsync(AppDb db, LogImport import, Author by, DateTime now, CancellationToken ct)
    {
        var stayed = new List<StayedEntry>();
        var ids = import.Lines.Select(l => LogImport.EntryId(import.Id, l)).ToList();
        var why = $"{import.FileName} was taken out again";
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        import.Undo(now);
        await db.SaveChangesAsync(ct);
        foreach (var some in ids.Chunk(AtOnce))
        {
            db.ChangeTracker.Clear();
            var entries = await db.LogEntries.Where(e => some.Contains(e.Id)).ToListAsync(ct);
            var newest = await db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects).AsSplitQuery()
                .Where(r => some.Contains(r.EntryId) && r.Number == r.Entry.Newest).ToDictionaryAsync(r => r.EntryId, ct);
            foreach (var entry in entries)
            {
                var revision = newest[entry.Id];
                if (revision.Removed)
                    continue;
                if (revision.Number == 1 && entry.LastAside == 0)
                    entry.Remove(revision, by, now, why.Length > LogRevision.LongestWhy ? why[..LogRevision.LongestWhy] : why);
                else
                    stayed.Add(new StayedEntry(entry.Id, revision.Date, revision.What));
            }

            await db.SaveChangesAsync(ct);
        }

        await transaction.CommitAsync(ct);
        db.ChangeTracker.Clear();
        return [.. stayed.OrderBy(s => s.Date).ThenBy(s => s.What, StringComparer.Ordinal)];
    }

    /// <summary>Entries of the import that were changed since and so would stay.</summary>
    public static async Task<IReadOnlyList<StayedEntry>> ChangedAsync(AppDb db, LogImport import, CancellationToken ct)
    {
        var changed = new List<StayedEntry>();
        foreach (var some in import.Lines.Select(l => LogImport.EntryId(import.Id, l)).Chunk(AtOnce))
        {
            changed.AddRange(await db.LogRevisions.AsNoTracking()
                .Where(r => some.Contains(r.EntryId) && r.Number == r.Entry.Newest && !r.Removed && (r.Number > 1 || r.Entry.LastAside > 0))
                .Select(r => new StayedEntry(r.EntryId, r.Date, r.What)).ToListAsync(ct));
        }

        return [.. changed.OrderBy(s => s.Date).ThenBy(s => s.What, StringComparer.Ordinal)];
    }

    private static string Why(string file)
    {
        var why = $"brought from {file}";
        return why.Length > LogRevision.LongestWhy ? why[..LogRevision.LongestWhy] : why;
    }

    private static async Task AddSubjectsAsync(AppDb db, SheetAtHand at, CancellationToken ct)
    {
        var used = at.Reading.Rows.SelectMany(r => r.Split).Select(s => s.SubjectId).ToHashSet();
        var order = await db.Subjects.Select(s => (int?)s.Order).MaxAsync(ct) ?? -1;
        var codes = (await db.Subjects.Select(s => s.Code).ToListAsync(ct)).ToHashSet(StringComparer.Ordinal);
        foreach (var (id, name) in at.NewSubjects.Where(s => used.Contains(s.Id)))
        {
            var stem = string.Concat(Core.Log.FoldedWords.Key(name).Where(c => char.IsAsciiLetterOrDigit(c) || c == ' ')).Trim().Replace(' ', '-');
            stem = stem.Length == 0 ? "subject" : stem[..Math.Min(stem.Length, 34)].Trim('-');
            var code = stem;
            for (var n = 2; !codes.Add(code); n++)
                code = $"{stem}-{n}";
            db.Subjects.Add(new FamilySubject(id, code, name.Length > FamilySubject.LongestName ? name[..FamilySubject.LongestName] : name, ++order));
        }
    }
}
