using System.Security.Cryptography;

namespace CoopLessons.Data.Files;

/// <summary>
/// The files that families brought, in the data folder and outside everything that is served: a folder a family, each file
/// under the SHA-256 of its content and under no name that anybody gave. The same file twice lies there once.
/// </summary>
/// <remarks>
/// A row in the database is written after its file and removed before it, so that a crash leaves at most a file that no
/// row names, and <see cref="Sweep"/> takes that away.
/// </remarks>
public sealed class FileShelf : IDisposable
{
    private const string Arriving = ".arriving";
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly string _folder;
    private readonly string _making;

    /// <param name="folder">In a data folder that one process holds: what work lies there unfinished was left by one that ended, and goes.</param>
    public FileShelf(string folder)
    {
        (_folder, _making) = (folder, Path.Combine(folder, "making"));
        if (Directory.Exists(_making))
            Directory.Delete(_making, recursive: true);
    }

    /// <summary>
    /// One at a time, so that a file is not taken away while somebody brings the same one anew. Disposing of the answer
    /// gives the turn on.
    /// </summary>
    public async Task<IDisposable> TurnAsync(CancellationToken ct)
    {
        await _turn.WaitAsync(ct);
        return new Turn(_turn);
    }

    /// <summary>Puts a file on the shelf, whole or not at all.</summary>
    /// <returns>The hash by which it is found again: 64 small hexadecimal digits.</returns>
    public async Task<string> PutAsync(Guid familyId, Stream content, CancellationToken ct)
    {
        var arriving = Path.Combine(FolderOf(familyId), Guid.NewGuid().ToString("N") + Arriving);
        try
        {
            string hash;
            using (var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256))
            await using (var file = new FileStream(arriving, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                var buffer = new byte[81_920];
                int read;
                while ((read = await content.ReadAsync(buffer, ct)) > 0)
                {
                    digest.AppendData(buffer, 0, read);
                    await file.WriteAsync(buffer.AsMemory(0, read), ct);
                }

                file.Flush(flushToDisk: true);
                hash = Convert.ToHexStringLower(digest.GetHashAndReset());
            }

            File.Move(arriving, PathOf(familyId, hash), overwrite: true);
            return hash;
        }
        finally
        {
            File.Delete(arriving);
        }
    }

    public bool Has(Guid familyId, string hash) => File.Exists(PathOf(familyId, hash));

    /// <exception cref="ArgumentException">That is no hash.</exception>
    public string PathOf(Guid familyId, string hash)
    {
        if (hash.Length != 64 || !hash.All(char.IsAsciiHexDigitLower))
            throw new ArgumentException("A file lies under 64 small hexadecimal digits.", nameof(hash));
        return Path.Combine(FolderOf(familyId), hash);
    }

    /// <summary>Takes away what nothing names: files of no row, and what never arrived whole.</summary>
    /// <param name="kept">Hashes that the database names.</param>
    /// <param name="untouchedSince">Younger files stay, since their row may be about to be written. UTC.</param>
    public void Sweep(Guid familyId, IReadOnlySet<string> kept, DateTime untouchedSince)
    {
        foreach (var path in Directory.EnumerateFiles(FolderOf(familyId)))
        {
            if (!kept.Contains(Path.GetFileName(path)) && File.GetLastWriteTimeUtc(path) < untouchedSince)
                File.Delete(path);
        }
    }

    /// <summary>Takes away everything of a family that is not, or was not founded after all.</summary>
    public void Forget(Guid familyId) => Directory.Delete(FolderOf(familyId), recursive: true);

    /// <summary>A file of no name for the time of some work; it is gone when it is closed.</summary>
    public FileStream Scratch()
    {
        var making = Directory.CreateDirectory(_making).FullName;
        return new FileStream(
            Path.Combine(making, Guid.NewGuid().ToString("N")), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 81_920, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
    }

    public void Dispose() => _turn.Dispose();

    private string FolderOf(Guid familyId) => Directory.CreateDirectory(Path.Combine(_folder, familyId.ToString("N"))).FullName;

    private sealed class Turn(SemaphoreSlim turn) : IDisposable
    {
        public void Dispose() => turn.Release();
    }
}
