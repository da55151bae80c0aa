using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Asks once more, then removes a unit with its activities and what of them is placed on days. The log keeps its own text.</summary>
public sealed class RemoveModel(AppDb db, TimeProvider clock, FileShelf shelf) : UnitsPage(db, clock)
{
    [BindProperty]
    public int Version { get; set; }

    public Unit Unit { get; private set; } = null!;
    public int Placed { get; private set; }
    public int Done { get; private set; }

    /// <summary>Printables that have a file.</summary>
    public int Files { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id) => await FindAsync(id) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        using var turn = await shelf.TurnAsync(Ct);
        Db.Units.Remove(Unit);
        Expect(Unit, Version);
        if (!await SaveAsync())
            return await FindAsync(id) ? Again(StatusCodes.Status409Conflict) : NotFound();
        await shelf.TidyAsync(Db, Now, Ct);
        Say($"“{Unit.Title}” is removed. What the log says about it stays.");
        return RedirectToPage("Index");
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await UnitAsync(id) is not { } unit)
            return false;
        Unit = unit;
        var activities = unit.Activities.Select(a => a.Id).ToList();
        var states = await Db.PlannedSessions.Where(s => s.ActivityId != null && activities.Contains(s.ActivityId.Value)).Select(s => s.State).ToListAsync(Ct);
        (Placed, Done) = (states.Count, states.Count(s => s == SessionState.Done));
        Files = await Db.PrintSources.CountAsync(s => activities.Contains(s.ActivityId), Ct);
        return true;
    }
}
