using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Asks once more, then removes an activity and what of it is placed on days. The log keeps its own text.</summary>
public sealed class RemoveActivityModel(AppDb db, TimeProvider clock, FileShelf shelf) : UnitsPage(db, clock)
{
    [BindProperty]
    public int Version { get; set; }

    public Activity Activity { get; private set; } = null!;
    public int Placed { get; private set; }
    public int Done { get; private set; }

    /// <summary>Printables that have a file.</summary>
    public int Files { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id, Guid activityId) => await FindAsync(id, activityId) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(Guid id, Guid activityId)
    {
        if (!await FindAsync(id, activityId))
            return NotFound();
        using var turn = await shelf.TurnAsync(Ct);
        Db.Activities.Remove(Activity);
        Expect(Activity, Version);
        if (!await SaveAsync())
            return await FindAsync(id, activityId) ? Again(StatusCodes.Status409Conflict) : NotFound();
        await shelf.TidyAsync(Db, Now, Ct);
        Say($"“{Activity.Title}” is removed. What the log says about it stays.");
        return RedirectToPage("Show", null, new { id }, $"week-{Activity.Week}");
    }

    private async Task<bool> FindAsync(Guid id, Guid activityId)
    {
        if (await Db.Activities.SingleOrDefaultAsync(a => a.UnitId == id && a.Id == activityId, Ct) is not { } activity)
            return false;
        Activity = activity;
        var states = await Db.PlannedSessions.Where(s => s.ActivityId == activityId).Select(s => s.State).ToListAsync(Ct);
        (Placed, Done) = (states.Count, states.Count(s => s == SessionState.Done));
        Files = await Db.PrintSources.CountAsync(s => s.ActivityId == activityId, Ct);
        return true;
    }
}
