using CoopLessons.Data;
using CoopLessons.Web.Files;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Evidence;

/// <summary>The files of one form, looked at before any of them is kept: all of them or none.</summary>
/// <param name="form">The form's minted id, from which those of its pieces follow.</param>
public sealed class LookedForm(AppDb db, BroughtPieces brought, Guid form) : IAsyncDisposable
{
    private readonly List<(Guid Id, LookedPiece Piece)> _pieces = [];

    /// <summary>Those that are not kept yet.</summary>
    public IReadOnlyList<(Guid Id, LookedPiece Piece)> Pieces => _pieces;

    /// <summary>Looks at each file that was not kept by an earlier sending of the form.</summary>
    /// <param name="state">Gets a sentence for each file that is refused, under <c>Files</c>.</param>
    /// <returns>The status of the answer where something is refused; null where all may be kept.</returns>
    public async Task<int?> LookAsync(IReadOnlyList<IFormFile> files, ModelStateDictionary state, CancellationToken ct)
    {
        int? status = null;
        for (var i = 0; i < files.Count; i++)
        {
            var id = PieceIds.Of(form, i);
            if (await db.Pieces.AnyAsync(p => p.Id == id, ct))
                continue;
            var (piece, fault) = await brought.LookAsync(files[i].OpenReadStream(), files[i].FileName, ct);
            if (piece is not null)
                _pieces.Add((id, piece));
            if (fault is null)
                continue;
            status ??= fault.Status;
            state.AddModelError("Files", files.Count == 1 ? fault.Sentence : $"“{UploadWords.FileName(files[i].FileName, Path.GetExtension(files[i].FileName), 60)}”: {fault.Sentence}");
        }

        if (status is not null && files.Count > 1)
            state.AddModelError("Files", "None of these files was kept. Choose those once more that can be.");
        return status;
    }

    /// <summary>What is said once they are kept.</summary>
    public string Said()
    {
        if (_pieces.Count == 0)
            return "That was kept before; nothing was added.";
        var remarks = _pieces.Select(p => p.Piece.Remark).OfType<string>();
        return string.Join(' ', remarks.Prepend($"{PieceWords.Count([.. _pieces.Select(p => PieceWords.KindOf(p.Piece.Verdict))])} kept."));
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var (_, piece) in _pieces)
            await piece.DisposeAsync();
    }
}
