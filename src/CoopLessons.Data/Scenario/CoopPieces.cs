using System.Text.Json;
using CoopLessons.Core.Calendar;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;

namespace CoopLessons.Data.Scenario;

/// <summary>What the families of the co-op kept of their work, as <c>seed-scenario/pieces.json</c> tells it.</summary>
public sealed record CoopPieces(IReadOnlyDictionary<string, IReadOnlyList<CoopPiece>> Families)
{
    /// <summary>The file that comes with the program.</summary>
    public static CoopPieces Read() => From(ScenarioFiles.Bytes("scenario/pieces.json"));

    /// <summary>Reads such a file.</summary>
    /// <exception cref="JsonException">It is no such file, or holds a member that nobody knows.</exception>
    /// <exception cref="InvalidDataException">It is empty, or a piece does not say exactly one of <c>on</c> and <c>weeksAgo</c>.</exception>
    public static CoopPieces From(ReadOnlySpan<byte> json)
    {
        var told = JsonSerializer.Deserialize<CoopPieces>(json, Coop.Json) ?? throw new InvalidDataException("pieces.json holds nothing.");
        if (told.Families.Values.SelectMany(f => f).FirstOrDefault(p => p.On is null == p.WeeksAgo is null) is { } piece)
            throw new InvalidDataException($"The piece “{piece.Caption}” of {string.Join(", ", piece.Children)} has to say either on or weeksAgo, and not both.");
        return told;
    }
}

/// <summary>A drawing in <c>seed-scenario/pieces/</c> and what is said of it.</summary>
/// <param name="File">Without ending; the same with <c>-small</c> is the one for lists.</param>
/// <param name="WeeksAgo">It belongs to the last entry of its children and its subject up to that many weeks ago.</param>
/// <param name="On">Instead of weeks: it belongs to the last such entry up to that day, that day included.</param>
/// <param name="What">How the entry begins to which it belongs, where the log has one.</param>
public sealed record CoopPiece(
    string File, IReadOnlyList<string> Children, string Subject, string Caption, int? WeeksAgo = null, DateOnly? On = null, string What = "", bool SetAside = false, bool FacesOut = false)
{
    /// <summary>The last day on which its entry may lie.</summary>
    internal DateOnly LastDay(DateOnly today) => On ?? today.AddDays(-7 * WeeksAgo.GetValueOrDefault());
}

/// <summary>Keeps the pieces of a family of the scenario with the entries that its log holds.</summary>
internal sealed class PiecesOfFamily(AppDb db, FileShelf shelf, Household house, IReadOnlyList<CoopPiece> told, IReadOnlyList<Draft> drafts, DateOnly today)
{
    private readonly Dictionary<string, StoredFile> _files = [];

    /// <summary>Adds everything to the unit of work. Nothing is saved here but the files, which no row names until then.</summary>
    public async Task AddAsync(CancellationToken ct)
    {
        // What has a day of its own may lie after the day of loading: it is not made yet.
        foreach (var piece in told.Where(p => p.LastDay(today) <= today))
        {
            var children = house.Children.Where(c => piece.Children.Contains(c.Child.Name)).Select(c => c.Id).ToList();
            if (EntryOf(piece, children) is not { } entry)
                continue;
            var (shown, small) = (await PutAsync(piece.File, ct), await PutAsync(piece.File + "-small", ct));
            var facts = new PieceFacts(entry.Facts.Date, children, house.Subjects[piece.Subject], entry.Id, piece.Caption, piece.FacesOut, piece.SetAside);
            db.Pieces.Add(new Piece(Guid.CreateVersion7(), PieceKind.Photo, new PieceFiles(piece.File + ".png", shown, small), entry.Facts.StartsAt, facts, entry.Author, entry.At));
        }
    }

    private Draft? EntryOf(CoopPiece piece, List<Guid> children)
    {
        var last = piece.LastDay(today);
        var fitting = drafts.Where(d => d.Again is null && d.Facts.Date <= last && d.Facts.Date > last.AddDays(-28) && children.TrueForAll(c => d.Facts.Times.Any(t => t.LearnerId == c))).ToList();
        var named = piece.What.Length == 0 ? [] : fitting.FindAll(d => d.Facts.What.StartsWith(piece.What, StringComparison.Ordinal));
        var subject = house.Subjects[piece.Subject];
        return (named.Count > 0 ? named : fitting.FindAll(d => d.Facts.Split.Any(s => s.SubjectId == subject))).MaxBy(d => (d.Facts.Date, d.At));
    }

    private async Task<StoredFile> PutAsync(string name, CancellationToken ct)
    {
        if (_files.TryGetValue(name, out var file))
            return file;
        using var content = new MemoryStream(ScenarioFiles.Bytes($"scenario/pieces/{name}.png"), writable: false);
        var hash = await shelf.PutAsync(db.Current.FamilyId!.Value, content, ct);
        db.StoredFiles.Add(_files[name] = file = new StoredFile(hash, StoredKind.Png, content.Length, 1, house.Adults[0].Name, house.Utc(Week.Of(today).Monday, 20 * 60)));
        return file;
    }
}
