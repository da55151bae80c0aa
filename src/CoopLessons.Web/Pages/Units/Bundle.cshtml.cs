using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The unit as a file that another family can take in.</summary>
public sealed class BundleModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (await UnitAsync(id) is not { } unit)
            return NotFound();
        if (unit.Activities.Count == 0)
        {
            Say("A bundle file holds at least one activity. Write one first.");
            return RedirectToPage("Show", new { id });
        }

        var bundle = UnitTravel.ToBundle(unit, await SubjectsAsync());
        return File(BundleFile.Write(bundle), "application/json", UnitWords.Slug(unit.Title, 60, "unit") + ".json");
    }
}
