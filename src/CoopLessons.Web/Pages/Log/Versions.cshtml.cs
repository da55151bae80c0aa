using CoopLessons.Data;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>Two writings of one entry beside each other; a guardian says which holds. Both stay in the history.</summary>
public sealed class VersionsModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    public EntryWords Words { get; private set; } = null!;

    /// <summary>What holds now.</summary>
    public FactsView Holds { get; private set; } = null!;

    /// <summary>What was written elsewhere at the same time.</summary>
    public FactsView Beside { get; private set; } = null!;

    public int Version { get; private set; }

    public IReadOnlyList<string> Changes { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!IsGuardian)
            return StatusCode(StatusCodes.Status403Forbidden);
        if (await Db.EntryAsync(Id, Ct) is not { } found)
            return NotFound();
        return await LoadAsync(found.Entry, found.Newest) ? Page() : LocalRedirect($"/log/{Id}");
    }

    /// <param name="number">The writing that was set aside.</param>
    /// <param name="take">Whether it holds from now on; else what holds stays.</param>
    /// <param name="version">Of the entry as it was shown.</param>
    public async Task<IActionResult> OnPostAsync(int number, bool take, int version)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        if (!IsGuardian)
            return StatusCode(StatusCodes.Status403Forbidden);
        if (await Db.EntryAsync(Id, Ct) is not { } found)
            return NotFound();
        var aside = await Db.Unanswered().Include(r => r.Times).Include(r => r.Subjects).SingleOrDefaultAsync(r => r.EntryId == Id && r.Number == number, Ct);
        if (aside is null)
            return LocalRedirect($"/log/{Id}");
        Expect(found.Entry, version);
        var author = await AuthorAsync();
        found.Entry.Answer(aside, take ? aside.Facts : found.Newest.Facts, !take && found.Newest.Removed, author, Now, take ? $"Took what {aside.AuthorName} wrote" : $"Kept what {found.Newest.AuthorName} wrote");
        // An entry that was removed and stands again makes its session done again.
        if (take && found.Newest.Removed && found.Entry.SessionId is { } session && await Db.WorkAsync(session, Ct) is { Session.State: not SessionState.Done } work)
            work.DoneAgain(Id);
        if (await SaveAsync())
        {
            Say("That holds now. The other stays in the history.");
            return LocalRedirect($"/log/{Id}");
        }

        var now = (await Db.EntryAsync(Id, Ct))!.Value;
        return await LoadAsync(now.Entry, now.Newest) ? Again(StatusCodes.Status409Conflict) : LocalRedirect($"/log/{Id}");
    }

    private async Task<bool> LoadAsync(LogEntry entry, LogRevision newest)
    {
        var aside = await Db.Unanswered().Include(r => r.Times).Include(r => r.Subjects).AsNoTracking().Where(r => r.EntryId == Id).OrderBy(r => r.Number).FirstOrDefaultAsync(Ct);
        if (aside is null)
            return false;
        Words = await EntryWords.LoadAsync(Db, Ct);
        (Holds, Beside, Version) = (new FactsView(newest, Words, Family), new FactsView(aside, Words, Family), entry.Version);
        Changes = Words.Changes(newest.Facts, aside.Facts);
        return true;
    }
}
