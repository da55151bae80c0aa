using CoopLessons.Core.Calendar;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log;

public static class LogReading
{
    /// <summary>The newest revision of each entry that stands, with learners and subjects; removed entries left out.</summary>
    public static IQueryable<LogRevision> Standing(this AppDb db) =>
        db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed)
            .Include(r => r.Times).Include(r => r.Subjects).AsSplitQuery().AsNoTracking();

    public static IQueryable<LogRevision> StandingIn(this AppDb db, DayRange days) =>
        db.Standing().Where(r => r.Date >= days.First && r.Date <= days.Last);

    /// <summary>An entry ready to be changed, removed or restored, with its newest revision loaded.</summary>
    public static async Task<(LogEntry Entry, LogRevision Newest)?> EntryAsync(this AppDb db, Guid id, CancellationToken ct)
    {
        var entry = await db.LogEntries.SingleOrDefaultAsync(e => e.Id == id, ct);
        if (entry is null)
            return null;
        var newest = await db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects)
            .SingleAsync(r => r.EntryId == id && r.Number == entry.Newest, ct);
        return (entry, newest);
    }

    /// <summary>Every revision of an entry, the first writing first; empty where the family has no such entry.</summary>
    public static async Task<IReadOnlyList<LogRevision>> HistoryAsync(this AppDb db, Guid id, CancellationToken ct) =>
        await db.LogRevisions.Where(r => r.EntryId == id).OrderBy(r => r.Number)
            .Include(r => r.Times).Include(r => r.Subjects).AsSplitQuery().AsNoTracking().ToListAsync(ct);

    /// <summary>The entry written last under the same words, from which a new one takes its subjects; null where there is none.</summary>
    public static Task<LogRevision?> LastOfAsync(this AppDb db, string what, CancellationToken ct) =>
        db.Standing().Where(r => r.What == what).OrderByDescending(r => r.WrittenAt).ThenByDescending(r => r.EntryId).FirstOrDefaultAsync(ct);
}
