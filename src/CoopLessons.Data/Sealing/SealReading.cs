using CoopLessons.Core.Calendar;
using CoopLessons.Core.Sealing;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Prepare;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Sealing;

/// <summary>How one learner's sealed year stands: what was sealed, what was amended, and whether the log still says so.</summary>
/// <param name="Faults">What was changed in the kept records themselves.</param>
/// <param name="Differences">What the log says otherwise than the last record.</param>
public sealed record SealCheck(IReadOnlyList<string> Faults, IReadOnlyList<RecordDifference> Differences)
{
    public bool Holds => Faults.Count == 0 && Differences.Count == 0;
}

/// <summary>Reads sealed years, their records and what the log says of them now.</summary>
public static class SealReading
{
    /// <summary>The sealed year that holds all of these days; null where none does.</summary>
    public static Task<SealedYear?> SealedYearOfAsync(this AppDb db, DayRange days, CancellationToken ct) =>
        db.SealedYears.AsNoTracking().FirstOrDefaultAsync(y => y.First <= days.First && y.Last >= days.Last, ct);

    /// <summary>The record of the sealing and those of its amendments by number; empty where there are none.</summary>
    public static async Task<IReadOnlyList<KeptRecord>> RecordsAsync(this AppDb db, Guid schoolYearId, Guid learnerId, CancellationToken ct)
    {
        var first = await db.SealedRecords.Where(r => r.SchoolYearId == schoolYearId && r.LearnerId == learnerId).Select(r => new KeptRecord(r.Text, r.Fingerprint)).ToListAsync(ct);
        var later = await db.Amendments.Where(a => a.SchoolYearId == schoolYearId && a.LearnerId == learnerId)
            .OrderBy(a => a.Number).Select(a => new KeptRecord(a.Text, a.Fingerprint)).ToListAsync(ct);
        return [.. first, .. later];
    }

    /// <summary>The mark that papers of the year bear; null where the learner's year is not sealed.</summary>
    public static async Task<SealMark?> SealMarkAsync(this AppDb db, Guid schoolYearId, Guid learnerId, CancellationToken ct)
    {
        var record = await (from r in db.SealedRecords
                            join y in db.SealedYears on r.SchoolYearId equals y.SchoolYearId
                            where r.SchoolYearId == schoolYearId && r.LearnerId == learnerId
                            select new { r.Fingerprint, y.SealedOn }).SingleOrDefaultAsync(ct);
        if (record is null)
            return null;
        var last = await db.Amendments.Where(a => a.SchoolYearId == schoolYearId && a.LearnerId == learnerId)
            .OrderByDescending(a => a.Number).Select(a => new { a.Number, a.Fingerprint, a.AmendedOn }).FirstOrDefaultAsync(ct);
        return new SealMark(Fingerprint.Kept(last?.Fingerprint ?? record.Fingerprint), record.SealedOn, last?.Number ?? 0, last?.AmendedOn);
    }

    /// <summary>The record that the database makes of the learner's year now, under names and choices that were kept.</summary>
    public static async Task<YearRecord> RecordNowAsync(this AppDb db, SealedYear year, Guid learnerId, SealedHeading heading, CancellationToken ct) =>
        (await FactsAsync(db, learnerId, (await db.SchoolYears.Where(y => y.Id == year.SchoolYearId).Select(y => y.Name).SingleAsync(ct)), year.Days, ct)).Record(heading);

    /// <summary>Recomputes everything that was kept, and holds the log as it stands beside the last record.</summary>
    public static async Task<SealCheck> CheckAsync(this AppDb db, SealedYear year, Guid learnerId, CancellationToken ct)
    {
        // A late correction that is saved meanwhile would look as if something had been changed behind this program.
        await using var moment = await db.OneMomentAsync(ct);
        var kept = await db.RecordsAsync(year.SchoolYearId, learnerId, ct);
        var faults = SealChain.Faults(kept);
        var days = await db.SchoolYears.Where(y => y.Id == year.SchoolYearId).Select(y => new { y.First, y.Last }).SingleAsync(ct);
        if (YearRecord.Read(kept[^1].Text) is not { } last)
            return new SealCheck(faults, []);
        YearRecord now;
        try
        {
            now = await db.RecordNowAsync(year, learnerId, SealedHeading.Of(last), ct);
        }
        catch (ArgumentException)
        {
            // Such as an entry of no minutes, which this program never writes.
            return new SealCheck([.. faults, "The log holds something that cannot be counted: it was changed behind this program."], []);
        }

        // Days that were moved in the database count with what they hold.
        now = now with { Year = now.Year with { First = days.First, Last = days.Last } };
        return new SealCheck(faults, RecordDifferences.Between(last, now));
    }

    internal static async Task<YearFacts> FactsAsync(AppDb db, Guid learnerId, string yearName, DayRange days, CancellationToken ct)
    {
        var (first, last) = (days.First, days.Last);
        var log = (await LearnerYear.LoadAsync(db, learnerId, days, ct))!;
        var instants = await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date >= first && r.Date <= last && r.Times.Any(t => t.LearnerId == learnerId))
            .Select(r => new { r.EntryId, r.OnPhoneAt, r.WrittenAt }).ToDictionaryAsync(r => r.EntryId, r => new EntryInstants(r.OnPhoneAt, r.WrittenAt), ct);
        var reading = await ListOfReading.LinesAsync(db, learnerId, days, ct);
        var pieces = (await db.PiecesInAsync(days, ct)).Where(p => p.Learners.Contains(learnerId)).Select(p => new RecordPiece(p.Hash, p.Date, p.Caption)).ToList();
        return new YearFacts(yearName, log.Ledger, instants, log.Marks, reading, pieces);
    }
}
