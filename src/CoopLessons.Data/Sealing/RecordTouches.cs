using CoopLessons.Core.Calendar;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace CoopLessons.Data.Sealing;

/// <summary>A change that a sealed year's record would show.</summary>
/// <param name="What">What lies in the year, as the beginning of a sentence: <c>3 March 2026 lies in</c>.</param>
/// <param name="Never">Also not as a late correction.</param>
public sealed record RecordTouch(SealedYear Year, string What, Guid? EntryId = null, bool Never = false);

/// <summary>
/// Which of the rows that are about to be saved would change a sealed year's record:
/// <list type="number">
/// <item>a writing of an entry on one of its days, or one that takes an entry away from there; also one that is set aside;</item>
/// <item>a day marked by hand;</item>
/// <item>a piece of a learner's on one of its days, in content, day, caption or learners, or as it comes and goes;</item>
/// <item>a book of its reading list, and how, when and by whom it was met there;</item>
/// <item>the name or place in the order of a subject that was met in it;</item>
/// <item>the year's own name and days, which stay as they are;</item>
/// <item>something planned that is put on one of its days.</item>
/// </list>
/// </summary>
internal sealed class RecordTouches(AppDb db, IReadOnlyList<SealedYear> years)
{
    private readonly List<RecordTouch> _touches = [];

    /// <summary>The rows that may matter to a record at all.</summary>
    public static IReadOnlyList<EntityEntry> In(ChangeTracker tracker) =>
    [
        .. tracker.Entries().Where(e => e.State is EntityState.Added or EntityState.Modified or EntityState.Deleted
            && e.Entity is LogRevision or LogEntry or DayMark or Piece or BookMeeting or BookTitle or FamilySubject or SchoolYear or PlannedSession),
    ];

    public async Task<IReadOnlyList<RecordTouch>> OfAsync(IReadOnlyList<EntityEntry> changes, CancellationToken ct)
    {
        await LogAsync(changes, ct);
        foreach (var change in changes)
        {
            switch (change.Entity)
            {
                case DayMark mark when change.State != EntityState.Modified || Differs(change, nameof(DayMark.Counts)):
                    On(mark.Date);
                    break;
                case Piece:
                    Beside(change, PieceIn, "This photo or file belongs to");
                    break;
                case BookMeeting:
                    Beside(change, MeetingIn, "This book stands on the reading list of");
                    break;
                case PlannedSession session when change.State == EntityState.Added || change.State == EntityState.Modified && Differs(change, nameof(PlannedSession.Date)):
                    On(session.Date);
                    break;
                case SchoolYear year when change.State == EntityState.Deleted || Differs(change, nameof(SchoolYear.Name), nameof(SchoolYear.First), nameof(SchoolYear.Last)):
                    // With other days it would be another year, and what lies in it would no longer be known.
                    _touches.AddRange(years.Where(y => y.SchoolYearId == year.Id).Select(y => new RecordTouch(y, "Name and days stay those of", Never: true)));
                    break;
            }
        }

        await BooksAsync(changes, ct);
        await SubjectsAsync(changes, ct);
        return _touches;
    }

    private async Task LogAsync(IReadOnlyList<EntityEntry> changes, CancellationToken ct)
    {
        var written = changes.Where(c => c.Entity is LogRevision && c.State == EntityState.Added).Select(c => (Row: (LogRevision)c.Entity, EntryId: (Guid)c.Property(nameof(LogRevision.EntryId)).CurrentValue!)).ToList();
        var ids = written.Select(w => w.EntryId).Concat(changes.Where(c => c.Entity is LogEntry && c.State != EntityState.Added).Select(c => ((LogEntry)c.Entity).Id)).Distinct().ToList();
        if (ids.Count == 0)
            return;
        // Only entries that were there before can be taken away from a sealed day.
        var known = changes.Any(c => c.Entity is LogEntry && c.State != EntityState.Added)
            ? await db.LogRevisions.Where(r => ids.Contains(r.EntryId) && r.Number == r.Entry.Newest && !r.Removed).Select(r => new { r.EntryId, r.Date }).ToDictionaryAsync(r => r.EntryId, r => r.Date, ct)
            : [];
        var changed = changes.Where(c => c.Entity is LogEntry && c.State != EntityState.Added && (c.State == EntityState.Deleted || Differs(c, nameof(LogEntry.Newest)))).Select(c => ((LogEntry)c.Entity).Id).ToHashSet();
        foreach (var id in changed.Where(known.ContainsKey))
            On(known[id], id);
        foreach (var (row, id) in written.Where(w => !w.Row.Removed || changed.Contains(w.EntryId) && known.ContainsKey(w.EntryId)))
            On(row.Date, id);
    }

    private void On(DateOnly date, Guid? entryId = null) =>
        _touches.AddRange(years.Where(y => y.Days.Contains(date)).Select(y => new RecordTouch(y, $"{date.Plain()} lies in", entryId)));

    /// <summary>Compares what a row says within each year, before and after.</summary>
    private void Beside(EntityEntry change, Func<PropertyValues, SealedYear, string> says, string what)
    {
        foreach (var year in years)
        {
            var before = change.State == EntityState.Added ? "" : says(change.OriginalValues, year);
            var after = change.State == EntityState.Deleted ? "" : says(change.CurrentValues, year);
            if (before != after)
                _touches.Add(new RecordTouch(year, what));
        }
    }

    private static string PieceIn(PropertyValues row, SealedYear year)
    {
        var learners = row.GetValue<List<Guid>>(nameof(Piece.Learners));
        var date = row.GetValue<DateOnly>(nameof(Piece.Date));
        return learners.Count == 0 || !year.Days.Contains(date) || row.GetValue<DateTime?>(nameof(Piece.RemovedAt)) is not null ? ""
            : $"{date:O} {row.GetValue<string>(nameof(Piece.Hash))} {row.GetValue<string>(nameof(Piece.Caption))} {Ids(learners)}";
    }

    private static string MeetingIn(PropertyValues row, SealedYear year)
    {
        var begun = row.GetValue<DateOnly>(nameof(BookMeeting.BegunOn));
        var ended = row.GetValue<DateOnly?>(nameof(BookMeeting.EndedOn));
        if (!Core.Prepare.Books.ReadingList.Holds(year.Days, begun, ended))
            return "";
        // What becomes of a book after the year's last day belongs to the next year.
        var within = ended <= year.Last ? $"{ended:O} {row.GetValue<bool>(nameof(BookMeeting.Unfinished))}" : "";
        return $"{row.GetValue<Guid>(nameof(BookMeeting.BookId))} {row.GetValue<Core.Units.BookUse>(nameof(BookMeeting.How))} {begun:O} {within} {Ids(row.GetValue<List<Guid>>(nameof(BookMeeting.Learners)))}";
    }

    private static string Ids(List<Guid> learners) => string.Join(' ', learners.Order());

    private async Task BooksAsync(IReadOnlyList<EntityEntry> changes, CancellationToken ct)
    {
        var changed = changes.Where(c => c.Entity is BookTitle && (c.State == EntityState.Deleted || c.State == EntityState.Modified && Differs(c, nameof(BookTitle.Title), nameof(BookTitle.Author), nameof(BookTitle.Isbn))))
            .Select(c => ((BookTitle)c.Entity).Id).ToList();
        if (changed.Count == 0)
            return;
        var met = await db.BookMeetings.AsNoTracking().Where(m => changed.Contains(m.BookId)).Select(m => new { m.BegunOn, m.EndedOn }).ToListAsync(ct);
        _touches.AddRange(years.Where(y => met.Exists(m => Core.Prepare.Books.ReadingList.Holds(y.Days, m.BegunOn, m.EndedOn))).Select(y => new RecordTouch(y, "This book stands on the reading list of")));
    }

    private async Task SubjectsAsync(IReadOnlyList<EntityEntry> changes, CancellationToken ct)
    {
        var changed = changes.Where(c => c.Entity is FamilySubject && c.State != EntityState.Added && (c.State == EntityState.Deleted || Differs(c, nameof(FamilySubject.Name), nameof(FamilySubject.Order)))).ToList();
        if (changed.Count == 0)
            return;
        var stored = await db.Subjects.AsNoTracking().Select(s => new { s.Id, s.Name, s.Order }).ToListAsync(ct);
        var next = changed.ToDictionary(c => ((FamilySubject)c.Entity).Id, c => c.State == EntityState.Deleted ? null : (FamilySubject)c.Entity);
        foreach (var year in years)
        {
            var met = (await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date >= year.First && r.Date <= year.Last)
                .SelectMany(r => r.Subjects).Select(s => s.SubjectId).Distinct().ToListAsync(ct)).ToHashSet();
            var before = stored.Where(s => met.Contains(s.Id)).OrderBy(s => s.Order).ThenBy(s => s.Id).Select(s => (s.Id, (string?)s.Name));
            var after = stored.Where(s => met.Contains(s.Id)).Select(s => next.TryGetValue(s.Id, out var row) ? (s.Id, row?.Name, Order: row?.Order ?? 0) : (s.Id, s.Name, s.Order))
                .OrderBy(s => s.Order).ThenBy(s => s.Id).Select(s => (s.Id, s.Name));
            if (!before.SequenceEqual(after))
                _touches.Add(new RecordTouch(year, "Under this name and at this place of your list the subject was met in"));
        }
    }

    private static bool Differs(EntityEntry change, params ReadOnlySpan<string> fields)
    {
        foreach (var field in fields)
        {
            var property = change.Property(field);
            if (!Equals(property.OriginalValue, property.CurrentValue))
                return true;
        }

        return false;
    }
}
