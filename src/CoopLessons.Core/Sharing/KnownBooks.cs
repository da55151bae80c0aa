namespace CoopLessons.Core.Sharing;

/// <summary>
/// Which books of an activity's versions are one book: those of one ISBN, else those of one title. A title that is put
/// right and an ISBN that is added leave a book the one it was.
/// </summary>
internal sealed class KnownBooks
{
    private readonly Dictionary<(string Activity, string Name), string> keys = [];

    /// <summary>The key of the first book that was met under this ISBN or title; from now on both lead to it.</summary>
    public string Key(string activity, string title, string? isbn)
    {
        var key = (isbn is null ? null : keys.GetValueOrDefault((activity, isbn))) ?? keys.GetValueOrDefault((activity, title)) ?? isbn ?? title;
        if (isbn is not null)
            keys.TryAdd((activity, isbn), key);
        keys.TryAdd((activity, title), key);
        return key;
    }

    /// <summary>A key by which a book went earlier.</summary>
    public void Remember(string activity, string key) => keys.TryAdd((activity, key), key);
}
