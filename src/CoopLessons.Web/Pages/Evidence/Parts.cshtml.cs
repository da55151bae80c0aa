using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Phone;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>
/// Takes a file in parts, so that a break of the network costs one part. What is held lies apart by family and person until
/// it is whole and taken; nothing looks at it before that.
/// </summary>
[RequestSizeLimit(2 * ArrivingFiles.MostOfPart)]
public sealed class PartsModel(AppDb db, TimeProvider clock, FileShelf shelf) : FamilyPage(db, clock)
{
    /// <summary>How much of an item is held. One that was taken already needs no more parts.</summary>
    public async Task<IActionResult> OnGetAsync(Guid id) =>
        new OwnWord(new { item = id, held = shelf.Arriving.Held(Family.Id, Person, id), taken = await IsTakenAsync(id) });

    /// <param name="at">Where in the file the part begins.</param>
    /// <param name="of">Length of the whole file.</param>
    public async Task<IActionResult> OnPostAsync(Guid id, long? at, long? of)
    {
        if (!ModelState.IsValid || at is not { } from || of is not { } total || from < 0 || total < 1 || id == Guid.Empty)
            return Answer(id, 0, StatusCodes.Status400BadRequest);
        if (total > EvidenceFile.MostBytes)
            return Refused(id, PieceWords.Of(new EvidenceVerdict(FileFault.TooLarge, default)));
        if (await IsTakenAsync(id))
            return Answer(id, total);
        if (await PartAsync() is not { } part)
            return Refused(id, "One part of this file is larger than the server takes.");
        if (from == 0)
            shelf.Arriving.Sweep(Now);
        var (answer, held) = shelf.Arriving.Add(Family.Id, Person, id, from, total, part.Span);
        return answer == PartAnswer.NoRoom
            ? Refused(id, "Too much of your family’s is on its way and not finished. Let the other files arrive first.")
            : Answer(id, held, answer == PartAnswer.Kept ? StatusCodes.Status200OK : StatusCodes.Status409Conflict);
    }

    private Guid Person => Db.Current.PersonId!.Value;

    private Task<bool> IsTakenAsync(Guid id) => Db.Pieces.AnyAsync(p => p.Id == id, Ct);

    private static OwnWord Answer(Guid id, long held, int status = StatusCodes.Status200OK) => new(new { item = id, held }) { StatusCode = status };

    private OwnWord Refused(Guid id, string says) =>
        new(new { item = id, held = shelf.Arriving.Held(Family.Id, Person, id), faults = new[] { new KeptFault("", says) } }) { StatusCode = StatusCodes.Status413PayloadTooLarge };

    /// <summary>The part, read whole before anything of it is written; null where it is too large.</summary>
    private async Task<ReadOnlyMemory<byte>?> PartAsync()
    {
        if (Request.ContentLength > ArrivingFiles.MostOfPart)
            return null;
        var part = new byte[ArrivingFiles.MostOfPart + 1];
        var length = await Request.Body.ReadAtLeastAsync(part, part.Length, throwOnEndOfStream: false, Ct);
        return length > ArrivingFiles.MostOfPart ? null : part.AsMemory(0, length);
    }
}
