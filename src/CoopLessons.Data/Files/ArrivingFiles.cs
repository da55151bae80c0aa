using System.Globalization;

namespace CoopLessons.Data.Files;

/// <summary>What came of a part.</summary>
public enum PartAnswer
{
    Kept,

    /// <summary>It does not begin where what is held ends, or it is of a file of another length.</summary>
    Elsewhere,

    /// <summary>The family has too much unfinished already.</summary>
    NoRoom,
}

/// <summary>
/// Files that are sent in parts over a network that comes and goes: for each family a folder, in it one a person, and in
/// that one file an item, as long as what is held of it, with the length of the whole in its name. They need no row: a crash
/// leaves what was written, and the sender asks how much that is.
/// </summary>
/// <param name="folder">On this machine's disk, wherever whole files lie.</param>
public sealed class ArrivingFiles(string folder)
{
    /// <summary>Largest part, in bytes: one mebibyte.</summary>
    public const int MostOfPart = 1_048_576;

    /// <summary>What a family may have unfinished, in bytes and in files.</summary>
    public const long MostOfFamily = 500_000_000;
    public const int MostFiles = 200;

    /// <summary>How long something unfinished is kept.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromDays(14);

    private readonly Lock _one = new();

    /// <summary>How many bytes of an item are held; 0 for one that nobody began.</summary>
    public long Held(Guid familyId, Guid personId, Guid item)
    {
        lock (_one)
            return Find(familyId, personId, item)?.Length ?? 0;
    }

    /// <summary>Adds a part behind what is held.</summary>
    /// <param name="at">Where in the file the part begins.</param>
    /// <param name="total">Length of the whole file.</param>
    /// <returns>With how many bytes are held now.</returns>
    public (PartAnswer Answer, long Held) Add(Guid familyId, Guid personId, Guid item, long at, long total, ReadOnlySpan<byte> part)
    {
        lock (_one)
        {
            var there = Find(familyId, personId, item);
            var held = there?.Length ?? 0;
            if (at != held || (there is not null && TotalOf(there) != total) || held + part.Length > total)
                return (PartAnswer.Elsewhere, held);
            var all = Of(familyId);
            if (all.Sum(f => f.Length) + part.Length > MostOfFamily || (there is null && all.Count >= MostFiles))
                return (PartAnswer.NoRoom, held);
            var path = there?.FullName ?? Path.Combine(Directory.CreateDirectory(FolderOf(familyId, personId)).FullName, string.Create(CultureInfo.InvariantCulture, $"{item:N}-{total}"));
            using var file = new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.Read | FileShare.Delete);
            try
            {
                file.Write(part);
                file.Flush(flushToDisk: true);
            }
            catch (IOException)
            {
                // Half a part would be taken for the end of a whole one.
                file.SetLength(held);
                throw;
            }

            return (PartAnswer.Kept, held + part.Length);
        }
    }

    /// <summary>An item that is held whole, to be read; null where it is not.</summary>
    public FileStream? Open(Guid familyId, Guid personId, Guid item)
    {
        lock (_one)
        {
            return Find(familyId, personId, item) is { } there && there.Length == TotalOf(there)
                ? new FileStream(there.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 81_920, FileOptions.Asynchronous)
                : null;
        }
    }

    public void Drop(Guid familyId, Guid personId, Guid item)
    {
        lock (_one)
            Find(familyId, personId, item)?.Delete();
    }

    /// <summary>Forgets, for all families, what nobody went on with.</summary>
    /// <param name="now">UTC.</param>
    public void Sweep(DateTime now)
    {
        lock (_one)
        {
            if (!Directory.Exists(folder))
                return;
            foreach (var file in new DirectoryInfo(folder).EnumerateFiles("*", SearchOption.AllDirectories).Where(f => f.LastWriteTimeUtc < now - Kept).ToList())
                file.Delete();
        }
    }

    private FileInfo? Find(Guid familyId, Guid personId, Guid item)
    {
        var mine = new DirectoryInfo(FolderOf(familyId, personId));
        return mine.Exists ? mine.EnumerateFiles($"{item:N}-*").FirstOrDefault() : null;
    }

    private static long TotalOf(FileInfo file) => long.Parse(file.Name.AsSpan(file.Name.IndexOf('-', StringComparison.Ordinal) + 1), NumberStyles.None, CultureInfo.InvariantCulture);

    private List<FileInfo> Of(Guid familyId)
    {
        var mine = new DirectoryInfo(Path.Combine(folder, familyId.ToString("N")));
        return mine.Exists ? [.. mine.EnumerateFiles("*", SearchOption.AllDirectories)] : [];
    }

    private string FolderOf(Guid familyId, Guid personId) => Path.Combine(folder, familyId.ToString("N"), personId.ToString("N"));
}
