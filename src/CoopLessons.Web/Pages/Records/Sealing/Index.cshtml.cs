using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Sealing;

/// <summary>A school year and whether it is sealed.</summary>
/// <param name="Amendments">Of all learners together.</param>
public sealed record YearLine(SchoolYear Year, SealedYear? Seal, int Amendments);

/// <summary>The family's school years: open, over, or sealed.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>The latest first.</summary>
    public IReadOnlyList<YearLine> Years { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        var seals = await Db.SealedYears.AsNoTracking().ToDictionaryAsync(s => s.SchoolYearId, Ct);
        var amendments = await Db.Amendments.GroupBy(a => a.SchoolYearId).Select(g => new { g.Key, Count = g.Count() }).ToDictionaryAsync(a => a.Key, a => a.Count, Ct);
        Years = [.. (await Db.SchoolYears.AsNoTracking().OrderByDescending(y => y.First).ToListAsync(Ct)).Select(y => new YearLine(y, seals.GetValueOrDefault(y.Id), amendments.GetValueOrDefault(y.Id)))];
        return Page();
    }
}
