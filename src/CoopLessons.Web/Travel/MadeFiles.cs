using System.Globalization;
using CoopLessons.Data.Databases;

namespace CoopLessons.Web.Travel;

/// <summary>A family's file that was made and waits to be fetched.</summary>
/// <param name="ById">Whoever asked for it, against the password; nobody else fetches it.</param>
/// <param name="MadeAt">UTC.</param>
public sealed record MadeFile(string Path, Guid ById, DateTime MadeAt, long Bytes)
{
    public DateTime GoesAt => MadeAt + MadeFiles.Life;
}

/// <summary>
/// Where the files of whole families lie until they are fetched: in the data folder, each for a day. Who asked and when stands in
/// the name, so that a restart forgets nothing.
/// </summary>
public sealed class MadeFiles(DataFolder folder)
{
    public static readonly TimeSpan Life = TimeSpan.FromDays(1);

    private const string Making = ".making";
    private const string Made = ".zip";

    /// <summary>A file to write into; it counts as made once <see cref="Keep"/> was told so.</summary>
    public FileStream Begin(Guid family, Guid by, DateTime now)
    {
        var path = Path.Combine(Folder(), $"{family:N}-{by:N}-{now.Ticks.ToString(CultureInfo.InvariantCulture)}{Making}");
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.ReadWrite, Options = FileOptions.Asynchronous };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(path, options);
    }

    /// <summary>The file is whole; it takes the place of one that the family made before.</summary>
    public void Keep(string making)
    {
        var name = Path.GetFileNameWithoutExtension(making);
        foreach (var older in Directory.EnumerateFiles(Folder(), $"{name[..32]}-*{Made}"))
            File.Delete(older);
        File.Move(making, Path.ChangeExtension(making, Made));
    }

    /// <summary>The family's file, if one lies there that is not to go yet.</summary>
    public MadeFile? Find(Guid family, DateTime now) => Directory.EnumerateFiles(Folder(), $"{family:N}-*{Made}").Select(Read).OfType<MadeFile>()
        .Where(f => f.GoesAt > now).MaxBy(f => f.MadeAt);

    public void Remove(Guid family)
    {
        foreach (var path in Directory.EnumerateFiles(Folder(), $"{family:N}-*"))
            File.Delete(path);
    }

    /// <summary>Takes away what has lain its day, and what was never finished.</summary>
    public void Sweep(DateTime now)
    {
        foreach (var path in Directory.EnumerateFiles(Folder()))
        {
            if (Read(path) is not { } file || file.GoesAt <= now)
                File.Delete(path);
        }
    }

    private string Folder() => Directory.CreateDirectory(Path.Combine(folder.Path, "leaving")).FullName;

    private static MadeFile? Read(string path) =>
        Path.GetFileNameWithoutExtension(path).Split('-') is [_, var by, var ticks] && Guid.TryParse(by, out var id)
        && long.TryParse(ticks, NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at <= DateTime.MaxValue.Ticks
            ? new MadeFile(path, id, new DateTime(at, DateTimeKind.Utc), new FileInfo(path).Length)
            : null;
}
