using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Asks once more, then removes the file of a printable; from the shelf, too, where nothing else uses it.</summary>
public sealed class RemovePrintModel(AppDb db, TimeProvider clock, FileShelf shelf) : UnitsPage(db, clock)
{
    [BindProperty]
    public int Version { get; set; }

    public Guid UnitId { get; private set; }
    public PrintSource Source { get; private set; } = null!;

    /// <summary>Whether the same file is used for something else.</summary>
    public bool Elsewhere { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id, Guid activityId, Guid sourceId) => await FindAsync(id, activityId, sourceId) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(Guid id, Guid activityId, Guid sourceId)
    {
        if (!await FindAsync(id, activityId, sourceId))
            return NotFound();
        using var turn = await shelf.TurnAsync(Ct);
        Db.PrintSources.Remove(Source);
        Expect(Source, Version);
        if (!await SaveAsync())
            return await FindAsync(id, activityId, sourceId) ? Again(StatusCodes.Status409Conflict) : NotFound();
        await shelf.TidyAsync(Db, Now, Ct);
        Say($"“{Source.FileName}” is removed.");
        return RedirectToPage("Prints", new { id, activityId });
    }

    private async Task<bool> FindAsync(Guid id, Guid activityId, Guid sourceId)
    {
        UnitId = id;
        if (!await Db.Activities.AnyAsync(a => a.UnitId == id && a.Id == activityId, Ct)
            || await Db.PrintSources.SingleOrDefaultAsync(s => s.Id == sourceId && s.ActivityId == activityId, Ct) is not { } source)
            return false;
        Source = source;
        Elsewhere = await Db.PrintSources.AnyAsync(s => s.Hash == source.Hash && s.Id != sourceId, Ct);
        return true;
    }
}
