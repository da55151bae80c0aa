using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace CoopLessons.Data.Travel;

/// <summary>What <c>family.json</c> says.</summary>
public sealed record BroughtManifest(
    Guid FamilyId, string FamilyName, IReadOnlyDictionary<string, int> Rows, IReadOnlySet<string> Missing, IReadOnlyDictionary<string, TravelEntry> Files);

/// <summary>A family's file that somebody brought: looked at before anything of it is believed, and read as a stream.</summary>
public sealed class BroughtZip : IAsyncDisposable
{
    private const string Broken = "This file is no family’s file, or it was damaged on its way. Make it once more, or copy it once more.";
    private const int MostOfManifest = 20_000_000;
    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = 8, AllowDuplicateProperties = false };
    private readonly ZipArchive _zip;

    private BroughtZip(ZipArchive zip, BroughtManifest manifest) => (_zip, Manifest) = (zip, manifest);

    public BroughtManifest Manifest { get; }

    /// <summary>Opens it, and holds every file in it against what it says of itself.</summary>
    /// <param name="file">Can be searched; left open.</param>
    /// <exception cref="FamilyUnfitException">It is not what it ought to be.</exception>
    public static async Task<BroughtZip> OpenAsync(Stream file, Action<TravelProgress> tell, CancellationToken ct)
    {
        if (file.Length > FamilyFile.MostUnpacked)
            throw new FamilyUnfitException($"This file is larger than {FamilyFile.MostUnpacked / 1_000_000_000} gigabytes, which is the most that is taken in.");
        try
        {
            var zip = await ZipArchive.CreateAsync(file, ZipArchiveMode.Read, leaveOpen: true, Encoding.UTF8, ct);
            try
            {
                LookAtNames(zip);
                var manifest = Read(await BytesAsync(zip, ct));
                await HoldAgainstAsync(zip, manifest, tell, ct);
                return new BroughtZip(zip, manifest);
            }
            catch
            {
                await zip.DisposeAsync();
                throw;
            }
        }
        catch (Exception fault) when (fault is InvalidDataException or JsonException or InvalidOperationException or FormatException or KeyNotFoundException or NotSupportedException or ArgumentException or EndOfStreamException or OverflowException)
        {
            throw new FamilyUnfitException(Broken, fault);
        }
    }

    /// <summary>The bytes of an entry that was held against its hash.</summary>
    public Task<Stream> ReadAsync(string path, CancellationToken ct) => _zip.GetEntry(path)!.OpenAsync(ct);

    public ValueTask DisposeAsync() => _zip.DisposeAsync();

    // Only what the directory of the ZIP says; nothing is unpacked yet.
    private static void LookAtNames(ZipArchive zip)
    {
        if (zip.Entries.Count > FamilyFile.MostEntries)
            throw new FamilyUnfitException($"There are more than {FamilyFile.MostEntries:N0} files in this one. A family’s file never holds so many.");
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        long unpacked = 0;
        foreach (var entry in zip.Entries)
        {
            if (!Belongs(entry.FullName))
                throw new FamilyUnfitException($"“{Shown(entry.FullName)}” is in this file and does not belong into a family’s file, so nothing was taken in.");
            if (!seen.Add(entry.FullName))
                throw new FamilyUnfitException($"“{Shown(entry.FullName)}” stands twice in this file, so nothing was taken in.");
            unpacked += entry.Length;
            if (unpacked > FamilyFile.MostUnpacked || entry.Length > 1_000_000 && entry.Length / FamilyFile.MostRatio > entry.CompressedLength
                || entry.FullName.StartsWith("data/", StringComparison.Ordinal) && entry.Length > FamilyFile.MostOfTable)
                throw new FamilyUnfitException($"Unpacked, “{Shown(entry.FullName)}” would be far larger than a family’s file can be, so nothing was taken in.");
        }

        if (!seen.Contains(FamilyFile.Manifest))
            throw new FamilyUnfitException(Broken);
    }

    private static bool Belongs(string path)
    {
        if (path is FamilyFile.Manifest or FamilyFile.Readme or FamilyFile.Schema)
            return true;
        return path.Split('/') is [var folder, var name] && name.Length is > 0 and < 200 && !name.Contains('\\', StringComparison.Ordinal) && !name.Contains("..", StringComparison.Ordinal) && !name.Any(char.IsControl) && folder switch
        {
            "data" => name.EndsWith(".json", StringComparison.Ordinal),
            "csv" => name.EndsWith(".csv", StringComparison.Ordinal),
            "papers" => name.EndsWith(".pdf", StringComparison.Ordinal),
            "files" => FamilyFile.IsHash(name),
            _ => false,
        };
    }

    private static string Shown(string path)
    {
        var name = new string([.. path.Select(c => char.IsControl(c) ? ' ' : c)]);
        return name.Length > 80 ? name[..80] + "…" : name;
    }

    private static BroughtManifest Read(byte[] bytes)
    {
        using var json = JsonDocument.Parse(bytes, Strict);
        var said = json.RootElement;
        if (said.GetProperty("format").GetString() != FamilyFile.FormatName)
            throw new FamilyUnfitException(Broken);
        if (said.GetProperty("version").GetInt32() is var version && version > FamilyFile.CurrentVersion)
        {
            var program = Shown(said.TryGetProperty("program", out var made) && made.ValueKind == JsonValueKind.String ? made.GetString()! : "a newer version");
            throw new FamilyUnfitException($"This file was made by a newer CoopLessons ({program}). Bring this server to that version first; nothing was taken in.");
        }

        var files = said.GetProperty("files").EnumerateArray()
            .Select(f => new TravelEntry(f.GetProperty("path").GetString()!, f.GetProperty("bytes").GetInt64(), f.GetProperty("sha256").GetString()!))
            .ToDictionary(f => f.Path, StringComparer.Ordinal);
        var id = said.GetProperty("familyId").GetGuid();
        return version < 1 || id == Guid.Empty ? throw new FamilyUnfitException(Broken) : new BroughtManifest(
            id, said.GetProperty("familyName").GetString()!, said.GetProperty("rows").EnumerateObject().ToDictionary(r => r.Name, r => r.Value.GetInt32(), StringComparer.Ordinal),
            said.GetProperty("missing").EnumerateArray().Select(h => h.GetString()!).ToHashSet(StringComparer.Ordinal), files);
    }

    private static async Task HoldAgainstAsync(ZipArchive zip, BroughtManifest manifest, Action<TravelProgress> tell, CancellationToken ct)
    {
        foreach (var listed in manifest.Files.Values)
        {
            if (zip.GetEntry(listed.Path) is null)
                throw new FamilyUnfitException($"“{Shown(listed.Path)}” is missing from this file, so nothing was taken in. Copy the file once more from where it was made.");
        }

        if (zip.Entries.FirstOrDefault(e => e.FullName != FamilyFile.Manifest && !manifest.Files.ContainsKey(e.FullName)) is { } odd)
            throw new FamilyUnfitException($"“{Shown(odd.FullName)}” is in this file and is not in its list, so nothing was taken in.");
        foreach (var (i, listed) in manifest.Files.Values.Index())
        {
            if (i % 50 == 0)
                tell(new TravelProgress("Looking whether the file is whole", 0.3 * i / manifest.Files.Count));
            var entry = zip.GetEntry(listed.Path)!;
            if (entry.Length != listed.Bytes || await HashAsync(entry, listed.Bytes, ct) != listed.Sha256
                || listed.Path.StartsWith("files/", StringComparison.Ordinal) && listed.Path != FamilyFile.FilePath(listed.Sha256))
                throw new FamilyUnfitException($"“{Shown(listed.Path)}” was changed after the file was made, so nothing was taken in. Copy the file once more from where it was made.");
        }
    }

    /// <summary>The hash of what is really in there; null where it is longer than it says.</summary>
    private static async Task<string?> HashAsync(ZipArchiveEntry entry, long bytes, CancellationToken ct)
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        await using var from = await entry.OpenAsync(ct);
        var buffer = new byte[81_920];
        for (int read; (read = await from.ReadAsync(buffer, ct)) > 0;)
        {
            if ((bytes -= read) < 0)
                return null;
            sum.AppendData(buffer, 0, read);
        }

        return bytes == 0 ? Convert.ToHexStringLower(sum.GetHashAndReset()) : null;
    }

    private static async Task<byte[]> BytesAsync(ZipArchive zip, CancellationToken ct)
    {
        var entry = zip.GetEntry(FamilyFile.Manifest) ?? throw new InvalidDataException();
        if (entry.Length > MostOfManifest)
            throw new InvalidDataException();
        await using var from = await entry.OpenAsync(ct);
        var bytes = new byte[entry.Length];
        await from.ReadExactlyAsync(bytes, ct);
        return bytes;
    }
}
