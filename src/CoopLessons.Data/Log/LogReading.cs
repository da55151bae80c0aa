using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
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

    /// <summary>
    /// The standing entries of a period as the arithmetic needs them. One flat query: what it reads was so at one
    /// moment, and a year's log costs a small part of what its rows would as entities.
    /// </summary>
    /// <param name="learnerId">Only entries in which this learner took part; null for all.</param>
    public static async Task<IReadOnlyList<LoggedEntry>> LoggedAsync(this AppDb db, DayRange days, Guid? learnerId, CancellationToken ct)
    {
        var standing = db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date >= days.First && r.Date <= days.Last);
        if (learnerId is { } id)
            standing = standing.Where(r => r.Times.Any(t => t.LearnerId == id));
        // A revision has at least one learner and one subject, so that no entry is lost by joining.
        var rows = await (
            from r in standing
            from t in r.Times
            from s in r.Subjects
            select new { r.EntryId, r.Number, r.Date, r.StartsAt, r.What, r.Place, t.LearnerId, t.Minutes, s.SubjectId, s.Weight }).ToListAsync(ct);
        return
        [
            .. rows.GroupBy(r => r.EntryId).Select(entry =>
            {
                var head = entry.First();
                var subjects = entry.Select(r => (r.SubjectId, r.Weight)).Distinct().ToList();
                return new LoggedEntry(
                    head.EntryId, head.Number, head.Date, LogRevision.Clock(head.StartsAt), head.What, head.Place,
                    [.. entry.Select(r => (r.LearnerId, r.Minutes)).Distinct().Select(t => new LearnerTime(t.LearnerId, new Minutes(t.Minutes)))],
                    [.. subjects.Where(s => s.Weight > 0).Select(s => new SubjectWeight(s.SubjectId, s.Weight))],
                    [.. subjects.Where(s => s.Weight == 0).Select(s => s.SubjectId)]);
            }),
        ];
    }

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

    /// <summary>What an entry said when it was first written; null where the family has no such entry.</summary>
    public static async Task<EntryFacts?> FirstWritingAsync(this AppDb db, Guid id, CancellationToken ct) =>
        (await db.LogRevisions.Where(r => r.EntryId == id && r.Number == 1)
            .Include(r => r.Times).Include(r => r.Subjects).AsSplitQuery().AsNoTracking().SingleOrDefaultAsync(ct))?.Facts;

    /// <summary>Revisions that were set aside and on which nobody has said a word yet.</summary>
    public static IQueryable<LogRevision> Unanswered(this AppDb db) =>
        db.LogRevisions.Where(r => r.Aside && !db.LogRevisions.Any(a => a.EntryId == r.EntryId && a.Answers == r.Number));

    /// <summary>Whether what a phone kept under this id was written already.</summary>
    public static Task<bool> WasSentAsync(this AppDb db, Guid entryId, Guid sentAs, CancellationToken ct) =>
        db.LogRevisions.AnyAsync(r => r.EntryId == entryId && r.SentAs == sentAs, ct);

    /// <summary>The entry written last under the same words, from which a new one takes its subjects; null where there is none.</summary>
    public static Task<LogRevision?> LastOfAsync(this AppDb db, string what, CancellationToken ct) =>
        db.Standing().Where(r => r.What == what).OrderByDescending(r => r.WrittenAt).ThenByDescending(r => r.EntryId).FirstOrDefaultAsync(ct);
}
