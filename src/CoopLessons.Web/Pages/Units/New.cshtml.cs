using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Begins a unit that the family writes itself.</summary>
public sealed class NewModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    [BindProperty]
    public UnitInput Input { get; set; } = new();

    public void OnGet() => Input.Id = Guid.CreateVersion7();

    public async Task<IActionResult> OnPostAsync()
    {
        if (Input.Id == Guid.Empty)
            ModelState.AddModelError("", "The page is incomplete. Open it again; what you typed can be copied over.");
        if (!ModelState.IsValid)
            return Again();
        if (await Db.Units.AnyAsync(u => u.Id == Input.Id, Ct))
            return Written();
        Db.Units.Add(new Unit(Input.Id, Input.Title, Input.Summary, Input.Weeks!.Value));
        if (!await SaveNewAsync() && !await Db.Units.AnyAsync(u => u.Id == Input.Id, Ct))
            return AgainAfterOthers();
        return Written();
    }

    private RedirectToPageResult Written()
    {
        Say("The unit is on your shelf. Write its first activity.");
        return RedirectToPage("Show", new { id = Input.Id });
    }
}
