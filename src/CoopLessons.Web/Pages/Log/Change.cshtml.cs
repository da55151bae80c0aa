using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Log;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Log;

/// <summary>Changes an entry: the new text is a new revision, the old one stays readable.</summary>
public sealed class ChangeModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty]
    public int Version { get; set; }

    /// <summary>Number of the writing that the form was filled from.</summary>
    [BindProperty]
    public int From { get; set; }

    [BindProperty]
    public EntryForm Input { get; set; } = new();

    [BindProperty]
    [StringLength(LogRevision.LongestWhy, ErrorMessage = "At most {1} signs.")]
    public string? Why { get; set; }

    public EntryWords Words { get; private set; } = null!;

    /// <summary>What somebody else wrote while this form was open.</summary>
    public LogRevision? Newer { get; private set; }

    /// <summary>The writing that removed the entry while this form was open; null while it stands.</summary>
    public LogRevision? Removal { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (await Db.EntryAsync(Id, Ct) is not { } found)
            return NotFound();
        if (found.Newest.Removed)
            return LocalRedirect($"/log/{Id}");
        Words = await EntryWords.LoadAsync(Db, Ct);
        Input = Words.Form(found.Newest.Facts);
        (Version, From) = (found.Entry.Version, found.Newest.Number);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        Words = await EntryWords.LoadAsync(Db, Ct);
        if (await Db.EntryAsync(Id, Ct) is not { } found || !Input.Name(Words.Learners, Words.Subjects))
            return NotFound();
        if (Kept is not null)
            return await SentByPhoneAsync();
        // A change would let it count again without the session it belongs to.
        if (found.Newest.Removed)
            return AgainRemoved(found.Newest);
        if (Input.Read(ModelState, nameof(Input), Today) is not { } facts)
            return Again();
        if (Words.Changes(found.Newest.Facts, facts).Count == 0)
        {
            Say("Nothing was different, so nothing was changed.");
            return LocalRedirect($"/log/{Id}");
        }

        Expect(found.Entry, Version);
        found.Entry.Change(facts, await AuthorAsync(), Now, Why ?? "");
        if (!await SaveAsync())
            return await AgainBesideNewerAsync();
        Say("Changed. The old text stays in the history.");
        return LocalRedirect($"/log/{Id}");
    }

    /// <summary>It was changed without a network: nobody could see what others wrote meanwhile, and nothing is overwritten.</summary>
    private async Task<IActionResult> SentByPhoneAsync()
    {
        if (Input.Read(ModelState, nameof(Input), Today) is not { } facts)
            return Again();
        switch (await EntrySending.TakeAsync(Db, Id, From, facts, await AuthorAsync(), Now, Why ?? "", Ct))
        {
            case Sent.Aside:
                Say("Somebody else changed the same meanwhile: both are kept, and you are asked which holds.");
                break;
            case Sent.Nothing:
                Say("Nothing was different, so nothing was changed.");
                break;
            case Sent.Holds:
                Say("Changed. The old text stays in the history.");
                break;
            default:
                return StatusCode(StatusCodes.Status503ServiceUnavailable);
        }

        return LocalRedirect($"/log/{Id}");
    }

    private async Task<IActionResult> AgainBesideNewerAsync()
    {
        var found = (await Db.EntryAsync(Id, Ct))!.Value;
        if (found.Newest.Removed)
            return AgainRemoved(found.Newest);
        Newer = found.Newest;
        // The reader has seen the newer text now; saving once more is meant.
        (Version, From) = (found.Entry.Version, found.Newest.Number);
        ModelState.Remove(nameof(Version));
        ModelState.Remove(nameof(From));
        return Again(StatusCodes.Status409Conflict);
    }

    private IActionResult AgainRemoved(LogRevision removal)
    {
        Removal = removal;
        return Again(StatusCodes.Status409Conflict);
    }
}
