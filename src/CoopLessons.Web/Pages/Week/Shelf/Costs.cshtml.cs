using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Prepare.Supplies;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>What supplies cost in a school year, by unit and activity.</summary>
public sealed class CostsModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>Newest first.</summary>
    public IReadOnlyList<SchoolYear> Years { get; private set; } = [];

    /// <summary>Null while the family has no school year.</summary>
    public SchoolYear? Shown { get; private set; }
    public SupplyCosts? Costs { get; private set; }

    /// <param name="year">Without it, the year of today, else the newest.</param>
    public async Task<IActionResult> OnGetAsync(Guid? year)
    {
        Years = await Db.SchoolYears.AsNoTracking().OrderByDescending(y => y.First).ToListAsync(Ct);
        Shown = year is { } id ? Years.FirstOrDefault(y => y.Id == id) : Years.FirstOrDefault(y => y.Days.Contains(Today)) ?? (Years.Count > 0 ? Years[0] : null);
        if (year is not null && Shown is null)
            return NotFound();
        if (Shown is not null)
            Costs = await SupplyCosts.LoadAsync(Db, Shown.Days, Ct);
        return Page();
    }
}
