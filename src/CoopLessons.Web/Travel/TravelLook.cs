using CoopLessons.Data.Files;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Files;

namespace CoopLessons.Web.Travel;

/// <summary>
/// Looks at the files of a brought family as if each had been brought by itself, and keeps them as they are, under the hashes by
/// which the rows name them. Originals that nothing here shows are not opened.
/// </summary>
public sealed class TravelLook(FileLook look)
{
    /// <summary>Null where the file is what its row says; else a sentence.</summary>
    public async Task<string?> OfAsync(StoredKind kind, Stream file, CancellationToken ct)
    {
        if (kind == StoredKind.AsItCame)
            return null;
        var verdict = await look.AsEvidenceAsync(file, Stream.Null, Stream.Null, ct);
        if (verdict is null)
            throw new Data.Travel.FamilyUnfitException(UploadWords.NoLook);
        if (verdict.Fault is not null)
            return PieceWords.Of(verdict);
        return PieceWords.Kept(verdict.Form) == kind ? null : "This is something else than its row says.";
    }
}
