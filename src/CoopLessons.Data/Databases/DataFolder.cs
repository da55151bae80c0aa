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
    public string Keys => System.IO.Path.Combine(Path, "keys");

    /// <exception cref="DatabaseUnfitException">The folder cannot be written, or another program holds it.</exception>
    public static DataFolder Hold(string path)
    {
        var full = System.IO.Path.GetFullPath(path);
        var file = System.IO.Path.Combine(full, "in-use.lock");
        try
        {
            Directory.CreateDirectory(full);
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(full, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
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

    public void Dispose() => _lock.Dispose();
}
