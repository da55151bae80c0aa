using CoopLessons.Core.Sealing;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Sealing;

/// <summary>An amendment as the page tells it.</summary>
public sealed record AmendmentLine(int Number, DateOnly On, string By, string Why, Guid? EntryId, IReadOnlyList<RecordChange> Changes, Fingerprint Fingerprint);

/// <summary>One learner's sealed year.</summary>
/// <param name="Name">As it was on the day of sealing.</param>
/// <param name="Sealed">The sealing's own fingerprint.</param>
/// <param name="Amendments">By number.</param>
public sealed record LearnerSeal(Guid LearnerId, string Name, Fingerprint Sealed, IReadOnlyList<AmendmentLine> Amendments, SealCheck Check);

/// <summary>One school year: what is open before it is sealed, or what was sealed and whether the log still says so.</summary>
public sealed class YearModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>More days than these are told as counts of their months.</summary>
    public const int MostDaysNamed = 12;

    public SchoolYear Year { get; private set; } = null!;
    public SealedYear? Seal { get; private set; }

    /// <summary>Null for a year that is sealed or not over.</summary>
    public OpenBeforeSealing? Open { get; private set; }

    /// <summary>In the family's order.</summary>
    public IReadOnlyList<LearnerSeal> Learners { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid yearId) => await FindAsync(yearId) ? Page() : NotFound();

    /// <param name="sure">The box by which the page asks once.</param>
    public async Task<IActionResult> OnPostAsync(Guid yearId, bool sure)
    {
        if (!await FindAsync(yearId))
            return NotFound();
        if (Seal is not null)
            return RedirectToPage(new { yearId });
        if (!Year.IsOver(Today))
        {
            ModelState.AddModelError("", $"The year runs until {RecordWords.Of(Year.Last)}. It can be sealed on the day after.");
            return Again(StatusCodes.Status409Conflict);
        }

        if (!sure)
        {
            ModelState.AddModelError("sure", "Tick the box first: a sealing is not taken back.");
            return Again();
        }

        if (await Db.SealAsync(Year, await AuthorAsync(), Today, Now, Ct))
            Say($"{Year.Name} is sealed.");
        return RedirectToPage(new { yearId });
    }

    private async Task<bool> FindAsync(Guid yearId)
    {
        var year = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleOrDefaultAsync(y => y.Id == yearId, Ct);
        if (year is null)
            return false;
        Year = year;
        Seal = await Db.SealedYears.AsNoTracking().SingleOrDefaultAsync(s => s.SchoolYearId == yearId, Ct);
        if (Seal is not null)
            await ReadAsync(Seal);
        else if (year.IsOver(Today))
            Open = await OpenBeforeSealing.LoadAsync(Db, year, Ct);
        return true;
    }

    private async Task ReadAsync(SealedYear seal)
    {
        var records = await (from r in Db.SealedRecords
                             join l in Db.Learners on r.LearnerId equals l.Id
                             where r.SchoolYearId == seal.SchoolYearId
                             orderby l.Order, l.Id
                             select new { r.LearnerId, r.LearnerName, r.Fingerprint }).ToListAsync(Ct);
        var amendments = (await Db.Amendments.Where(a => a.SchoolYearId == seal.SchoolYearId).OrderBy(a => a.Number)
            .Select(a => new { a.LearnerId, a.Number, a.AmendedOn, a.By, a.Why, a.EntryId, a.Changes, a.Fingerprint }).ToListAsync(Ct)).ToLookup(a => a.LearnerId);
        var seals = new List<LearnerSeal>();
        foreach (var record in records)
        {
            seals.Add(new LearnerSeal(
                record.LearnerId, record.LearnerName, Fingerprint.Kept(record.Fingerprint),
                [.. amendments[record.LearnerId].Select(a => new AmendmentLine(a.Number, a.AmendedOn, a.By, a.Why, a.EntryId, a.Changes, Fingerprint.Kept(a.Fingerprint)))],
                await Db.CheckAsync(seal, record.LearnerId, Ct)));
        }

        Learners = seals;
    }
}
