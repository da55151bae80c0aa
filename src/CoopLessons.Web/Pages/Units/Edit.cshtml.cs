using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Changes a unit's title, summary and length.</summary>
public sealed class EditModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    [BindProperty]
    public UnitInput Input { get; set; } = new();

    public Unit Unit { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (await UnitAsync(id) is not { } unit)
            return NotFound();
        Unit = unit;
        Input = new UnitInput { Version = unit.Version, Title = unit.Title, Summary = unit.Summary, Weeks = unit.Weeks };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (await UnitAsync(id) is not { } unit)
            return NotFound();
        Unit = unit;
        var last = unit.Activities.Select(a => a.Week).DefaultIfEmpty(1).Max();
        if (ModelState.IsValid && Input.Weeks < last)
            ModelState.AddModelError("Input.Weeks", $"Week {last} has activities. Move or remove them first, or keep at least {UnitWords.Count(last, "week", "weeks")}.");
        if (!ModelState.IsValid)
            return Again();

        unit.Describe(Input.Title, Input.Summary, Input.Weeks!.Value);
        Expect(unit, Input.Version);
        if (!await SaveAsync())
        {
            if (await UnitAsync(id) is not { } newer)
                return NotFound();
            Unit = newer;
            // The reader has been told; saving once more is meant.
            Input.Version = newer.Version;
            ModelState.Remove("Input.Version");
            return Again(StatusCodes.Status409Conflict);
        }

        Say("The unit is changed.");
        return RedirectToPage("Show", new { id });
    }
}
