using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>Gives a file of a piece: pictures to be shown in their place, anything else to be saved or played.</summary>
public abstract class PieceFilePage(AppDb db, TimeProvider clock, FileShelf shelf) : FamilyPage(db, clock)
{
    /// <param name="hash">Which of the piece's files; null where it has none.</param>
    protected async Task<IActionResult> GiveAsync(Guid id, Func<Piece, string?> hash)
    {
        if (await Db.SeenPiecesOn(Today).AsNoTracking().SingleOrDefaultAsync(p => p.Id == id, Ct) is not { } piece
            || hash(piece) is not { } wanted || await shelf.AtHandAsync(Family.Id, wanted, Ct) is not { } file)
            return NotFound();
        var kind = await Db.StoredFiles.Where(f => f.Hash == wanted).Select(f => f.Kind).SingleAsync(Ct);
        HttpContext.PutInABox();
        // A file is named by what is in it, and never changes: this browser may keep it, and nobody between.
        Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        var isPicture = kind is StoredKind.Png or StoredKind.Jpeg;
        var disposition = new ContentDispositionHeaderValue(isPicture ? "inline" : "attachment");
        disposition.SetHttpFileName(piece.Name);
        Response.Headers.ContentDisposition = disposition.ToString();
        return new FileStreamResult(file.Open(), PieceWords.ContentType(piece.Kind, kind)) { EntityTag = new EntityTagHeaderValue($"\"{wanted}\""), EnableRangeProcessing = true };
    }
}

/// <summary>What is shown of a piece.</summary>
public sealed class FileModel(AppDb db, TimeProvider clock, FileShelf shelf) : PieceFilePage(db, clock, shelf)
{
    public Task<IActionResult> OnGetAsync(Guid id) => GiveAsync(id, p => p.Hash);
}

/// <summary>A picture as it stands in lists.</summary>
public sealed class SmallModel(AppDb db, TimeProvider clock, FileShelf shelf) : PieceFilePage(db, clock, shelf)
{
    public Task<IActionResult> OnGetAsync(Guid id) => GiveAsync(id, p => p.SmallHash);
}

/// <summary>A photo as it came, with the place where it was taken: for guardians.</summary>
public sealed class OriginalModel(AppDb db, TimeProvider clock, FileShelf shelf) : PieceFilePage(db, clock, shelf)
{
    public async Task<IActionResult> OnGetAsync(Guid id) => IsGuardian ? await GiveAsync(id, p => p.OriginalHash) : NotFound();
}
