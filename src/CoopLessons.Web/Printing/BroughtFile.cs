using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Documents.Uploads;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Printing;

/// <summary>What came of a file that somebody brought for a printable.</summary>
/// <param name="Fault">A sentence to stand beside the field; null where it was taken.</param>
/// <param name="Fits">False where chosen pages are not in the new file, and all are chosen now.</param>
public sealed record BroughtAnswer(string? Fault, int Status, bool Fits = true);

/// <summary>Takes a file that somebody brought onto the family's shelf and prints a printable from it.</summary>
public sealed class BroughtFile(AppDb db, FileShelf shelf, PrintRoom room)
{
    /// <summary>Looks at the file and, where it can be printed from, saves it: all of it or nothing.</summary>
    /// <param name="sourceId">Whose file it replaces; null for a printable that has none yet.</param>
    /// <param name="now">UTC.</param>
    public async Task<BroughtAnswer> TakeAsync(Guid activityId, string printable, Guid? sourceId, IFormFile file, Author by, DateTime now, CancellationToken ct)
    {
        using var turn = await room.EnterAsync(db.Current.FamilyId!.Value, ct);
        if (turn is null)
            return new BroughtAnswer(UploadWords.RoomFull, StatusCodes.Status503ServiceUnavailable);
        await using var kept = shelf.Scratch();
        FileVerdict verdict;
        await using (var brought = file.OpenReadStream())
            verdict = await FileLook.OfAsync(brought, kept, ct);
        if (verdict.Fault is { } fault)
            return new BroughtAnswer(UploadWords.Of(verdict), fault == FileFault.TooLarge ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status422UnprocessableEntity);

        kept.Position = 0;
        using var mine = await shelf.TurnAsync(ct);
        var hash = await shelf.PutAsync(db.Current.FamilyId!.Value, kept, ct);
        var stored = await db.StoredFiles.SingleOrDefaultAsync(f => f.Hash == hash, ct);
        if (stored is null)
            db.StoredFiles.Add(stored = new StoredFile(hash, UploadWords.Kept(verdict.Kind), kept.Length, verdict.Pages, by.Name, now));
        var name = UploadWords.FileName(file.FileName, verdict.Kind);
        // A second sending of the same form finds the printable, and brings the same file once more.
        var source = await db.PrintSources.SingleOrDefaultAsync(s => s.ActivityId == activityId && (sourceId != null ? s.Id == sourceId : s.Printable == printable), ct);
        var fits = true;
        if (source is null)
            db.PrintSources.Add(new PrintSource(Guid.CreateVersion7(), activityId, printable, stored, name));
        else
            fits = source.Exchange(stored, name);
        try
        {
            await db.SaveChangesAsync(ct);
        }
        catch (DbUpdateException)
        {
            db.ChangeTracker.Clear();
            return new BroughtAnswer("Something else was saved at the same moment. Bring the file once more.", StatusCodes.Status409Conflict);
        }

        await shelf.TidyAsync(db, now, ct);
        return new BroughtAnswer(null, StatusCodes.Status200OK, fits);
    }
}
