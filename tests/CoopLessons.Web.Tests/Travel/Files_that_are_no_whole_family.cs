using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Travel;

/// <summary>Each is refused with one sentence, and leaves neither a row nor a file.</summary>
[Collection(SharedServer.Name)]
public sealed class Files_that_are_no_whole_family(TestServer server)
{
    private readonly Guid _family = Guid.CreateVersion7();

    [Fact]
    public async Task Are_told_from_one_that_is()
    {
        var brought = await OpenedFile.InAsync(server, await server.PersonAsync("Iris Alder"), (await FileAsync()).Zip());
        Assert.Equal((_family, "Alder", 1), (brought.Id, brought.Name, brought.Files));
        Assert.Equal(1, await server.FromDbAsync(_family, db => db.LogEntries.CountAsync()));
    }

    [Fact]
    public async Task A_file_of_a_newer_program()
    {
        await RefusedAsync(file => Said(file, s => s["version"] = 2), "This file was made by a newer CoopLessons");
        await RefusedAsync(file => Said(file, s => s["rows"]!["Kites"] = 0), "This file holds a table “Kites” that this program does not know");
        await RefusedAsync(file => Row(file, "Learners", r => r["Wingspan"] = 4), "In data/Learners.json “Wingspan” is not known here");
    }

    [Fact]
    public async Task One_that_is_not_whole()
    {
        await RefusedAsync(file => file.Entries.RemoveAll(e => e.Path == "data/LogTime.json"), "“data/LogTime.json” is missing from this file", told: false);
        await RefusedAsync(file => file.Put("data/LogTime.json", "[]"u8.ToArray()), "“data/LogTime.json” was changed after the file was made", told: false);
        await RefusedAsync(file => file.Put("data/LogTime.json", "[]"u8.ToArray()), "There are 0 rows in data/LogTime.json, and the file says that there are 1.");
        await RefusedAsync(file => file.Entries.RemoveAll(e => e.Path.StartsWith("files/", StringComparison.Ordinal)), "A file that the family brought is missing from this one");
        await RefusedAsync(file => file.Entries.RemoveAll(e => e.Path == "family.json"), "This file is no family’s file", told: false);
        await RefusedAsync(file => file.Put("data/Learners.json", "[{"u8.ToArray()), "The rows in this file do not hold together");
        await RefusedAsync(file => file.Put("family.json", "{\"format\":"u8.ToArray()), "This file is no family’s file", told: false);
        Assert.StartsWith("This file is no family’s file", await FaultAsync(Encoding.UTF8.GetBytes("no zip at all")), StringComparison.Ordinal);
        var whole = (await FileAsync()).Zip();
        Assert.StartsWith("This file is no family’s file", await FaultAsync(whole[..(whole.Length / 2)]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_with_what_is_not_a_familys()
    {
        await RefusedAsync(file => Row(file, "Learners", r => r["FamilyId"] = Guid.CreateVersion7().ToString()), "A row in data/Learners.json belongs to another family");
        await RefusedAsync(file => file.Put("data/../../keys/key.json", "{}"u8.ToArray()), "“data/../../keys/key.json” is in this file and does not belong");
        await RefusedAsync(file => file.Put("/etc/hosts", "x"u8.ToArray()), "“/etc/hosts” is in this file and does not belong");
        await RefusedAsync(file => file.Put(@"files\..\x", "x"u8.ToArray()), @"“files\..\x” is in this file and does not belong");
        await RefusedAsync(file => file.Entries.Add(file.Entries[^2]), "stands twice in this file", told: false);
        await RefusedAsync(file => file.Entries.Add(("DATA/learners.json", "[]"u8.ToArray())), "“DATA/learners.json” is in this file and does not belong");
        await RefusedAsync(file => file.Put($"files/{new string('e', 64)}", "x"u8.ToArray()), "was changed after the file was made");
        await RefusedAsync(file => file.Put($"files/{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("x"u8))}", "x"u8.ToArray()), "no row of the family names it");
        await RefusedAsync(file => file.Put("data/Kites.json", "[]"u8.ToArray()), "“data/Kites.json” is in this file and does not belong");
        await RefusedAsync(file => file.Put("papers/note.pdf", "x"u8.ToArray()), "“papers/note.pdf” is in this file and is not in its list", told: false);
    }

    [Fact]
    public async Task One_whose_rows_cannot_be()
    {
        await RefusedAsync(file => Row(file, "LogTime", r => r["LearnerId"] = Guid.CreateVersion7().ToString()), "The rows in this file do not hold together");
        await RefusedAsync(file => Row(file, "LogTime", r => r["Minutes"] = "many"), "In data/LogTime.json “Minutes” is no Whole");
        await RefusedAsync(file => Row(file, "Learners", r => r["Name"] = new string('x', 400)), "In data/Learners.json “Name” is longer than");
        await RefusedAsync(file => Row(file, "Learners", r => r["Name"] = null), "In data/Learners.json “Name” is empty and must not be");
        await RefusedAsync(file => Row(file, "Learners", r => r["Name"] = "Wren\0"), "In data/Learners.json “Name” is text with a sign that no text has");
        await RefusedAsync(file => Row(file, "LogRevisions", r => r["Place"] = "Moon"), "In data/LogRevisions.json “Place” is none of the words");
        await RefusedAsync(file => file.Put("data/Learners.json", new JsonArray(file.Rows("Learners")[0]!.DeepClone(), file.Rows("Learners")[0]!.DeepClone())), "The rows in this file do not hold together");
    }

    [Fact]
    public async Task One_that_unpacks_to_far_more_than_it_is()
    {
        var bomb = new StringBuilder("[").Append(' ', 20_000_000).Append(']');
        await RefusedAsync(file => file.Put("data/Swaps.json", Encoding.UTF8.GetBytes(bomb.ToString())), "Unpacked, “data/Swaps.json” would be far larger");
        // The directory of the ZIP says that an entry is short, and it is not.
        var file = await FileAsync();
        file.Put("csv/Swaps.csv", new byte[900_000]);
        var zip = file.Zip();
        var at = Find(zip, BitConverter.GetBytes(900_000));
        Assert.NotEmpty(at);
        foreach (var place in at)
            BitConverter.GetBytes(2).CopyTo(zip, place);
        Assert.NotEqual("", await FaultAsync(zip));
    }

    [Fact]
    public async Task One_whose_files_are_something_else()
    {
        var person = await server.PersonAsync("Iris Alder");
        var zip = (await FileAsync()).Zip();
        var fault = await Assert.ThrowsAsync<FamilyUnfitException>(() => server.WithDbAsync(null, async db =>
            await new FamilyIn(db, Shelf, (_, _, _) => Task.FromResult<string?>("This is something else.")).TakeAsync(new MemoryStream(zip), person, TestServer.Start.UtcDateTime, _ => { }, default)));
        Assert.EndsWith("This is something else. Nothing was taken in.", fault.Message, StringComparison.Ordinal);
        await NothingIsHereAsync();
    }

    private FileShelf Shelf => server.Services.GetRequiredService<FileShelf>();

    private async Task RefusedAsync(Action<OpenedFile> change, string sentence, bool told = true)
    {
        var file = await FileAsync();
        change(file);
        if (told)
            file.Told();
        var fault = await FaultAsync(file.Zip());
        Assert.True(fault.Contains(sentence, StringComparison.Ordinal), $"“{fault}” is not “{sentence}”");
    }

    private async Task<string> FaultAsync(byte[] zip)
    {
        var person = await server.PersonAsync("Iris Alder");
        var fault = await Assert.ThrowsAsync<FamilyUnfitException>(() => OpenedFile.InAsync(server, person, zip));
        await NothingIsHereAsync();
        return fault.Message;
    }

    private async Task NothingIsHereAsync()
    {
        Assert.False(await server.FromDbAsync(_family, db => db.Families.AnyAsync()));
        Assert.False(await server.FromDbAsync(_family, db => db.Learners.AnyAsync()));
        var folder = Path.Combine(server.Database.Folder, "files", _family.ToString("N"));
        Assert.True(!Directory.Exists(folder) || Directory.GetFiles(folder).Length == 0);
    }

    /// <summary>A small family with one entry and one file, under an id that is not here.</summary>
    private async Task<OpenedFile> FileAsync()
    {
        var furnished = await server.FamilyAsync("Alder");
        await furnished.WithDbAsync(async db =>
        {
            var wren = new CoopLessons.Data.Families.Learner(Guid.CreateVersion7(), "Wren", new DateOnly(2017, 5, 1), 0);
            db.Add(wren);
            var subject = await db.Subjects.OrderBy(s => s.Order).FirstAsync();
            db.Add(Data.Log.LogEntry.Write(Guid.CreateVersion7(), new(TestServer.Today, null, "Sang", Core.Hours.Place.Home, "", [new(wren.Id, new(20))], [new(subject.Id, 1)], []), new(furnished.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            db.Add(new StoredFile(await Shelf.PutAsync(furnished.Id, new MemoryStream("A song of the mill."u8.ToArray()), default), StoredKind.AsItCame, 19, 1, "Iris", TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return OpenedFile.Of(await OpenedFile.OutAsync(furnished)).As(_family);
    }

    private static void Said(OpenedFile file, Action<JsonNode> change)
    {
        var said = file.Json("family.json");
        change(said);
        file.Put("family.json", said);
    }

    private static void Row(OpenedFile file, string table, Action<JsonNode> change)
    {
        var rows = file.Rows(table);
        change(rows[0]!);
        file.Put($"data/{table}.json", rows);
    }

    private static List<int> Find(byte[] all, byte[] part)
    {
        var places = new List<int>();
        for (var from = 0; all.AsSpan(from).IndexOf(part) is var at and >= 0; from += at + 1)
            places.Add(from + at);
        return places;
    }
}
