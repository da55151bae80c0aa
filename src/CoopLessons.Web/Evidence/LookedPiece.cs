using CoopLessons.Documents.Uploads;

namespace CoopLessons.Web.Evidence;

/// <summary>Why a file did not become a piece: a sentence to stand beside the field, and the answer's status.</summary>
public sealed record PieceFault(string Sentence, int Status);

/// <summary>A file that was looked at and may become a piece. What was made of it is gone when this is disposed of.</summary>
/// <param name="Name">With the ending of what it is.</param>
/// <param name="Kept">What is to be kept.</param>
/// <param name="Small">A small picture; empty where there is none.</param>
/// <param name="Came">As it came.</param>
/// <param name="Remark">What whoever brought it should know, such as that it is something else than its name says; null for nothing.</param>
public sealed record LookedPiece(EvidenceVerdict Verdict, string Name, Stream Kept, Stream Small, Stream Came, string? Remark) : IAsyncDisposable
{
    public async ValueTask DisposeAsync()
    {
        await Kept.DisposeAsync();
        await Small.DisposeAsync();
        await Came.DisposeAsync();
    }
}
