using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Travel;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Travel;

/// <summary>A family's file taken apart by the platform's own reader, to be looked at or changed.</summary>
internal sealed class OpenedFile
{
    public List<(string Path, byte[] Bytes)> Entries { get; } = [];

    /// <summary>The file of a test's family.</summary>
    public static Task<byte[]> OutAsync(TestFamily family) => family.FromDbAsync(async db =>
    {
        var services = family.Server.Services;
        using var zip = new MemoryStream();
        await OutWork.WriteAsync(db, services.GetRequiredService<FileShelf>(), zip, services.GetRequiredService<TimeProvider>(), _ => { }, default);
        return zip.ToArray();
    });

    public static OpenedFile Of(byte[] zip)
    {
        var opened = new OpenedFile();
        using var archive = new ZipArchive(new MemoryStream(zip));
        foreach (var entry in archive.Entries)
        {
            using var from = entry.Open();
            using var bytes = new MemoryStream();
            from.CopyTo(bytes);
            opened.Entries.Add((entry.FullName, bytes.ToArray()));
        }

        return opened;
    }

    public string Text(string path) => Encoding.UTF8.GetString(Entries.Single(e => e.Path == path).Bytes);

    public JsonNode Json(string path) => JsonNode.Parse(Text(path))!;

    public JsonArray Rows(string table) => Json($"data/{table}.json").AsArray();

    public void Put(string path, byte[] bytes)
    {
        var at = Entries.FindIndex(e => e.Path == path);
        if (at < 0)
            Entries.Add((path, bytes));
        else
            Entries[at] = (path, bytes);
    }

    public void Put(string path, JsonNode json) => Put(path, Encoding.UTF8.GetBytes(json.ToJsonString()));

    /// <summary>The same family under another id.</summary>
    public OpenedFile As(Guid family)
    {
        var known = (string)Json("family.json")["familyId"]!;
        for (var i = 0; i < Entries.Count; i++)
        {
            if (Entries[i].Path.EndsWith(".json", StringComparison.Ordinal))
                Entries[i] = (Entries[i].Path, Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Entries[i].Bytes).Replace(known, family.ToString(), StringComparison.Ordinal)));
        }

        return Told();
    }

    /// <summary>The list in <c>family.json</c> made anew from what is there, as whoever forges a file would.</summary>
    public OpenedFile Told()
    {
        var manifest = Json("family.json");
        manifest["files"] = new JsonArray([.. Entries.Where(e => e.Path != "family.json").Select(e => (JsonNode)new JsonObject
        {
            ["path"] = e.Path,
            ["bytes"] = e.Bytes.Length,
            ["sha256"] = Convert.ToHexStringLower(SHA256.HashData(e.Bytes)),
        })]);
        Put("family.json", manifest);
        return this;
    }

    public byte[] Zip()
    {
        using var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (path, bytes) in Entries)
            {
                using var to = archive.CreateEntry(path).Open();
                to.Write(bytes);
            }
        }

        return zip.ToArray();
    }

    /// <summary>Takes a file in as somebody of the server, without a look at its files.</summary>
    public static async Task<BroughtFamily> InAsync(TestServer server, Person bringer, byte[] zip)
    {
        BroughtFamily? family = null;
        await server.WithDbAsync(null, async db =>
        {
            var shelf = server.Services.GetRequiredService<FileShelf>();
            family = await new FamilyIn(db, shelf, (_, _, _) => Task.FromResult<string?>(null)).TakeAsync(new MemoryStream(zip), bringer, TestServer.Start.UtcDateTime, _ => { }, default);
        });
        return family!;
    }
}
