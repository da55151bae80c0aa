using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A teaching family changes a class.</summary>
public sealed class EditClassModel(AppDb db, TimeProvider clock) : ClassFormPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "classId")]
    public Guid ClassId { get; set; }

    public CoopClass Class { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        Input = ClassForm.Of(Class);
        Input.Spread(Table);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        if (ReadForm(Class) is not { } read)
            return AgainSpread();
        Expect(Class, Input.Version);
        var (before, number) = (Class.Size, Table.NextNumber(Class));
        Class.Describe(read.Facts, read.Details);
        if (Class.Size != before)
            Db.ClassListLines.Add(ClassListLine.Resize(Class, number, Family.Id, Now));
        var over = Table.Roll(Class).Places.Count - Class.Size;
        if (!await SaveAllAsync())
        {
            await FindAsync();
            return AgainSpread(StatusCodes.Status409Conflict);
        }

        Say($"“{Class.Title}” is saved." + (over > 0 ? $" {(over == 1 ? "One child more has" : $"{over} children more have")} a place than it takes now; nobody loses a place." : ""));
        return LocalRedirect($"{Here}/classes/{ClassId}");
    }

    /// <summary>A sign-up may take the same number of the list in this moment.</summary>
    private async Task<bool> SaveAllAsync()
    {
        try
        {
            return await SaveAsync();
        }
        catch (Microsoft.EntityFrameworkCore.DbUpdateException)
        {
            Db.ChangeTracker.Clear();
            ModelState.AddModelError("", "Something else was saved at the same moment. Nothing you typed is lost; send it once more.");
            return false;
        }
    }

    private async Task<bool> FindAsync()
    {
        await ReadTableAsync();
        if (Table.Classes.SingleOrDefault(c => c.Id == ClassId) is not { } found)
            return false;
        Class = found;
        return true;
    }
}
