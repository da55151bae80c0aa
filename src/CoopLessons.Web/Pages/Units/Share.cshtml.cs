using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>A co-op of the family's, and how the unit stands there.</summary>
/// <param name="Hash">Of the newest revision.</param>
/// <param name="Changes">Since then.</param>
public sealed record SharingPlace(Coop Coop, CoopFamily Mine, SharedUnit? Shared, string? Hash, IReadOnlyList<UnitDifference> Changes);

/// <summary>Publishes a unit in a co-op, revision by revision, or saves it as a pack for another server.</summary>
public sealed class ShareModel(AppDb db, TimeProvider clock, FileShelf shelf) : UnitsPage(db, clock)
{
    public Unit Unit { get; private set; } = null!;

    /// <summary>Null where the unit cannot go out.</summary>
    public PublishedBundle? Bundle { get; private set; }

    public IReadOnlyList<BundleFault> Faults { get; private set; } = [];

    public IReadOnlyList<SharingPlace> Places { get; private set; } = [];

    /// <summary>Files that the unit's activities are printed from.</summary>
    public IReadOnlyList<PrintSource> Prints { get; private set; } = [];

    public IReadOnlyCollection<Guid> Chosen { get; private set; } = [];

    public Guid? RefusedIn { get; private set; }

    public string Note { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        if (Unit.Activities.Count > 0)
            return Page();
        Say("A unit that is shared has at least one activity. Write one first.");
        return RedirectToPage("Show", new { id });
    }

    public async Task<IActionResult> OnPostPublishAsync(Guid id, Guid coopId, int next, string? note, List<Guid> prints)
    {
        (RefusedIn, Note, Chosen) = (coopId, note?.Trim().ReplaceLineEndings("\n") ?? "", prints);
        if (!await FindAsync(id) || Places.SingleOrDefault(p => p.Coop.Id == coopId) is not { } place || Chosen.Except(Prints.Select(p => p.Id)).Any())
            return NotFound();
        if (!place.Mine.Teaches)
            return Forbid();
        if (Bundle is null)
            return Again();
        var newest = place.Shared?.Newest ?? 0;
        if (newest == next && place.Hash == Bundle.Hash)
            return Published(place, next);
        if (newest + 1 != next)
            ModelState.AddModelError("", "Another revision went out while this page was open. Look at what changed since, then publish once more.");
        else if (place.Hash == Bundle.Hash)
            ModelState.AddModelError("", "Nothing changed since the last revision.");
        else if (newest > 0 && Note.Length == 0)
            ModelState.AddModelError("note", "Say in a sentence what changed: the others read it before they take it in.");
        if (Note.Length > SharedRevision.LongestNote)
            ModelState.AddModelError("note", $"At most {SharedRevision.LongestNote} signs.");
        if (!ModelState.IsValid)
            return Again(newest + 1 != next ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);
        using var turn = await shelf.TurnAsync(Ct);
        var tracked = await Db.SharedUnits.SingleOrDefaultAsync(u => u.CoopId == coopId && u.Id == id, Ct);
        await Publishing.PublishAsync(Db, shelf, place.Mine, tracked, Unit, Bundle, Note, Sent(), Now, Ct);
        if (!await SaveNewAsync())
            return await FindAsync(id) ? AgainAfterOthers() : NotFound();
        return Published(place, next);
    }

    /// <summary>The unit with what another server needs to bring it into its own.</summary>
    public async Task<IActionResult> OnPostPackAsync(Guid id, List<Guid> prints)
    {
        Chosen = prints;
        if (!await FindAsync(id) || Chosen.Except(Prints.Select(p => p.Id)).Any())
            return NotFound();
        if (Bundle is null)
            return Again();
        using var turn = await shelf.TurnAsync(Ct);
        var sent = Sent();
        var held = await shelf.HeldAsync(Family.Id, sent.Select(s => s.Hash), Ct);
        var pack = await PackingUp.OfAsync(Db, Unit, Family.Name, [.. sent.Where(s => held.Contains(s.Hash))], Ct);
        if (pack.Prints.Sum(p => p.Bytes) > PackFile.MostBytes - 5_000_000 || pack.Prints.Count > PackFile.MostPrints)
        {
            ModelState.AddModelError("", $"These files are more than a pack holds: {PackFile.MostPrints} files, {PackFile.MostBytes / 1_000_000} megabytes. Choose fewer.");
            return Again();
        }

        if (!await SaveNewAsync())
            return await FindAsync(id) ? AgainAfterOthers() : NotFound();
        var made = shelf.Scratch();
        await PackFile.WriteAsync(made, pack, async hash => (await shelf.AtHandAsync(Family.Id, hash, Ct))!.Open(), Ct);
        made.Position = 0;
        return File(made, "application/zip", UnitWords.Slug(Unit.Title, 60, "unit") + ".zip");
    }

    private RedirectResult Published(SharingPlace place, int number)
    {
        Say(number == 1 ? $"“{Unit.Title}” is out for all of {place.Coop.Name}." : $"Revision {number} is out. Families that use it see what is new and take it in when they like.");
        return Redirect($"/coop/{place.Coop.Id}/units/{Unit.Id}");
    }

    private List<PrintSource> Sent() => [.. Prints.Where(p => Chosen.Contains(p.Id))];

    private async Task<bool> FindAsync(Guid id)
    {
        if (await UnitAsync(id) is not { } unit)
            return false;
        Unit = unit;
        var bundle = UnitTravel.ToBundle(unit, await SubjectsAsync());
        Faults = unit.Activities.Count == 0 ? [] : BundleFile.Read(BundleFile.Write(bundle)).Faults;
        Bundle = unit.Activities.Count == 0 || Faults.Count > 0 ? null : PublishedBundle.Of(bundle);
        var activities = unit.Activities.Select(a => a.Id).ToList();
        Prints = await Db.PrintSources.AsNoTracking().Where(s => activities.Contains(s.ActivityId)).OrderBy(s => s.Printable).ThenBy(s => s.Id).ToListAsync(Ct);
        var mine = await Db.CoopFamilies.Where(f => f.FamilyId == Family.Id && f.LeftAt == null).ToListAsync(Ct);
        var coops = await Db.Coops.AsNoTracking().OrderBy(c => c.Name).ToListAsync(Ct);
        // Another family's unit may have this id nowhere: ids are made once.
        var shared = await Db.SharedUnits.AsNoTracking().Where(u => u.Id == id && u.FamilyId == Family.Id).ToListAsync(Ct);
        var places = new List<SharingPlace>();
        foreach (var coop in coops)
            places.Add(await PlaceAsync(coop, mine.Single(m => m.CoopId == coop.Id), shared.Find(s => s.CoopId == coop.Id)));
        Places = places;
        return true;
    }

    private async Task<SharingPlace> PlaceAsync(Coop coop, CoopFamily mine, SharedUnit? shared)
    {
        if (shared is null)
            return new SharingPlace(coop, mine, null, null, []);
        var newest = await Db.SharedRevisions.AsNoTracking().SingleAsync(r => r.CoopId == coop.Id && r.SharedUnitId == shared.Id && r.Number == shared.Newest, Ct);
        return new SharingPlace(coop, mine, shared, newest.Hash, Bundle is null ? [] : UnitDifferences.Between(newest.Bundle.Content, Bundle.Content));
    }
}
