using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Files;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>A newer version held against the family's own: what comes in, and what is to be decided, one by one or later.</summary>
public sealed class NewerModel(AppDb db, TimeProvider clock, FileShelf shelf) : UnitsPage(db, clock)
{
    [BindProperty]
    public List<DecisionInput> Decisions { get; set; } = [];

    public NewerVersion Version { get; private set; } = null!;

    public IReadOnlyList<Collided> Collided { get; private set; } = [];

    /// <summary>What the author said of each revision since the family's.</summary>
    public IReadOnlyList<SharedRevision> Notes { get; private set; } = [];

    /// <summary>Days of the plan on which something stands that is taken out.</summary>
    public int Placed { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id) => await FindAsync(id) ? Page() : await NothingAsync(id);

    public async Task<IActionResult> OnPostAsync(Guid id, string? state)
    {
        if (!await FindAsync(id))
            return await NothingAsync(id);
        if (state != Version.State)
        {
            ModelState.AddModelError("", "The unit or what is new changed while this page was open. What you chose is still here; look once more, then send it.");
            return Again(StatusCodes.Status409Conflict);
        }

        var read = Units.Collided.Read(Version.Merge, Decisions, ModelState);
        if (!ModelState.IsValid)
            return Again();
        using var turn = await shelf.TurnAsync(Ct);
        var asked = Version.Merge.Collisions.Count;
        var after = await Version.TakeAsync(read, shelf, await AuthorAsync(), Now, Ct);
        if (!await SaveAsync())
            return await FindAsync(id) ? Again(StatusCodes.Status409Conflict) : NotFound();
        await shelf.TidyAsync(Db, Now, Ct);
        var left = after.Collisions.Count;
        if (read.Count > 0 && left > asked - read.Count)
            Say("Something that you chose cannot stand beside the rest and is asked once more, with the reason.");
        else
            Say(left == 0 ? "It is in. Nothing is left to decide." : $"It is in. {UnitWords.Count(left, "thing is", "things are")} left for later.");
        return RedirectToPage(left > 0 && read.Count > 0 ? "Newer" : "Show", new { id });
    }

    private async Task<IActionResult> NothingAsync(Guid id)
    {
        if (!await Db.Units.AnyAsync(u => u.Id == id, Ct))
            return NotFound();
        Say("There is nothing newer, and nothing left for later.");
        return RedirectToPage("Show", new { id });
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await NewerVersion.FindAsync(Db, id, Ct) is not { } version)
            return false;
        Version = version;
        Collided = Units.Collided.Of(version.Merge, Decisions);
        if (version.Revision is { } newest)
        {
            var since = version.Origin.Number;
            Notes = await Db.SharedRevisions.AsNoTracking().Where(r => r.CoopId == newest.CoopId && r.SharedUnitId == newest.SharedUnitId && r.Number > since && r.Note != "").OrderBy(r => r.Number).ToListAsync(Ct);
        }

        var gone = version.Merge.CameIn.Where(c => c is { Spot: { Activity: not null, Field: null }, To: null }).Select(c => c.Spot.Activity!).ToList();
        var ids = version.Unit.Activities.Where(a => gone.Contains(a.Code)).Select(a => (Guid?)a.Id).ToList();
        Placed = ids.Count == 0 ? 0 : await Db.PlannedSessions.CountAsync(s => ids.Contains(s.ActivityId), Ct);
        return true;
    }
}
