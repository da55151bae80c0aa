using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Sealing;

/// <summary>A school year and whether it is sealed.</summary>
/// <param name="Corrections">Late ones; each amends the record of one child or several.</param>
public sealed record YearLine(SchoolYear Year, SealedYear? Seal, int Corrections);

/// <summary>The family's school years: open, over, or sealed.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>The latest first.</summary>
    public IReadOnlyList<YearLine> Years { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        var seals = await Db.SealedYears.AsNoTracking().ToDictionaryAsync(s => s.SchoolYearId, Ct);
        var corrections = (await Db.Amendments.Select(a => new { a.SchoolYearId, a.At }).Distinct().ToListAsync(Ct)).ToLookup(a => a.SchoolYearId);
        Years = [.. (await Db.SchoolYears.AsNoTracking().OrderByDescending(y => y.First).ToListAsync(Ct)).Select(y => new YearLine(y, seals.GetValueOrDefault(y.Id), corrections[y.Id].Count()))];
        return Page();
    }
}
