using CoopLessons.Core.Sealing;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Sealing;

/// <summary>
/// A guardian's word that what is saved next corrects a sealed year, and why. Each learner's record that comes out otherwise
/// becomes an amendment in the same transaction; where none does, nothing is written of it.
/// </summary>
/// <param name="Why">In the guardian's words; never empty.</param>
/// <param name="On">The day in the family's time zone.</param>
/// <param name="At">UTC.</param>
public sealed record LateCorrection(string Why, Author By, DateOnly On, DateTime At)
{
    private readonly HashSet<Guid> _years = [];
    private readonly HashSet<Guid> _entries = [];

    internal void Touch(Guid schoolYearId, Guid? entryId)
    {
        _years.Add(schoolYearId);
        if (entryId is { } id)
            _entries.Add(id);
    }

    /// <summary>Saves with <paramref name="save"/> and writes the amendments that follow, within a transaction of whoever calls this.</summary>
    internal async Task<int> SaveAsync(AppDb db, Func<Task<int>> save, CancellationToken ct)
    {
        var rows = await save();
        if (_years.Count > 0)
        {
            foreach (var year in await db.SealedYears.AsNoTracking().Where(y => _years.Contains(y.SchoolYearId)).ToListAsync(ct))
                await AmendAsync(db, year, ct);
            _years.Clear();
            rows += await save();
        }

        return rows;
    }

    private async Task AmendAsync(AppDb db, SealedYear year, CancellationToken ct)
    {
        foreach (var learner in await db.SealedRecords.Where(r => r.SchoolYearId == year.SchoolYearId).Select(r => r.LearnerId).ToListAsync(ct))
        {
            var kept = await db.RecordsAsync(year.SchoolYearId, learner, ct);
            if (YearRecord.Read(kept[^1].Text) is not { } before || SealChain.Faults(kept).Count > 0)
                throw new SealedYearException(year, "A kept record was changed behind this program and can carry no correction. It belongs to", mayCorrect: false);
            if ((await db.RecordNowAsync(year, learner, SealedHeading.Of(before), ct)).Amending(before, Why, By.Name, At) is not { } record)
                continue;
            db.Amendments.Add(new Amendment(year.SchoolYearId, learner, record, _entries.Count == 1 ? _entries.Single() : null, On, By, At));
            db.KnownMarks.Add(new KnownMark(record.Fingerprint, MarkKind.Amendment, year.SchoolYearId, learner, record.Amendment!.Number, On));
        }
    }
}
