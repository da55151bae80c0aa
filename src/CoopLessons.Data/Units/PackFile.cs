using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;

namespace CoopLessons.Data.Units;

/// <summary>What came of reading a pack: the unit, or a sentence.</summary>
/// <param name="Faults">Of the bundles in it, as <see cref="BundleFile"/> names them.</param>
public sealed record PackReading(UnitPack? Pack, string? Fault, IReadOnlyList<BundleFault> Faults);

/// <summary>
/// A unit's pack as a ZIP file, for installations that do not know each other: <c>pack.json</c> says what is in it,
/// <c>unit.json</c> and <c>base.json</c> are bundles, <c>files/HASH</c> what is printed from. Whoever holds it can recompute
/// every hash: bundles by <see cref="UnitHash"/>, files by SHA-256 of their bytes, and <c>pack.json</c> itself by SHA-256 of
/// its RFC 8785 form without the member <c>hash</c>. The hash says that nothing was changed on the way, not who wrote it.
/// </summary>
public static class PackFile
{
    public const string FormatName = "cooplessons-pack";
    public const int CurrentVersion = 1;

    /// <summary>Of a whole pack, in bytes: 60 MB.</summary>
    public const long MostBytes = 60_000_000;

    public const int MostPrints = 60;

    private const int MostManifest = 200_000;
    private const string Broken = "This file is no pack, or it was damaged on its way. Ask for it once more.";
    private static readonly DateTimeOffset Still = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <param name="to">Gets the file; left open.</param>
    /// <param name="file">The bytes of a file to print from, by its hash; closed here.</param>
    public static async Task WriteAsync(Stream to, UnitPack pack, Func<string, Task<Stream>> file, CancellationToken ct)
    {
        await using var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8);
        await PutAsync(zip, "pack.json", new MemoryStream(Encoding.UTF8.GetBytes(Manifest(pack).ToJsonString(new JsonSerializerOptions { WriteIndented = true }))), ct);
        await PutAsync(zip, "unit.json", new MemoryStream(BundleFile.Write(pack.Unit.Content)), ct);
        await PutAsync(zip, "base.json", new MemoryStream(BundleFile.Write(pack.Base.Content)), ct);
        foreach (var hash in pack.Prints.Select(p => p.Hash).Distinct())
            await PutAsync(zip, $"files/{hash}", await file(hash), ct);
    }

    /// <summary>Reads everything but the files, whose hashes are held against their bytes as they are opened.</summary>
    public static async Task<PackReading> ReadAsync(ZipArchive zip, CancellationToken ct)
    {
        try
        {
            var manifest = JsonNode.Parse(await BytesAsync(zip, "pack.json", MostManifest, ct), documentOptions: new JsonDocumentOptions { MaxDepth = 8, AllowDuplicateProperties = false })?.AsObject();
            if (manifest is null || (string?)manifest["format"] != FormatName)
                return new PackReading(null, Broken, []);
            if ((int?)manifest["version"] != CurrentVersion)
                return new PackReading(null, "This pack was made by another version of the program, which writes them in another way.", []);
            if ((string?)manifest["hash"] != HashOf(manifest))
                return new PackReading(null, "What this pack says of itself was changed after it was made. Ask for it once more.", []);
            return await ReadAsync(zip, manifest, ct);
        }
        catch (Exception fault) when (fault is JsonException or InvalidDataException or InvalidOperationException or FormatException or OverflowException or ArgumentException)
        {
            return new PackReading(null, Broken, []);
        }
    }

    /// <summary>A file of the pack copied to where it can be looked at; false where it is not what the pack says.</summary>
    public static async Task<bool> CopyAsync(ZipArchive zip, TravellingPrint print, Stream to, CancellationToken ct)
    {
        if (zip.GetEntry($"files/{print.Hash}") is not { } entry || entry.Length != print.Bytes)
            return false;
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        await using var from = await entry.OpenAsync(ct);
        var buffer = new byte[81_920];
        var left = print.Bytes;
        for (int read; (read = await from.ReadAsync(buffer, ct)) > 0;)
        {
            if ((left -= read) < 0)
                return false;
            sum.AppendData(buffer, 0, read);
            await to.WriteAsync(buffer.AsMemory(0, read), ct);
        }

        return left == 0 && Convert.ToHexStringLower(sum.GetHashAndReset()) == print.Hash;
    }

    private static async Task<PackReading> ReadAsync(ZipArchive zip, JsonObject manifest, CancellationToken ct)
    {
        var unit = BundleFile.Read(await BytesAsync(zip, "unit.json", BundleFile.LargestBytes, ct));
        var before = BundleFile.Read(await BytesAsync(zip, "base.json", BundleFile.LargestBytes, ct));
        if (unit.Bundle is null || before.Bundle is null)
            return new PackReading(null, "The unit in this pack breaks the rules of a bundle.", [.. unit.Faults, .. before.Faults]);
        var pack = new UnitPack(
            Guid.Parse(Word(manifest, "sharedId")), Short(Word(manifest, "from"), Families.Family.LongestName), PublishedBundle.Of(unit.Bundle), PublishedBundle.Of(before.Bundle),
            [.. (manifest["prints"] as JsonArray ?? throw new FormatException("No prints.")).Select(p => Print(p as JsonObject ?? throw new FormatException("No print.")))]);
        if (pack.Unit.Hash != (string?)manifest["unit"] || pack.Base.Hash != (string?)manifest["base"])
            return new PackReading(null, "The unit in this pack was changed after the pack was made. Ask for it once more.", []);
        return pack.SharedId == Guid.Empty || pack.Prints.Count > MostPrints || pack.Prints.Sum(p => p.Bytes) > MostBytes ? new PackReading(null, Broken, []) : new PackReading(pack, null, []);
    }

    private static TravellingPrint Print(JsonObject print)
    {
        var hash = Word(print, "hash");
        if (hash.Length != 64 || !hash.All(char.IsAsciiHexDigitLower) || Number(print, "bytes") < 0)
            throw new FormatException("No hash.");
        return new TravellingPrint(
            Short(Word(print, "activity"), 40), Short(Word(print, "printable"), PrintSource.LongestTitle), Short(Word(print, "fileName"), PrintSource.LongestFileName),
            hash, Enum.Parse<StoredKind>(Word(print, "kind")), Number(print, "bytes"), checked((int)Number(print, "pages")));
    }

    private static string Word(JsonObject of, string name) => (string?)of[name] ?? throw new FormatException($"No {name}.");

    private static long Number(JsonObject of, string name) => (long?)of[name] ?? throw new FormatException($"No {name}.");

    private static JsonObject Manifest(UnitPack pack)
    {
        var manifest = new JsonObject
        {
            ["format"] = FormatName,
            ["version"] = CurrentVersion,
            ["sharedId"] = pack.SharedId.ToString(),
            ["from"] = pack.From,
            ["unit"] = pack.Unit.Hash,
            ["base"] = pack.Base.Hash,
            ["prints"] = new JsonArray([.. pack.Prints.Select(p => (JsonNode)new JsonObject
            {
                ["activity"] = p.Activity,
                ["printable"] = p.Printable,
                ["fileName"] = p.FileName,
                ["hash"] = p.Hash,
                ["kind"] = p.Kind.ToString(),
                ["bytes"] = p.Bytes,
                ["pages"] = p.Pages,
            })]),
        };
        manifest["hash"] = HashOf(manifest);
        return manifest;
    }

    private static string HashOf(JsonObject manifest)
    {
        var said = manifest.DeepClone().AsObject();
        said.Remove("hash");
        // Written and read once, so that values set here and values read from a file are written alike.
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(CanonicalJson.Of(JsonNode.Parse(said.ToJsonString())))));
    }

    private static async Task<byte[]> BytesAsync(ZipArchive zip, string name, int most, CancellationToken ct)
    {
        var entry = zip.GetEntry(name) ?? throw new InvalidDataException();
        await using var from = await entry.OpenAsync(ct);
        var bytes = new byte[most + 1];
        var read = await from.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, ct);
        return read > most ? throw new InvalidDataException() : bytes[..read];
    }

    private static async Task PutAsync(ZipArchive zip, string name, Stream from, CancellationToken ct)
    {
        var entry = zip.CreateEntry(name);
        // The same pack is the same file, whenever it is made.
        entry.LastWriteTime = Still;
        await using (from)
        await using (var to = await entry.OpenAsync(ct))
            await from.CopyToAsync(to, ct);
    }

    private static string Short(string text, int most) =>
        text.Any(char.IsControl) ? throw new FormatException("Control characters.") : string.Concat(text.EnumerateRunes().Take(most));
}
