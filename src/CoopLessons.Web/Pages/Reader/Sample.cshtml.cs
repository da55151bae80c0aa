using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;

namespace CoopLessons.Web.Pages.Reader;

/// <summary>A sample that the link shows, small in its place or large by itself.</summary>
public sealed class SampleModel(AppDb db, CurrentFamily current, TimeProvider clock, FileShelf shelf) : ReaderDoor(db, current, clock, shelf)
{
    public async Task<IActionResult> OnGetAsync(string secret, Guid pieceId, bool small)
    {
        if (!await OpenAsync(secret) || !Pieces.TryGetValue(pieceId, out var piece) || (small ? piece.SmallHash : piece.Hash) is not { } hash || await Shelf.AtHandAsync(Family.Id, hash, Ct) is not { } file)
            return NotFound();
        // The small ones come with the page, which was written down as it was opened.
        if (!small)
            await NoteAsync($"a sample of {piece.Date:yyyy-MM-dd}");
        var kind = await Db.StoredFiles.Where(f => f.Hash == hash).Select(f => f.Kind).SingleAsync(Ct);
        HttpContext.PutInABox();
        // Nothing that can be withdrawn stays behind with whoever read it.
        Response.Headers.CacheControl = "no-store, private";
        var disposition = new ContentDispositionHeaderValue(kind is StoredKind.Png or StoredKind.Jpeg ? "inline" : "attachment");
        // What the device called it may name whoever is in it.
        disposition.SetHttpFileName($"sample-{piece.Date:yyyy-MM-dd}{Path.GetExtension(piece.Name)}");
        Response.Headers.ContentDisposition = disposition.ToString();
        return new FileStreamResult(file.Open(), PieceWords.ContentType(piece.Kind, kind));
    }
}
