using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Files;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Printing;

/// <summary>What came of a file that somebody brought for a printable.</summary>
/// <param name="Fault">A sentence to stand beside the field; null where it was taken.</param>
/// <param name="Fits">False where chosen pages are not in the new file, and all are chosen now.</param>
/// <param name="OfTitle">Whether the fault is the title's rather than the file's.</param>
public sealed record BroughtAnswer(string? Fault, int Status, bool Fits = true, bool OfTitle = false);

/// <summary>Takes a file that somebody brought onto the family's shelf and prints a printable from it.</summary>
public sealed class BroughtFile(AppDb db, FileShelf shelf, FileRoom room, FileLook look)
{
    /// <summary>Looks at the file and, where it can be printed from, saves it: all of it or nothing.</summary>
    /// <param name="sourceId">Whose file it replaces; null for a printable that has none yet.</param>
    /// <param name="version">Of the source that was shown; told with its id.</param>
    /// <param name="now">UTC.</param>
    public async Task<BroughtAnswer> TakeAsync(Guid activityId, string printable, Guid? sourceId, int? version, IFormFile file, Author by, DateTime now, CancellationToken ct)
    {
        var before = sourceId is null && await db.PrintSources.AnyAsync(s => s.ActivityId == activityId && s.Printable == printable, ct);
        using var turn = await room.EnterAsync(db.Current.FamilyId!.Value, ct);
        if (turn is null)
            return new BroughtAnswer(UploadWords.RoomFull, StatusCodes.Status503ServiceUnavailable);
        await using var kept = shelf.Scratch();
        FileVerdict? verdict;
        await using (var brought = file.OpenReadStream())
            verdict = await look.OfAsync(brought, kept, ct);
        if (verdict is null)
            return new BroughtAnswer(UploadWords.NoLook, StatusCodes.Status503ServiceUnavailable);
        if (verdict.Fault is { } fault)
            return new BroughtAnswer(UploadWords.Of(verdict), fault == FileFault.TooLarge ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status422UnprocessableEntity);

        kept.Position = 0;
        using var mine = await shelf.TurnAsync(ct);
        var hash = await shelf.PutAsync(db.Current.FamilyId!.Value, kept, ct);
        var source = await db.PrintSources.SingleOrDefaultAsync(s => s.ActivityId == activityId && (sourceId != null ? s.Id == sourceId : s.Printable == printable), ct);
        // A second sending of the same form finds the printable with the same file, and changes nothing.
        var isNew = source?.Hash != hash;
        if (isNew && sourceId is null && source is not null)
            return await RefusedAsync(hash, new BroughtAnswer(UploadWords.ThereAlready(printable), before ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status409Conflict, OfTitle: true), ct);
        if (isNew && sourceId is not null && source?.Version != version)
            return await RefusedAsync(hash, new BroughtAnswer(UploadWords.Changed, StatusCodes.Status409Conflict), ct);
        var stored = await db.StoredFiles.SingleOrDefaultAsync(f => f.Hash == hash, ct);
        if (stored is null)
            db.StoredFiles.Add(stored = new StoredFile(hash, UploadWords.Kept(verdict.Kind), kept.Length, verdict.Pages, by.Name, now));
        var name = UploadWords.FileName(file.FileName, verdict.Kind);
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
            return await RefusedAsync(hash, new BroughtAnswer(UploadWords.Changed, StatusCodes.Status409Conflict), ct);
        }

        await shelf.TidyAsync(db, now, ct);
        return new BroughtAnswer(null, StatusCodes.Status200OK, fits);
    }

    /// <summary>Takes the file from the shelf again where no row names it, and answers with the fault.</summary>
    private async Task<BroughtAnswer> RefusedAsync(string hash, BroughtAnswer fault, CancellationToken ct)
    {
        db.ChangeTracker.Clear();
        if (!await db.StoredFiles.AnyAsync(f => f.Hash == hash, ct))
            await shelf.RemoveAsync(db.Current.FamilyId!.Value, hash, ct);
        return fault;
    }
}
