using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Files;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Evidence;

/// <summary>Looks at what somebody brings as evidence, and takes it onto the family's shelf.</summary>
public sealed class BroughtPieces(AppDb db, FileShelf shelf, FileRoom room, FileLook look)
{
    /// <summary>Most files of one form.</summary>
    public const int MostOfForm = 12;

    /// <summary>Most bytes of one form: some short of what the framework lets through.</summary>
    public const long MostBytesOfForm = 120_000_000;

    // As many as a form brings, and another sending of the same one.
    private const int MostWaiting = 4;

    /// <summary>Looks at a file. Nothing is kept yet.</summary>
    /// <param name="came">As it came; belongs to the answer, and is closed where there is none.</param>
    public async Task<(LookedPiece? Piece, PieceFault? Fault)> LookAsync(Stream came, string? name, CancellationToken ct)
    {
        var (kept, small) = (shelf.Scratch(), shelf.Scratch());
        EvidenceVerdict? verdict = null;
        var fault = new PieceFault(UploadWords.RoomFull, StatusCodes.Status503ServiceUnavailable);
        try
        {
            // What is too large is told before anything waits for it.
            if (came.Length > EvidenceFile.MostBytes)
                verdict = new EvidenceVerdict(FileFault.TooLarge, default);
            else if (await room.EnterAsync(db.Current.FamilyId!.Value, ct, MostWaiting) is { } turn)
            {
                using (turn)
                    verdict = await look.AsEvidenceAsync(came, kept, small, ct);
                fault = new PieceFault(UploadWords.NoLook, StatusCodes.Status503ServiceUnavailable);
            }
        }
        finally
        {
            if (verdict is not { Fault: null })
            {
                await kept.DisposeAsync();
                await small.DisposeAsync();
                await came.DisposeAsync();
            }
        }

        if (verdict is null)
            return (null, fault);
        if (verdict.Fault is { } wrong)
            return (null, new PieceFault(PieceWords.Of(verdict), PieceWords.Status(wrong)));
        var ending = PieceWords.Ending(verdict);
        return (new LookedPiece(verdict, UploadWords.FileName(name, ending, Piece.LongestName), kept, small, came, RemarkOn(name, verdict, ending)), null);
    }

    /// <summary>Keeps a file that was looked at as a piece. One of the same id is there once, however often it is sent.</summary>
    /// <param name="keepOriginal">Whether it is kept as it came, too, where that differs.</param>
    /// <param name="now">UTC.</param>
    public async Task TakeAsync(Guid id, LookedPiece looked, int? takenAt, PieceFacts facts, bool keepOriginal, Author by, DateTime now, CancellationToken ct)
    {
        using var turn = await shelf.TurnAsync(ct);
        if (await db.Pieces.AnyAsync(p => p.Id == id, ct))
            return;
        var verdict = looked.Verdict;
        var shown = await PutAsync(looked.Kept, PieceWords.Kept(verdict.Form), verdict.Pages, by, now, ct);
        var small = looked.Small.Length > 0 ? await PutAsync(looked.Small, StoredKind.Jpeg, 1, by, now, ct) : null;
        var original = keepOriginal && verdict.Changed ? await PutAsync(looked.Came, StoredKind.AsItCame, verdict.Pages, by, now, ct) : null;
        db.Pieces.Add(new Piece(id, PieceWords.KindOf(verdict), new PieceFiles(looked.Name, shown, small, original), takenAt, facts, by, now));
        await db.SaveChangesAsync(ct);
        // Nobody needs to remove anything for what was removed long ago to go.
        var forgotten = now - Piece.WayBack;
        if (await db.Pieces.AnyAsync(p => p.RemovedAt < forgotten, ct))
            await shelf.TidyAsync(db, now, ct);
    }

    private async Task<StoredFile> PutAsync(Stream content, StoredKind kind, int pages, Author by, DateTime now, CancellationToken ct)
    {
        content.Position = 0;
        var hash = await shelf.PutAsync(db.Current.FamilyId!.Value, content, ct);
        var stored = db.StoredFiles.Local.FirstOrDefault(f => f.Hash == hash) ?? await db.StoredFiles.SingleOrDefaultAsync(f => f.Hash == hash, ct);
        if (stored is null)
            db.StoredFiles.Add(stored = new StoredFile(hash, kind, content.Length, Math.Max(1, pages), by.Name, now));
        return stored;
    }

    /// <summary>A file that is something else than its name says is taken for what it is, and that is said.</summary>
    private static string? RemarkOn(string? name, EvidenceVerdict verdict, string ending)
    {
        var told = Path.GetExtension(name ?? "").ToLowerInvariant();
        return verdict.Form == EvidenceForm.Pdf && told.Length > 0 && told != ending ? $"“{name}” is a PDF, and is kept as one." : null;
    }
}
