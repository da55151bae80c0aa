using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Sealing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Hours;

/// <summary>
/// One learner's period as it stands in the log: the only way by which pages, files and commands come to a ledger.
/// </summary>
/// <param name="Marks">Days marked by hand; true for a school day.</param>
/// <param name="Sealed">The sealed year in which the whole period lies: its names and choices are those of its papers; null in an open one.</param>
/// <param name="SealedName">The learner's name as it was then.</param>
public sealed record LearnerYear(Family Family, Learner Learner, HoursLedger Ledger, SchoolDays Days, IReadOnlyDictionary<DateOnly, bool> Marks,
    SealedYear? Sealed = null, string? SealedName = null)
{
    /// <summary>The learner's name on papers of these days.</summary>
    public string NameOnPapers => SealedName ?? Learner.Name;

    public HoursReport Report(string yearName, DateOnly madeOn) => HoursReport.Of(
        Ledger, Days, new ReportHeading(Sealed?.FamilyName ?? Family.Name, NameOnPapers, yearName, Sealed?.CountingPolicy ?? Family.CountingPolicy, madeOn));

    /// <summary>Null where the family at hand has no such learner.</summary>
    public static async Task<LearnerYear?> LoadAsync(AppDb db, Guid learnerId, DayRange period, CancellationToken ct)
    {
        var learner = await db.Learners.AsNoTracking().SingleOrDefaultAsync(l => l.Id == learnerId, ct);
        if (learner is null)
            return null;
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        var subjects = await SubjectsAsync(db, ct);
        var log = await db.LoggedAsync(period, learnerId, ct);
        var marks = await db.DayMarks.AsNoTracking()
            .Where(m => m.LearnerId == learnerId && m.Date >= period.First && m.Date <= period.Last)
            .ToDictionaryAsync(m => m.Date, m => m.Counts, ct);
        var ledger = HoursLedger.Of(learnerId, subjects, period, log);
        var kept = await db.SealedYearOfAsync(period, ct);
        var name = kept is null ? null : await db.SealedRecords.Where(r => r.SchoolYearId == kept.SchoolYearId && r.LearnerId == learnerId).Select(r => r.LearnerName).SingleOrDefaultAsync(ct);
        return new LearnerYear(family, learner, ledger, SchoolDays.Of(ledger, new Minutes(kept?.MinimumDay ?? family.MinimumDay), marks), marks, kept, name);
    }

    /// <summary>The ledgers of several learners over one period, from one reading of the log.</summary>
    public static async Task<IReadOnlyList<HoursLedger>> LedgersAsync(AppDb db, IEnumerable<Guid> learnerIds, DayRange period, CancellationToken ct)
    {
        var subjects = await SubjectsAsync(db, ct);
        var log = await db.LoggedAsync(period, null, ct);
        return [.. learnerIds.Select(id => HoursLedger.Of(id, subjects, period, log))];
    }

    /// <summary>All subjects, retired ones too, in the family's order.</summary>
    public static async Task<IReadOnlyList<Subject>> SubjectsAsync(AppDb db, CancellationToken ct) =>
        [.. (await db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(ct)).Select(s => s.ToCore())];
}
