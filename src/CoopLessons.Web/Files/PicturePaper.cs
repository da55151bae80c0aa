using CoopLessons.Data.Files;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Portfolios;

namespace CoopLessons.Web.Files;

/// <summary>Makes a paper from files on the shelf: on disk, one at a time in this program.</summary>
public sealed class PicturePaper(FileShelf shelf, FileRoom room, TimeProvider clock)
{
    /// <summary>No paper that may be made takes as long, unless a file in it holds its reader up.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    /// <summary>A paper that shows pictures and pages of the family’s files.</summary>
    /// <inheritdoc cref="MakeAsync(Guid, IEnumerable{string}, Action{IReadOnlyDictionary{string, string}, Stream, Stream, CancellationToken}, CancellationToken)"/>
    public Task<FileStream?> MakeAsync(Guid family, IEnumerable<StoredFile> files, Action<PaperFiles, CancellationToken> write, CancellationToken ct)
    {
        var kinds = files.DistinctBy(f => f.Hash, StringComparer.Ordinal).ToDictionary(f => f.Hash, f => UploadWords.Taken(f.Kind), StringComparer.Ordinal);
        // One that went from the shelf meanwhile is found missing where it is to be drawn.
        return MakeAsync(
            family, kinds.Keys,
            (paths, to, aside, ending) => write(new PaperFiles(to, aside, kinds.ToDictionary(k => k.Key, k => new PageSource(paths.GetValueOrDefault(k.Key, k.Key), k.Value), StringComparer.Ordinal)), ending), ct);
    }

    /// <param name="hashes">Of the files that the paper takes pages or pictures from.</param>
    /// <param name="write">Told where each file lies by its hash, where to write, and a file to lay streams aside in.</param>
    /// <returns>The paper from its beginning, gone when it is closed; null where the room is full.</returns>
    /// <exception cref="SourceUnreadableException">A file is not what it was when it was checked.</exception>
    /// <exception cref="OperationCanceledException">It took too long, or nobody waits for it any more.</exception>
    public async Task<FileStream?> MakeAsync(Guid family, IEnumerable<string> hashes, Action<IReadOnlyDictionary<string, string>, Stream, Stream, CancellationToken> write, CancellationToken ct)
    {
        using var turn = await room.EnterAsync(family, ct);
        if (turn is null)
            return null;
        using var limit = new CancellationTokenSource(Patience, clock);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(ct, limit.Token);
        var file = shelf.Scratch();
        var sources = new Dictionary<string, FileAtHand>(StringComparer.Ordinal);
        try
        {
            foreach (var hash in hashes)
            {
                if (await shelf.AtHandAsync(family, hash, both.Token) is { } source)
                    sources[hash] = source;
            }

            var paths = sources.ToDictionary(s => s.Key, s => s.Value.Path, StringComparer.Ordinal);
            await using (var aside = shelf.Scratch())
                await Task.Run(() => write(paths, file, aside, both.Token), both.Token);
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }
        finally
        {
            foreach (var source in sources.Values)
                source.Dispose();
        }

        file.Position = 0;
        return file;
    }
}
