using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Writes an activity into a unit.</summary>
public sealed class NewActivityModel(AppDb db, TimeProvider clock) : ActivityFormPage(db, clock)
{
    private const int LongestCode = 40;

    public override Activity? Activity => null;

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (!await FindAsync(id, null))
            return NotFound();
        Input.Id = Guid.CreateVersion7();
        Input.Week = Unit.Activities.Select(a => a.Week).DefaultIfEmpty(1).Max();
        ShowSubjects(ActivityDetails.Empty);
        AddBlankRows();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (!await FindAsync(id, null))
            return NotFound();
        if (Input.Id == Guid.Empty)
            ModelState.AddModelError("", "The page is incomplete. Open it again; what you typed can be copied over.");
        else if (Unit.Activities.Any(a => a.Id == Input.Id))
            return Written(id);
        if (Read() is not var (facts, details))
            return Again();

        Unit.Add(new Activity(Input.Id, Code(), facts, details));
        if (await SaveNewAsync() || await UnitAsync(id) is { } unit && unit.Activities.Any(a => a.Id == Input.Id))
            return Written(id);
        return AgainAfterOthers();
    }

    private RedirectToPageResult Written(Guid id)
    {
        Say("The activity is in the unit.");
        return RedirectToPage("Show", null, new { id }, $"a-{Input.Id}");
    }

    /// <summary>A code that no other activity of the unit has, made of the title.</summary>
    private string Code()
    {
        var taken = Unit.Activities.Select(a => a.Code).ToHashSet(StringComparer.Ordinal);
        var slug = UnitWords.Slug(Input.Title, LongestCode - 4, "activity");
        return Enumerable.Range(1, taken.Count + 1).Select(n => n == 1 ? slug : $"{slug}-{n}").First(c => !taken.Contains(c));
    }
}
