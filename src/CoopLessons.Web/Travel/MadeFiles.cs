using System.Globalization;
using System.Text;
using CoopLessons.Data.Databases;

namespace CoopLessons.Web.Travel;

/// <summary>A file that was made and waits to be fetched.</summary>
/// <param name="ById">Whoever asked for it.</param>
/// <param name="MadeAt">UTC.</param>
public sealed record MadeFile(string Path, Guid ById, DateTime MadeAt, long Bytes)
{
    public DateTime GoesAt => MadeAt + MadeFiles.Life;
}

/// <summary>Files of whole families; whoever asked for one, against the password, fetches it and nobody else.</summary>
public sealed class FilesOfFamilies(DataFolder folder) : MadeFiles(folder, "leaving", ".zip");

/// <summary>Full portfolios; every guardian of the family may fetch one.</summary>
public sealed class FullPortfolios(DataFolder folder) : MadeFiles(folder, "portfolios", ".pdf");

/// <summary>
/// Where files that take long to make lie until they are fetched: in the data folder, each for a day. Whose it is, who asked and
/// when stands in the name, so that a restart forgets nothing. What a file is of is told by ids, the family's first.
/// </summary>
public abstract class MadeFiles(DataFolder folder, string room, string ending)
{
    public static readonly TimeSpan Life = TimeSpan.FromDays(1);

    private const string Making = ".making";

    /// <summary>A file to write into; it counts as made once <see cref="Keep"/> was told so.</summary>
    public FileStream Begin(ReadOnlySpan<Guid> of, Guid by, DateTime now)
    {
        var path = Path.Combine(Folder(), $"{Name(of)}-{by:N}-{now.Ticks.ToString(CultureInfo.InvariantCulture)}{Making}");
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.ReadWrite, Options = FileOptions.Asynchronous };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(path, options);
    }

    /// <summary>The file is whole; it takes the place of one that was made before of the same.</summary>
    public void Keep(string making)
    {
        var name = Path.GetFileNameWithoutExtension(making);
        foreach (var older in Directory.EnumerateFiles(Folder(), $"{name[..name.IndexOf('-', StringComparison.Ordinal)]}-*{ending}"))
            File.Delete(older);
        File.Move(making, Path.ChangeExtension(making, ending));
    }

    /// <summary>The file, if one lies there that is not to go yet.</summary>
    public MadeFile? Find(ReadOnlySpan<Guid> of, DateTime now) => Directory.EnumerateFiles(Folder(), $"{Name(of)}-*{ending}").Select(Read).OfType<MadeFile>()
        .Where(f => f.GoesAt > now).MaxBy(f => f.MadeAt);

    /// <summary>Takes away all of a family.</summary>
    public void Remove(Guid family)
    {
        foreach (var path in Directory.EnumerateFiles(Folder(), $"{family:N}*"))
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

    private string Folder() => Directory.CreateDirectory(Path.Combine(folder.Path, room)).FullName;

    private static string Name(ReadOnlySpan<Guid> of)
    {
        var name = new StringBuilder();
        foreach (var id in of)
            name.Append(CultureInfo.InvariantCulture, $"{id:N}");
        return name.ToString();
    }

    private static MadeFile? Read(string path) =>
        Path.GetFileNameWithoutExtension(path).Split('-') is [_, var by, var ticks] && Guid.TryParse(by, out var id)
        && long.TryParse(ticks, NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at <= DateTime.MaxValue.Ticks
            ? new MadeFile(path, id, new DateTime(at, DateTimeKind.Utc), new FileInfo(path).Length)
            : null;
}
