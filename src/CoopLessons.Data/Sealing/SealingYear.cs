using CoopLessons.Core.Sealing;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Sealing;

/// <summary>What is still open of a year before it is sealed. Nothing of it stands in the way.</summary>
/// <param name="Questions">By the learner's name.</param>
/// <param name="Asides">Entries of which two writings stand beside each other.</param>
/// <param name="Waiting">Things that children said, of which nobody said a word yet.</param>
/// <param name="Unlogged">Teaching days of the year on which nothing was logged, in order.</param>
public sealed record OpenBeforeSealing(
    IReadOnlyList<(string Learner, string Sentence)> Questions, IReadOnlyList<(Guid EntryId, DateOnly Date, string What)> Asides, int Waiting, IReadOnlyList<DateOnly> Unlogged)
{
    public bool IsNothing => Questions.Count == 0 && Asides.Count == 0 && Waiting == 0 && Unlogged.Count == 0;

    public static async Task<OpenBeforeSealing> LoadAsync(AppDb db, SchoolYear year, CancellationToken ct)
    {
        var (first, last) = (year.First, year.Last);
        var learners = await db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct);
        var ledgers = await LearnerYear.LedgersAsync(db, learners.Select(l => l.Id), year.Days, ct);
        var asides = await db.Unanswered().Where(r => r.Date >= first && r.Date <= last).OrderBy(r => r.Date).Select(r => new { r.EntryId, r.Date, r.What }).ToListAsync(ct);
        var logged = ledgers.SelectMany(l => l.Entries.Select(e => e.Date)).ToHashSet();
        return new OpenBeforeSealing(
            [.. learners.Zip(ledgers, (learner, ledger) => ledger.Questions().Select(q => (learner.Name, q.Sentence))).SelectMany(q => q)],
            [.. asides.Select(a => (a.EntryId, a.Date, a.What)).DistinctBy(a => a.EntryId)],
            await db.ChildrenSaid.CountAsync(s => s.State == SaidState.Waiting && s.Date >= first && s.Date <= last, ct),
            [.. year.Calendar.TeachingDays().Where(d => !logged.Contains(d))]);
    }
}

/// <summary>Seals a school year for all learners of the family.</summary>
public static class SealingYear
{
    /// <summary>Whether the year may be sealed on a day: it is over then.</summary>
    public static bool IsOver(this SchoolYear year, DateOnly today) => year.Last < today;

    /// <summary>Makes every learner's record and keeps it; the year is read-only once this is saved.</summary>
    /// <param name="today">In the family's time zone.</param>
    /// <param name="now">UTC.</param>
    /// <returns>False where the year is sealed already, or its name or days are no longer those of <paramref name="year"/>. Nothing was changed then.</returns>
    /// <exception cref="InvalidOperationException">The year is not over.</exception>
    public static async Task<bool> SealAsync(this AppDb db, SchoolYear year, Author by, DateOnly today, DateTime now, CancellationToken ct)
    {
        if (!year.IsOver(today))
            throw new InvalidOperationException("A year is sealed when it is over.");
        await using var transaction = db.Database.CurrentTransaction is null ? await db.Database.BeginTransactionAsync(ct) : null;
        // Whoever writes just now has saved before this, or is refused after it.
        await SealGuard.HoldAsync(db, alone: true, ct);
        if (await db.SealedYears.AnyAsync(s => s.SchoolYearId == year.Id, ct)
            || !await db.SchoolYears.AnyAsync(y => y.Id == year.Id && y.Name == year.Name && y.First == year.First && y.Last == year.Last, ct))
            return false;
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        db.SealedYears.Add(new SealedYear(year, family, today, by, now));
        foreach (var learner in await db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct))
        {
            var log = (await LearnerYear.LoadAsync(db, learner.Id, year.Days, ct))!;
            var standing = await LearnerStanding.LoadAsync(db, log, year, today, ct);
            var heading = new SealedHeading(family.Name, learner.Name, family.CountingPolicy, family.MinimumDay, YearFacts.Pathways(standing.Section));
            var record = (await SealReading.FactsAsync(db, learner.Id, year.Name, year.Days, ct)).Record(heading);
            db.SealedRecords.Add(new SealedRecord(year.Id, learner.Id, record));
            db.KnownMarks.Add(new KnownMark(record.Fingerprint, MarkKind.Record, year.Id, learner.Id, 0, today));
        }

        await db.SaveChangesAsync(ct);
        if (transaction is not null)
            await transaction.CommitAsync(ct);
        return true;
    }
}
