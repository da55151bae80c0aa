using CoopLessons.Data;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Files;

namespace CoopLessons.Web.Evidence;

/// <summary>Looks at the photo of a receipt that somebody brings. Nothing is kept by it.</summary>
public sealed class BroughtReceipt(AppDb db, FileRoom room, FileLook look)
{
    private const int MostWaiting = 2;

    /// <summary>The picture as it is to be kept; else why not.</summary>
    public async Task<(byte[]? Jpeg, PieceFault? Fault)> LookAsync(IFormFile brought, CancellationToken ct)
    {
        if (brought.Length > ReceiptFile.MostBytes)
            return (null, new PieceFault(TooLarge, StatusCodes.Status413PayloadTooLarge));
        using var turn = await room.EnterAsync(db.Current.FamilyId!.Value, ct, MostWaiting);
        if (turn is null)
            return (null, new PieceFault(UploadWords.RoomFull, StatusCodes.Status503ServiceUnavailable));
        await using var came = brought.OpenReadStream();
        using var kept = new MemoryStream();
        return await look.AsReceiptAsync(came, kept, ct) switch
        {
            null => (null, new PieceFault(UploadWords.NoLook, StatusCodes.Status503ServiceUnavailable)),
            { Fault: null } => (kept.ToArray(), null),
            { Fault: FileFault.TooLarge } => (null, new PieceFault(TooLarge, StatusCodes.Status413PayloadTooLarge)),
            { Fault: FileFault.NotKnown } => (null, new PieceFault("This is no photo that is known here. JPEG, PNG and WebP pictures are taken.", StatusCodes.Status415UnsupportedMediaType)),
            var wrong => (null, new PieceFault(PieceWords.Of(wrong), PieceWords.Status(wrong.Fault.Value))),
        };
    }

    /// <summary>Said of a photo, or a form with it, that is too large.</summary>
    public static string TooLarge => $"This photo is larger than {ReceiptFile.MostBytes / UploadWords.Megabyte} megabytes. Take it at a lower quality, and bring that.";
}
