using System.Runtime.Versioning;

namespace CoopLessons.Data.Databases;

/// <summary>
/// The one folder that holds everything a server keeps: database, keys and files. It is held by a lock so that a second
/// program on the same folder is refused.
/// </summary>
public sealed class DataFolder : IDisposable
{
    private readonly FileStream _lock;

    private DataFolder(string path, FileStream held) => (Path, _lock) = (path, held);

    public string Path { get; }
    public string DatabaseFile => System.IO.Path.Combine(Path, "cooplessons.db");
    /// <summary>What families uploaded: part of every backup, as the database is.</summary>
    public string Files => FilesIn(Path);
    public string Keys => System.IO.Path.Combine(Path, "keys");

    /// <summary>Where families' files lie in a data folder that somebody else may hold.</summary>
    public static string FilesIn(string path) => System.IO.Path.Combine(System.IO.Path.GetFullPath(path), "files");

    /// <exception cref="DatabaseUnfitException">The folder cannot be written, or another program holds it.</exception>
    public static DataFolder Hold(string path)
    {
        var full = System.IO.Path.GetFullPath(path);
        var file = System.IO.Path.Combine(full, "in-use.lock");
        try
        {
            Directory.CreateDirectory(full);
            if (!OperatingSystem.IsWindows())
                KeepOthersOut(full);
            return new DataFolder(full, new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (UnauthorizedAccessException)
        {
            throw new DatabaseUnfitException($"The data folder {full} cannot be written by this user.");
        }
        catch (IOException fault)
        {
            throw new DatabaseUnfitException(File.Exists(file)
                ? $"The data folder {full} is in use by another CoopLessons program; stop that one first, or name another folder with --data."
                : $"The data folder {full} cannot be used: {fault.Message}");
        }
    }

    /// <summary>A mounted folder may belong to somebody else and be shared with this program's group: then its owner decides.</summary>
    [UnsupportedOSPlatform("windows")]
    private static void KeepOthersOut(string folder)
    {
        const UnixFileMode others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;
        try
        {
            File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
        catch (UnauthorizedAccessException)
        {
            if ((File.GetUnixFileMode(folder) & others) != 0)
                throw new DatabaseUnfitException($"The data folder {folder} belongs to another user and is open to everybody on this machine; close it to others, or give it to the user who runs this program.");
        }
    }

    public void Dispose() => _lock.Dispose();
}
