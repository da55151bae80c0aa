using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Pieces;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>One step of an entry's history: what was done to it, and what differs from the step before.</summary>
public sealed record HistoryStep(string Deed, FactsView View, IReadOnlyList<string> Changes);

/// <summary>An entry with its history; removes and restores it.</summary>
public sealed class EntryModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    public EntryWords Words { get; private set; } = null!;
    public int Version { get; private set; }
    public PlannedSession? Session { get; private set; }

    /// <summary>The last step first.</summary>
    public IReadOnlyList<HistoryStep> History { get; private set; } = [];
    public FactsView Newest { get; private set; } = null!;

    /// <summary>Whether another writing stands beside it, of which nobody said yet which holds.</summary>
    public bool IsAsked { get; private set; }

    /// <summary>The photos and files that belong to it, as far as whoever looks may see them.</summary>
    public PieceList Pieces { get; private set; } = null!;
    public string? Why { get; private set; }
    public string? WhyFault { get; private set; }

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostRemoveAsync(int version, string? why)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        if (await Db.EntryAsync(Id, Ct) is not { } found)
            return NotFound();
        if (why?.Length > LogRevision.LongestWhy)
            return await AgainWithAsync(why, $"At most {LogRevision.LongestWhy} signs.");
        if (found.Newest.Removed)
            return LocalRedirect($"/log/{Id}");
        Expect(found.Entry, version);
        found.Entry.Remove(found.Newest, await AuthorAsync(), Now, why ?? "");
        if (await WorkOfAsync(found.Entry) is { } work && work.Session.EntryId == Id)
            work.Undo();
        return await SaveOrAgainAsync("Removed. It counts nowhere now, and can be restored.");
    }

    public async Task<IActionResult> OnPostRestoreAsync(int version)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        if (await Db.EntryAsync(Id, Ct) is not { } found)
            return NotFound();
        if (!found.Newest.Removed)
            return LocalRedirect($"/log/{Id}");
        Expect(found.Entry, version);
        found.Entry.Restore(found.Newest, await AuthorAsync(), Now, "");
        // Done again, unless another entry says so by now.
        if (await WorkOfAsync(found.Entry) is { Session.State: not SessionState.Done } work)
            work.DoneAgain(Id);
        return await SaveOrAgainAsync("Restored. It counts again.");
    }

    private async Task<IActionResult> SaveOrAgainAsync(string said)
    {
        if (!await SaveAsync())
        {
            ModelState.Clear();
            return await AgainWithAsync(null, "Somebody changed this meanwhile. Look at it as it stands now, then do it once more.", StatusCodes.Status409Conflict);
        }

        Say(said);
        return LocalRedirect($"/log/{Id}");
    }

    private async Task<IActionResult> AgainWithAsync(string? why, string fault, int status = StatusCodes.Status422UnprocessableEntity)
    {
        (Why, WhyFault) = (why, fault);
        await LoadAsync();
        return Again(status);
    }

    private async Task<PlannedWork?> WorkOfAsync(LogEntry entry) => entry.SessionId is { } id ? await Db.WorkAsync(id, Ct) : null;

    private async Task<bool> LoadAsync()
    {
        if (await Db.LogEntries.AsNoTracking().SingleOrDefaultAsync(e => e.Id == Id, Ct) is not { } entry)
            return false;
        Version = entry.Version;
        Session = (await WorkOfAsync(entry))?.Session;
        Words = await EntryWords.LoadAsync(Db, Ct);
        var seen = await Db.SeenPiecesOn(Today).Where(p => p.EntryId == Id).Select(p => p.Id).ToListAsync(Ct);
        Pieces = new PieceList([.. (await Db.PiecesOfEntryAsync(Id, Ct)).Where(p => seen.Contains(p.Id))], Words, Day: false);
        var revisions = await Db.HistoryAsync(Id, Ct);
        History = [.. revisions.Select(r => StepOf(r, revisions.LastOrDefault(b => b.Number < r.Number && !b.Aside))).Reverse()];
        Newest = History.First(s => s.View.Revision.Number == entry.Newest).View;
        IsAsked = revisions.Any(r => r.Aside && revisions.All(a => a.Answers != r.Number));
        return true;
    }

    private HistoryStep StepOf(LogRevision revision, LogRevision? before)
    {
        var deed = before is null ? "Written" : revision.Aside ? "Set beside it" : revision.Answers is not null ? "Chosen" : revision.Removed ? "Removed" : before.Removed ? "Restored" : "Changed";
        return new HistoryStep(deed, new FactsView(revision, Words, Family), before is null ? [] : Words.Changes(before.Facts, revision.Facts));
    }
}
