using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Files;

/// <summary>
/// The files that families brought. Where they lie is the <see cref="FileStore"/>'s: a folder, or a bucket where the host
/// says so. What is still being worked on lies on this machine's disk in either case.
/// </summary>
public sealed class FileShelf : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly FileStore _store;
    private readonly string _making;

    /// <param name="folder">In a data folder that one process holds: what work lies there unfinished was left by one that ended, and goes.</param>
    /// <param name="bucket">Where the files lie instead of in the folder.</param>
    /// <param name="beside">For a program that works beside the one that holds the data folder: it leaves that one's work alone.</param>
    public FileShelf(string folder, BucketAddress? bucket = null, bool beside = false)
    {
        _making = Path.Combine(folder, "making");
        if (!beside && Directory.Exists(_making))
            Directory.Delete(_making, recursive: true);
        _store = bucket is null ? new FolderStore(folder) : new BucketStore(bucket, Scratch);
        Arriving = new ArrivingFiles(Path.Combine(folder, "arriving"));
    }

    /// <summary>Files that are sent in parts and not whole yet.</summary>
    public ArrivingFiles Arriving { get; }

    /// <summary>
    /// One at a time, so that a file is not taken away while somebody brings the same one anew. Disposing of the answer
    /// gives the turn on.
    /// </summary>
    public async Task<IDisposable> TurnAsync(CancellationToken ct)
    {
        await _turn.WaitAsync(ct);
        return new Turn(_turn);
    }

    /// <inheritdoc cref="FileStore.PutAsync" />
    public Task<string> PutAsync(Guid familyId, Stream content, CancellationToken ct) => _store.PutAsync(familyId, content, ct);

    /// <inheritdoc cref="FileStore.HasAsync" />
    public Task<bool> HasAsync(Guid familyId, string hash, CancellationToken ct) => _store.HasAsync(familyId, hash, ct);

    /// <summary>Those of the hashes whose files are there.</summary>
    public async Task<IReadOnlySet<string>> HeldAsync(Guid familyId, IEnumerable<string> hashes, CancellationToken ct)
    {
        var held = new HashSet<string>(StringComparer.Ordinal);
        foreach (var hash in hashes.Distinct(StringComparer.Ordinal))
        {
            if (await _store.HasAsync(familyId, hash, ct))
                held.Add(hash);
        }

        return held;
    }

    /// <summary>Those of the files printed from that are there.</summary>
    public async Task<IReadOnlySet<string>> HeldForPrintAsync(AppDb db, CancellationToken ct) =>
        await HeldAsync(db.Current.FamilyId!.Value, await db.PrintSources.Select(s => s.Hash).Distinct().ToListAsync(ct), ct);

    /// <inheritdoc cref="FileStore.AtHandAsync" />
    public Task<FileAtHand?> AtHandAsync(Guid familyId, string hash, CancellationToken ct) => _store.AtHandAsync(familyId, hash, ct);

    /// <inheritdoc cref="FileStore.RemoveAsync" />
    public Task RemoveAsync(Guid familyId, string hash, CancellationToken ct) => _store.RemoveAsync(familyId, hash, ct);

    /// <inheritdoc cref="FileStore.SweepAsync" />
    public Task SweepAsync(Guid familyId, IReadOnlySet<string> kept, DateTime untouchedSince, CancellationToken ct) =>
        _store.SweepAsync(familyId, kept, untouchedSince, ct);

    /// <inheritdoc cref="FileStore.ForgetAsync" />
    public Task ForgetAsync(Guid familyId, CancellationToken ct) => _store.ForgetAsync(familyId, ct);

    /// <summary>A file of no name for the time of some work; it is gone when it is closed.</summary>
    public FileStream Scratch()
    {
        var making = Directory.CreateDirectory(_making).FullName;
        return new FileStream(
            Path.Combine(making, Guid.NewGuid().ToString("N")), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Read | FileShare.Delete, 81_920, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
    }

    public void Dispose()
    {
        _store.Dispose();
        _turn.Dispose();
    }

    private sealed class Turn(SemaphoreSlim turn) : IDisposable
    {
        public void Dispose() => turn.Release();
    }
}
