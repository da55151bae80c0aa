using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>A piece, large, with what is said of it; says otherwise, removes and brings back.</summary>
public sealed class PieceModel(AppDb db, TimeProvider clock, FileShelf shelf) : PieceFormPage(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty]
    public int Version { get; set; }

    public Piece Piece { get; private set; } = null!;

    public StoredFile Shown { get; private set; } = null!;

    /// <summary>What the entry says to which it belongs, as a helper may read it, too; null for none.</summary>
    public LogRevision? Of { get; private set; }

    /// <summary>Whether whoever looks at it may change it.</summary>
    public bool MayChange => Db.MayChange(Piece);

    /// <summary>Whether its form came in and was refused.</summary>
    public bool Refused { get; private set; }

    /// <summary>The last day on which it can be brought back.</summary>
    public DateOnly? WayBackUntil => Piece.RemovedAt is { } at ? DateOnly.FromDateTime(Family.Local(new DateTimeOffset(at + Piece.WayBack, TimeSpan.Zero)).DateTime) : null;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        (Date, SubjectId, EntryId, Caption) = (Piece.Date, Piece.SubjectId, Piece.EntryId, Piece.Caption);
        (Learners, FacesOut, SetAside, Version) = (Piece.Learners, Piece.FacesOut, Piece.SetAside, Piece.Version);
        return await FindAsync() ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await LoadAsync() || !MayChange || !await FindAsync())
            return NotFound();
        Check();
        if (Date is null && ModelState.IsValid)
            ModelState.AddModelError(nameof(Date), "Say on which day it was made.");
        if (!ModelState.IsValid)
            return AgainRefused();
        Expect(Piece, Version);
        Piece.Describe(new PieceFacts(Date!.Value, Learners, SubjectId, EntryId, Caption ?? "", FacesOut, SetAside));
        if (!await SaveAsync())
        {
            await LoadAsync();
            ModelState.Remove(nameof(Version));
            Version = Piece.Version;
            return AgainRefused(StatusCodes.Status409Conflict);
        }

        Say("Saved.");
        return LocalRedirect($"/evidence/{Id}");
    }

    public Task<IActionResult> OnPostRemoveAsync() => ChangeAsync(p => p.Remove(Now), "Removed. It can be brought back here for 30 days.");

    public Task<IActionResult> OnPostBringBackAsync() => ChangeAsync(p => p.BringBack(), "It is back.");

    private async Task<IActionResult> ChangeAsync(Action<Piece> change, string said)
    {
        // The form of this button holds nothing but the piece's number; what else is named must be the family's all the same.
        if (!await LoadAsync() || !MayChange || !await FindAsync())
            return NotFound();
        using var turn = await shelf.TurnAsync(Ct);
        change(Piece);
        if (!await SaveAsync())
            return LocalRedirect($"/evidence/{Id}");
        await shelf.TidyAsync(Db, Now, Ct);
        Say(said);
        return LocalRedirect($"/evidence/{Id}");
    }

    private IActionResult AgainRefused(int status = StatusCodes.Status422UnprocessableEntity)
    {
        Refused = true;
        return Again(status);
    }

    private async Task<bool> LoadAsync()
    {
        if (await Db.SeenPiecesOn(Today).SingleOrDefaultAsync(p => p.Id == Id, Ct) is not { } piece)
            return false;
        Piece = piece;
        Shown = await Db.StoredFiles.AsNoTracking().SingleAsync(f => f.Hash == piece.Hash, Ct);
        Of = piece.EntryId is { } entry && await Db.EntryAsync(entry, Ct) is { } found ? found.Newest : null;
        return true;
    }
}
