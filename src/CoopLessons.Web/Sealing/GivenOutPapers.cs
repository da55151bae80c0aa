using System.Security.Cryptography;
using CoopLessons.Core.Sealing;
using CoopLessons.Data;
using CoopLessons.Data.Sealing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Sealing;

/// <summary>Writes down which files of sealed years were given out, so that they are known again.</summary>
public static class GivenOutPapers
{
    /// <summary>The same file once more changes nothing.</summary>
    /// <param name="kind">What paper it is, in small letters, such as <c>hours</c>.</param>
    /// <param name="seal">As it stands on the paper; null for a paper of an open year, of which nothing is written down.</param>
    public static Task GiveOutAsync(this AppDb db, Guid schoolYearId, Guid learnerId, string kind, SealMark? seal, byte[] file, DateOnly today, CancellationToken ct) =>
        seal is null ? Task.CompletedTask : db.GiveOutAsync(schoolYearId, learnerId, kind, seal, Fingerprint.Of(file), today, ct);

    /// <inheritdoc cref="GiveOutAsync(AppDb, Guid, Guid, string, SealMark?, byte[], DateOnly, CancellationToken)"/>
    /// <param name="file">Read from its beginning, and left there.</param>
    public static async Task GiveOutAsync(this AppDb db, Guid schoolYearId, Guid learnerId, string kind, SealMark? seal, Stream file, DateOnly today, CancellationToken ct)
    {
        if (seal is null)
            return;
        file.Position = 0;
        var mark = Fingerprint.Kept(Convert.ToHexStringLower(await SHA256.HashDataAsync(file, ct)));
        file.Position = 0;
        await db.GiveOutAsync(schoolYearId, learnerId, kind, seal, mark, today, ct);
    }

    private static async Task GiveOutAsync(this AppDb db, Guid schoolYearId, Guid learnerId, string kind, SealMark seal, Fingerprint mark, DateOnly today, CancellationToken ct)
    {
        if (await db.PapersMade.AnyAsync(p => p.SchoolYearId == schoolYearId && p.LearnerId == learnerId && p.FileMark == mark.Hex, ct))
            return;
        db.PapersMade.Add(new PaperMade(schoolYearId, learnerId, kind, seal.Fingerprint, mark, today));
        db.KnownMarks.Add(new KnownMark(mark, MarkKind.File, schoolYearId, learnerId, 0, today));
        try
        {
            await db.SaveChangesAsync(ct);
        }
        catch (DbUpdateException)
        {
            // It was asked for twice in the same moment; the other wrote it down.
            db.ChangeTracker.Clear();
        }
    }
}
