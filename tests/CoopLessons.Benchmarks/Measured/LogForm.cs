using System.Globalization;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>The form for something unplanned, filled in as a parent would, and sent again and again as new entries.</summary>
public sealed class LogForm
{
    private const string Path = "/log/new";
    private readonly AlderFamily _family;
    private readonly List<KeyValuePair<string, string>> _fields;

    private LogForm(AlderFamily family, List<KeyValuePair<string, string>> fields) => (_family, _fields) = (family, fields);

    /// <summary>Opens the form, sends it once, and makes sure that one entry more stands in the log.</summary>
    public static async Task<LogForm> OpenAsync(CoopServer server, AlderFamily family)
    {
        List<KeyValuePair<string, string>> fields =
        [
            await family.Guardian.TokenAsync(Path),
            new("Input.What", "A walk to the old mill"),
            new("Input.Length", "40"),
            new("Input.Place", "Home"),
            new("Input.Date", family.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            .. family.Learners.SelectMany((id, i) => Row($"Input.Who[{i}]", ("LearnerId", id.ToString()), ("There", "true"))),
            .. family.Subjects.Take(2).SelectMany((id, i) => Row($"Input.Counts[{i}]", ("SubjectId", id.ToString()), ("Weight", "1"))),
        ];
        var form = new LogForm(family, fields);
        var before = await CountAsync();
        await form.SendAsync();
        var more = await CountAsync() - before;
        return more == 1 ? form : throw new InvalidOperationException($"One entry was sent, and {more} more stand in the log.");

        Task<int> CountAsync() => server.WithDbAsync(family.Id, db => db.LogEntries.CountAsync());
    }

    public Task<int> SendAsync() => _family.Guardian.SendAsync(Path, [.. _fields, new("EntryId", Guid.CreateVersion7().ToString())]);

    private static IEnumerable<KeyValuePair<string, string>> Row(string name, params (string Part, string Value)[] parts) =>
        parts.Select(p => new KeyValuePair<string, string>($"{name}.{p.Part}", p.Value));
}
