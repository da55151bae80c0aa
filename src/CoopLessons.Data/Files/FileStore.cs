namespace CoopLessons.Data.Files;

/// <summary>
/// Where the families' files lie: each family's apart from the others', each file under the SHA-256 of its content and under
/// no name that anybody gave. The same file twice lies there once.
/// </summary>
/// <remarks>
/// A row in the database is written after its file and removed before it, so that a crash leaves at most a file that no
/// row names, and <see cref="SweepAsync"/> takes that away.
/// </remarks>
public abstract class FileStore : IDisposable
{
    /// <summary>Puts a file there, whole or not at all.</summary>
    /// <returns>The hash by which it is found again: 64 small hexadecimal digits.</returns>
    public abstract Task<string> PutAsync(Guid familyId, Stream content, CancellationToken ct);

    public abstract Task<bool> HasAsync(Guid familyId, string hash, CancellationToken ct);

    /// <summary>A file to be read from this machine's disk for as long as the answer is held; null where it is not there.</summary>
    public abstract Task<FileAtHand?> AtHandAsync(Guid familyId, string hash, CancellationToken ct);

    /// <summary>Takes a file away; one that is not there is gone already.</summary>
    public abstract Task RemoveAsync(Guid familyId, string hash, CancellationToken ct);

    /// <summary>Takes away what nothing names: files of no row, and what never arrived whole.</summary>
    /// <param name="kept">Hashes that the database names.</param>
    /// <param name="untouchedSince">Younger files stay, since their row may be about to be written. UTC.</param>
    public abstract Task SweepAsync(Guid familyId, IReadOnlySet<string> kept, DateTime untouchedSince, CancellationToken ct);

    /// <summary>Takes away everything of a family that is not, or was not founded after all.</summary>
    public abstract Task ForgetAsync(Guid familyId, CancellationToken ct);

    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing) { }

    /// <exception cref="ArgumentException">That is no hash.</exception>
    protected static string Checked(string hash) => hash.Length == 64 && hash.All(char.IsAsciiHexDigitLower)
        ? hash
        : throw new ArgumentException("A file lies under 64 small hexadecimal digits.", nameof(hash));
}

/// <summary>A file on this machine's disk. A copy that was made for the asking goes when this is disposed of.</summary>
public sealed class FileAtHand(string path, FileStream? copy = null) : IDisposable
{
    public string Path => path;

    /// <summary>The file opened to be read from its beginning; closing it closes this, too.</summary>
    public FileStream Open()
    {
        if (copy is null)
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, 81_920, FileOptions.Asynchronous);
        copy.Position = 0;
        return copy;
    }

    public void Dispose() => copy?.Dispose();
}
