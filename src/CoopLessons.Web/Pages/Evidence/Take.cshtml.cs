using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>Makes a piece of what was sent in parts. However often it is asked for, it is one piece.</summary>
public sealed class TakeModel(AppDb db, TimeProvider clock, FileShelf shelf, BroughtPieces brought) : PieceFormPage(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    /// <summary>What the device called the file.</summary>
    [BindProperty]
    public string? Name { get; set; }

    public async Task<IActionResult> OnGetAsync() =>
        await Db.Pieces.AnyAsync(p => p.Id == Id, Ct) ? LocalRedirect($"/evidence/{Id}") : NotFound();

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var person = Db.Current.PersonId!.Value;
        if (await Db.Pieces.AnyAsync(p => p.Id == Id, Ct))
        {
            shelf.Arriving.Drop(Family.Id, person, Id);
            return Done(null);
        }

        Check();
        if (!ModelState.IsValid)
            return Again();
        if (shelf.Arriving.Open(Family.Id, person, Id) is not { } came)
        {
            ModelState.AddModelError("", "Not all of this file has arrived yet. It is sent on from where it stopped.");
            return Again(StatusCodes.Status409Conflict);
        }

        var (piece, fault) = await brought.LookAsync(came, Name, Ct);
        if (piece is null)
        {
            ModelState.AddModelError("Files", fault!.Sentence);
            // What cannot be kept now cannot be kept later either; only the room may be less full.
            if (fault.Status != StatusCodes.Status503ServiceUnavailable)
                shelf.Arriving.Drop(Family.Id, person, Id);
            else
                Response.Headers.RetryAfter = "60";
            return Again(fault.Status);
        }

        await using (piece)
        {
            var (facts, takenAt) = FactsOf(piece.Verdict);
            await brought.TakeAsync(Id, piece, takenAt, facts, Family.KeepOriginals, await AuthorAsync(), Now, Ct);
        }

        shelf.Arriving.Drop(Family.Id, person, Id);
        return Done(piece.Remark);
    }

    private LocalRedirectResult Done(string? remark)
    {
        Say(remark ?? "It is kept.");
        return LocalRedirect($"/evidence/{Id}");
    }
}
