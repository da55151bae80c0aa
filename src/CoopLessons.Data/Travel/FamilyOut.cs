using System.Buffers;
using System.Text;
using System.Text.Json;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Travel;

/// <summary>A paper that goes into a family's file for people to read.</summary>
/// <param name="Name">With its ending; no folder in it.</param>
public sealed record TravelPaper(string Name, Func<CancellationToken, Task<byte[]>> WriteAsync);

/// <summary>How far the making or taking in of a family's file is.</summary>
/// <param name="Step">A sentence without its full stop.</param>
/// <param name="Share">0 to 1.</param>
public sealed record TravelProgress(string Step, double Share);

/// <summary>
/// Makes the file of the family at hand, as a stream. Everything is read as it stood at one moment; the same family gives the
/// same bytes but for the time and the program in <c>family.json</c> and the day on the papers.
/// </summary>
/// <param name="guard">Makes text safe in a cell of a spreadsheet.</param>
public sealed class FamilyOut(AppDb db, FileShelf shelf, Func<string, string> guard)
{
    /// <param name="to">Gets the file; left open.</param>
    /// <param name="now">UTC.</param>
    public async Task WriteAsync(Stream to, IReadOnlyList<TravelPaper> papers, DateTime now, Action<TravelProgress> tell, CancellationToken ct)
    {
        await using var moment = await db.OneMomentAsync(ct);
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        var tables = TravelTable.Of(db.Model);
        await using var zip = new PackedEntries(to);
        await zip.PutTextAsync(FamilyFile.Readme, TravelReadme.Of(db.Model, family.Name), ct);
        await zip.PutTextAsync(FamilyFile.Schema, TravelSchema.Of(db.Model).ToJsonString(new JsonSerializerOptions { WriteIndented = true }), ct);
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var (i, table) in tables.OrderBy(t => t.Name, StringComparer.Ordinal).Index())
        {
            tell(new TravelProgress($"Writing the rows: table {i + 1} of {tables.Count}", 0.4 * i / tables.Count));
            await zip.PutAsync(FamilyFile.DataPath(table.Name), packed: true, async s => counts[table.Name] = await JsonAsync(s, table, ct), ct);
            await zip.PutAsync(FamilyFile.CsvPath(table.Name), packed: true, s => CsvAsync(s, table, ct), ct);
        }

        var missing = await FilesAsync(zip, tell, ct);
        foreach (var (i, paper) in papers.Index())
        {
            tell(new TravelProgress($"Drawing the papers: {i + 1} of {papers.Count}", 0.7 + 0.3 * i / papers.Count));
            var bytes = await paper.WriteAsync(ct);
            await zip.PutAsync($"papers/{paper.Name}", packed: false, s => s.WriteAsync(bytes, ct).AsTask(), ct);
        }

        var entries = zip.Entries.ToList();
        await zip.PutAsync(FamilyFile.Manifest, packed: true, s => ManifestAsync(s, family, now, counts, entries, missing, ct), ct);
    }

    private async Task<int> JsonAsync(Stream to, TravelTable table, CancellationToken ct)
    {
        var line = new ArrayBufferWriter<byte>();
        await using var json = new Utf8JsonWriter(line, FamilyFile.Written);
        var count = 0;
        await foreach (var row in TravelRows.Of(db, table).WithCancellation(ct))
        {
            line.ResetWrittenCount();
            line.Write(count++ == 0 ? "[\n"u8 : ",\n"u8);
            json.Reset();
            json.WriteStartObject();
            foreach (var column in table.Columns)
                TravelValue.Write(json, column, TravelRows.Value(column, row));
            json.WriteEndObject();
            await json.FlushAsync(ct);
            await to.WriteAsync(line.WrittenMemory, ct);
        }

        await to.WriteAsync(count == 0 ? "[]\n"u8.ToArray() : "\n]\n"u8.ToArray(), ct);
        return count;
    }

    private async Task CsvAsync(Stream to, TravelTable table, CancellationToken ct)
    {
        // Spreadsheets know UTF-8 by the mark at its head.
        await to.WriteAsync("\uFEFF"u8.ToArray(), ct);
        await to.WriteAsync(FamilyFile.Utf8.GetBytes(string.Join(',', table.Columns.Select(c => Cell(c.Name))) + "\r\n"), ct);
        await foreach (var row in TravelRows.Of(db, table).WithCancellation(ct))
        {
            var line = new StringBuilder();
            foreach (var (i, column) in table.Columns.Index())
            {
                var plain = TravelValue.Plain(column, TravelRows.Value(column, row)) ?? "";
                line.Append(i == 0 ? "" : ",").Append(Cell(TravelValue.FormOf(column) is ValueForm.Text or ValueForm.Json ? guard(plain) : plain));
            }

            await to.WriteAsync(FamilyFile.Utf8.GetBytes(line.Append("\r\n").ToString()), ct);
        }
    }

    // RFC 4180, section 2, rules 5 to 7.
    private static string Cell(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private async Task<IReadOnlyList<string>> FilesAsync(PackedEntries zip, Action<TravelProgress> tell, CancellationToken ct)
    {
        var hashes = (await db.StoredFiles.Select(f => f.Hash).ToListAsync(ct)).Order(StringComparer.Ordinal).ToList();
        var missing = new List<string>();
        foreach (var (i, hash) in hashes.Index())
        {
            tell(new TravelProgress($"Adding photos and files: {i + 1} of {hashes.Count}", 0.4 + 0.3 * i / hashes.Count));
            using var file = await shelf.AtHandAsync(db.Current.FamilyId!.Value, hash, ct);
            if (file is null)
            {
                missing.Add(hash);
                continue;
            }

            await zip.PutAsync(FamilyFile.FilePath(hash), packed: false, async s =>
            {
                await using var content = file.Open();
                await content.CopyToAsync(s, ct);
            }, ct);
        }

        return missing;
    }

    private async Task ManifestAsync(
        Stream to, Families.Family family, DateTime now, SortedDictionary<string, int> counts, IReadOnlyList<TravelEntry> entries, IReadOnlyList<string> missing, CancellationToken ct)
    {
        await using var json = new Utf8JsonWriter(to, FamilyFile.Written with { Indented = true });
        json.WriteStartObject();
        json.WriteString("format", FamilyFile.FormatName);
        json.WriteNumber("version", FamilyFile.CurrentVersion);
        json.WriteString("program", FamilyFile.Program);
        json.WriteString("madeAt", now.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture));
        json.WriteString("familyId", family.Id);
        json.WriteString("familyName", family.Name);
        json.WriteStartObject("rows");
        foreach (var (table, count) in counts)
            json.WriteNumber(table, count);
        json.WriteEndObject();
        json.WriteStartArray("missing");
        foreach (var hash in missing)
            json.WriteStringValue(hash);
        json.WriteEndArray();
        json.WriteStartArray("staysBehind");
        foreach (var (what, _) in TravelTable.Staying(db.Model))
            json.WriteStringValue(what);
        json.WriteEndArray();
        json.WriteStartArray("files");
        foreach (var entry in entries)
        {
            json.WriteStartObject();
            json.WriteString("path", entry.Path);
            json.WriteNumber("bytes", entry.Bytes);
            json.WriteString("sha256", entry.Sha256);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        await json.FlushAsync(ct);
    }
}
