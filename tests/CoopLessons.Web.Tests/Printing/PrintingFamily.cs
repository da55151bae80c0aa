using System.Net.Http.Headers;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Printing;

/// <summary>A family with two children and two activities this week, one of which asks for two sheets.</summary>
internal sealed record PrintingFamily(TestFamily Family, Guid Unit, Guid Grind, Guid Sing, Guid Heron, Guid Wren)
{
    public const string Week = "2026-W11";
    public const string Record = "Record sheet";
    public const string Map = "Outline map";

    public Visitor Guardian => Family.Guardian;
    public string Prints => $"/units/{Unit}/activities/{Grind}/prints";
    public string Packet { get; } = $"/week/packet/{Week}";
    public FileShelf Shelf => Family.Server.Services.GetRequiredService<FileShelf>();

    public static async Task<PrintingFamily> MakeAsync(TestServer server)
    {
        var family = await server.FamilyAsync("Alder");
        var (unit, grind, sing, heron, wren) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        await family.WithDbAsync(async db =>
        {
            var subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
            db.Add(new Learner(heron, "Heron", new DateOnly(2014, 3, 1), 0));
            var small = new Learner(wren, "Wren", new DateOnly(2019, 6, 1), 1);
            small.Describe("Wren", new DateOnly(2019, 6, 1), [Allergen.Wheat], "");
            db.Add(small);
            var loaf = new Unit(unit, "Grain", "From a seed.", 4);
            loaf.Add(new Activity(grind, "grind", new ActivityFacts(1, 1, "Grind wheat", ActivityKind.Making, "Grind it.", AdultNeed.Beside, 30, 0, ""), ActivityDetails.Empty with
            {
                Subjects = [new ActivitySubject(subjects["science"], 2), new ActivitySubject(subjects["history"], 1)],
                Printables = [new Printable(Record, 1), new Printable(Map, 2, "Coasts only.")],
                Hazards = [new Hazard(HazardKind.RawFlour, "Raw flour is not eaten.")],
                Ingredients = [new Ingredient("wheat berries", [Allergen.Wheat])],
            }));
            loaf.Add(new Activity(sing, "sing", new ActivityFacts(1, 2, "Sing", ActivityKind.Music, "Sing it.", AdultNeed.Beside, 20, 0, ""), ActivityDetails.Empty with { Subjects = [new ActivitySubject(subjects["music"], 1)] }));
            loaf.Take(new DateOnly(2026, 3, 9));
            db.Add(loaf);
            db.Add(new PlannedSession(Guid.CreateVersion7(), grind, TestServer.Today, 9 * 60, 0, [heron, wren]));
            db.Add(new PlannedSession(Guid.CreateVersion7(), sing, TestServer.Today, 10 * 60, 1, [heron, wren]));
            await db.SaveChangesAsync();
        });
        return new PrintingFamily(family, unit, grind, sing, heron, wren);
    }

    /// <summary>Brings a file by the form of a printable, or of something else.</summary>
    public async Task<HttpResponseMessage> BringAsync(byte[]? file, string name, string? printable = Record, Guid? activity = null) =>
        await BringFromAsync(await Guardian.GetAsync(activity is { } other ? $"/units/{Unit}/activities/{other}/prints" : Prints), file, name, printable);

    /// <summary>The same from a page that was opened before.</summary>
    public async Task<HttpResponseMessage> BringFromAsync(IHtmlDocument page, byte[]? file, string name, string? printable = Record, bool asOwn = false)
    {
        var form = (IHtmlFormElement)page.QuerySelectorAll("form[enctype]").First(f => asOwn ? f.QuerySelector("input[name=printable]:not([type=hidden])") is not null : printable is null || f.QuerySelector($"input[type=hidden][name=printable][value='{printable}']") is not null || f.QuerySelector("input[name=printable]:not([type=hidden])") is not null);
        var content = new MultipartFormDataContent();
        foreach (var field in form.QuerySelectorAll("input[type=hidden]"))
            content.Add(new StringContent(field.GetAttribute("value")!), field.GetAttribute("name")!);
        if (form.QuerySelector("input[name=printable]:not([type=hidden])") is not null)
            content.Add(new StringContent(printable ?? ""), "printable");
        if (file is not null)
        {
            var part = new ByteArrayContent(file);
            part.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            part.Headers.ContentDisposition = new ContentDispositionHeaderValue("form-data") { Name = "\"file\"", FileNameStar = name };
            content.Add(part);
        }

        return await Guardian.SendAsync(new HttpRequestMessage(HttpMethod.Post, form.GetAttribute("action")) { Content = content });
    }

    /// <summary>Where a file of the family lies.</summary>
    public string PathOf(string hash) => Path.Combine(Family.Server.Database.Folder, "files", Family.Id.ToString("N"), hash);

    /// <summary>Files of the family on the shelf.</summary>
    public async Task<IReadOnlyList<string>> OnShelfAsync()
    {
        var hashes = await Family.FromDbAsync(db => db.StoredFiles.Select(f => f.Hash).ToListAsync());
        var folder = Path.GetDirectoryName(PathOf(new string('0', 64)))!;
        var files = Directory.Exists(folder) ? Directory.GetFiles(folder).Select(Path.GetFileName).ToList() : [];
        Assert.Equal(hashes.Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
        return hashes;
    }

    public async Task<byte[]> PacketPdfAsync(bool changed = false)
    {
        using var answer = await Guardian.OpenAsync($"{Packet}.pdf{(changed ? "?changed=true" : "")}");
        Assert.Equal(System.Net.HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
        return await answer.Content.ReadAsByteArrayAsync();
    }
}
