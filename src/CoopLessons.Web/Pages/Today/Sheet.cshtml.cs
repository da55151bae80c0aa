using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Today;

/// <summary>The day on one printed page, for a grandparent or a sitter who stands in.</summary>
public sealed class SheetModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public DaySheet Sheet { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(string date)
    {
        if (!DayWords.TryRead(date, out var day))
            return NotFound();
        var strip = await DayStrip.LoadAsync(Db, day, new Reading(Family, Today, Db.Current.PersonId, NamesFirst: true), Ct);
        Sheet = DaySheet.Of(
            strip,
            await Db.Appointments.AsNoTracking().Where(a => a.First <= day).OrderBy(a => a.StartsAt).ThenBy(a => a.Id).ToListAsync(Ct),
            await Db.TeachingAdults.AsNoTracking().Where(a => !a.SetAside).OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(Ct));
        return Page();
    }
}
