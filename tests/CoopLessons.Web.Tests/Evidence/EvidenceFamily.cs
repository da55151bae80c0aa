using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>A family with two children and an entry of today, and the ways in which they bring photos.</summary>
internal sealed record EvidenceFamily(TestFamily Family, Guid Wren, Guid Heron, Guid Science, Guid Entry)
{
    public Visitor Guardian => Family.Guardian;

    public static async Task<EvidenceFamily> MakeAsync(TestServer server, string name = "Alder")
    {
        var family = await server.FamilyAsync(name);
        var (wren, heron, entry, science) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.Empty);
        await family.WithDbAsync(async db =>
        {
            science = await db.Subjects.Where(s => s.Code == "science").Select(s => s.Id).SingleAsync();
            db.Add(new Learner(wren, "Wren", new DateOnly(2017, 5, 1), 0));
            db.Add(new Learner(heron, "Heron", new DateOnly(2014, 5, 1), 1));
            var facts = new EntryFacts(TestServer.Today, null, "Baked a loaf", Place.Home, "", [new LearnerTime(wren, new Minutes(40))], [new SubjectWeight(science, 1)], []);
            db.Add(LogEntry.Write(entry, facts, new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return new EvidenceFamily(family, wren, heron, science, entry);
    }

    /// <summary>Brings files by the form that needs no script.</summary>
    public Task<HttpResponseMessage> BringAsync(byte[] file, string name = "photo.jpg", Visitor? who = null, string query = "", params (string Name, string Value)[] fill) =>
        BringAsync([(file, name)], who, query, fill);

    public async Task<HttpResponseMessage> BringAsync(IEnumerable<(byte[] File, string Name)> files, Visitor? who = null, string query = "", params (string Name, string Value)[] fill)
    {
        who ??= Guardian;
        return await BringFromAsync(await who.GetAsync("/evidence/new" + query), files, who, "/evidence/new", fill);
    }

    /// <summary>The same from a page that was opened before.</summary>
    public static async Task<HttpResponseMessage> BringFromAsync(AngleSharp.Html.Dom.IHtmlDocument page, IEnumerable<(byte[] File, string Name)> files, Visitor who, string action, params (string Name, string Value)[] fill)
    {
        var content = new MultipartFormDataContent();
        var fields = page.QuerySelectorAll("form[enctype] input[type=hidden]").Select(f => (f.GetAttribute("name")!, f.GetAttribute("value") ?? "")).ToList();
        foreach (var (name, value) in fields.Where(f => fill.All(g => g.Name != f.Item1)).Concat(fill))
            content.Add(new StringContent(value), name);
        foreach (var (file, name) in files)
        {
            var part = new ByteArrayContent(file);
            part.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            part.Headers.ContentDisposition = new ContentDispositionHeaderValue("form-data") { Name = "\"files\"", FileNameStar = name };
            content.Add(part);
        }

        return await who.SendAsync(new HttpRequestMessage(HttpMethod.Post, action) { Content = content });
    }

    /// <summary>Brings a file and gives the piece that it became.</summary>
    public async Task<Piece> KeptAsync(byte[] file, string name = "photo.jpg", Visitor? who = null, string query = "", params (string Name, string Value)[] fill)
    {
        var before = (await PiecesAsync()).Select(p => p.Id).ToHashSet();
        using var answer = await BringAsync(file, name, who, query, fill);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, $"{(int)answer.StatusCode}: {(await Visitor.ParseAsync(answer)).Body!.TextContent}");
        return Assert.Single(await PiecesAsync(), p => !before.Contains(p.Id));
    }

    public Task<List<Piece>> PiecesAsync() => Family.FromDbAsync(db => db.Pieces.AsNoTracking().OrderBy(p => p.BroughtAt).ThenBy(p => p.Id).ToListAsync());

    /// <summary>Sends one part as a script does.</summary>
    public async Task<(HttpStatusCode Status, long Held)> PartAsync(Guid item, byte[] part, long at, long of, Visitor? who = null)
    {
        who ??= Guardian;
        var request = new HttpRequestMessage(HttpMethod.Post, $"/evidence/parts/{item}?at={at}&of={of}") { Content = new ByteArrayContent(part) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        request.Headers.Add("RequestVerificationToken", await who.TokenAsync("/evidence/new"));
        request.Headers.Add("Kept-Item", item.ToString());
        using var answer = await who.SendAsync(request);
        var word = await JsonDocument.ParseAsync(await answer.Content.ReadAsStreamAsync());
        Assert.Equal(item, word.RootElement.GetProperty("item").GetGuid());
        return (answer.StatusCode, word.RootElement.GetProperty("held").GetInt64());
    }

    public async Task<long> HeldAsync(Guid item, Visitor? who = null)
    {
        using var answer = await (who ?? Guardian).OpenAsync($"/evidence/parts/{item}");
        var word = await JsonDocument.ParseAsync(await answer.Content.ReadAsStreamAsync());
        return word.RootElement.GetProperty("held").GetInt64();
    }

    /// <summary>Sends a whole file in parts.</summary>
    public async Task SendAsync(Guid item, byte[] file, int size = 1_000_000, Visitor? who = null)
    {
        for (var at = 0; at < file.Length; at += size)
            Assert.Equal((HttpStatusCode.OK, Math.Min(file.Length, at + size)), await PartAsync(item, file[at..Math.Min(file.Length, at + size)], at, file.Length, who));
    }

    public async Task<HttpResponseMessage> TakeAsync(Guid item, Visitor? who = null, bool asScript = false, params (string Name, string Value)[] fields)
    {
        who ??= Guardian;
        var token = await who.TokenAsync("/evidence/new");
        var request = new HttpRequestMessage(HttpMethod.Post, $"/evidence/take/{item}")
        {
            Content = new FormUrlEncodedContent([.. fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value)), new("__RequestVerificationToken", token)]),
        };
        if (asScript)
            request.Headers.Add("Kept-Item", item.ToString());
        return await who.SendAsync(request);
    }

    public async Task<byte[]> BytesAsync(string path, Visitor? who = null)
    {
        using var answer = await (who ?? Guardian).OpenAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    /// <summary>Files of the family that lie in the folder.</summary>
    public IReadOnlyList<string> OnDisk()
    {
        var folder = Path.Combine(Family.Server.Database.Folder, "files", Family.Id.ToString("N"));
        return Directory.Exists(folder) ? [.. Directory.GetFiles(folder).Select(f => Path.GetFileName(f)!)] : [];
    }
}
