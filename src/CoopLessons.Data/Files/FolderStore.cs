using System.Security.Cryptography;

namespace CoopLessons.Data.Files;

/// <summary>Files in a folder of this machine, outside everything that is served: a folder a family.</summary>
public sealed class FolderStore(string folder) : FileStore
{
    private const string Arriving = ".arriving";

    public override async Task<string> PutAsync(Guid familyId, Stream content, CancellationToken ct)
    {
        var arriving = Path.Combine(FolderOf(familyId), Guid.NewGuid().ToString("N") + Arriving);
        try
        {
            string hash;
            await using (var file = new FileStream(arriving, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                hash = await HashAsync(content, file, ct);
                file.Flush(flushToDisk: true);
            }

            File.Move(arriving, PathOf(familyId, hash), overwrite: true);
            return hash;
        }
        finally
        {
            File.Delete(arriving);
        }
    }

    public override Task<bool> HasAsync(Guid familyId, string hash, CancellationToken ct) => Task.FromResult(File.Exists(PathOf(familyId, hash)));

    public override Task<FileAtHand?> AtHandAsync(Guid familyId, string hash, CancellationToken ct)
    {
        var path = PathOf(familyId, hash);
        return Task.FromResult(File.Exists(path) ? new FileAtHand(path) : null);
    }

    public override Task RemoveAsync(Guid familyId, string hash, CancellationToken ct)
    {
        File.Delete(PathOf(familyId, hash));
        return Task.CompletedTask;
    }

    public override Task SweepAsync(Guid familyId, IReadOnlySet<string> kept, DateTime untouchedSince, CancellationToken ct)
    {
        foreach (var path in Directory.EnumerateFiles(FolderOf(familyId)))
        {
            if (!kept.Contains(Path.GetFileName(path)) && File.GetLastWriteTimeUtc(path) < untouchedSince)
                File.Delete(path);
        }

        return Task.CompletedTask;
    }

    public override Task ForgetAsync(Guid familyId, CancellationToken ct)
    {
        Directory.Delete(FolderOf(familyId), recursive: true);
        return Task.CompletedTask;
    }

    /// <exception cref="ArgumentException">That is no hash.</exception>
    public string PathOf(Guid familyId, string hash) => Path.Combine(FolderOf(familyId), Checked(hash));

    /// <summary>Copies a stream and gives the SHA-256 of what went through.</summary>
    internal static async Task<string> HashAsync(Stream content, Stream copy, CancellationToken ct)
    {
        using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[81_920];
        int read;
        while ((read = await content.ReadAsync(buffer, ct)) > 0)
        {
            digest.AppendData(buffer, 0, read);
            await copy.WriteAsync(buffer.AsMemory(0, read), ct);
        }

        return Convert.ToHexStringLower(digest.GetHashAndReset());
    }

    private string FolderOf(Guid familyId) => Directory.CreateDirectory(Path.Combine(folder, familyId.ToString("N"))).FullName;
}
