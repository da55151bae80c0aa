using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Units going about between families, through the pages.</summary>
internal static class SharingOfTest
{
    public const string Water = "where-water-goes";

    /// <summary>Publishes what the unit is now; the answer's address is the shared unit's page.</summary>
    public static async Task<string> PublishAsync(this TestFamily family, Guid coop, Guid unit, string note = "") =>
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{unit}/share"), new() { ["note"] = note }, $"#note-{coop}").RedirectedAsync();

    public static async Task<Guid> TakeUpAsync(this TestFamily family, Guid coop, Guid shared)
    {
        var page = await family.Guardian.GetAsync($"/coop/{coop}/units/{shared}");
        return IdIn(await family.Guardian.SubmitAsync(page, null, "[name='Input.UnitId']").RedirectedAsync());
    }

    public static Guid IdIn(string path) => Guid.Parse(path.Split('/')[2].Split('?')[0]);

    /// <summary>Changes fields of an activity by its form.</summary>
    public static async Task EditAsync(this TestFamily family, Guid unit, string code, Dictionary<string, string?> fields)
    {
        var id = await family.FromDbAsync(db => db.Activities.Where(a => a.UnitId == unit && a.Code == code).Select(a => a.Id).SingleAsync());
        var page = await family.Guardian.GetAsync($"/units/{unit}/activities/{id}/edit");
        await family.Guardian.SubmitAsync(page, fields.ToDictionary(f => $"Input.{f.Key}", f => f.Value), "[name='Input.Title']").RedirectedAsync();
    }

    /// <summary>Brings in what is new; whatever is not decided is left for later.</summary>
    public static async Task<string> BringInAsync(this TestFamily family, Guid unit, params (int At, string Choice, string? Text)[] decisions)
    {
        var page = await family.Guardian.GetAsync($"/units/{unit}/newer");
        var fill = new Dictionary<string, string?>();
        foreach (var (at, choice, text) in decisions)
        {
            fill[$"Decisions[{at}].Choice"] = choice;
            if (text is not null)
                fill[$"Decisions[{at}].Text"] = text;
        }

        return await family.Guardian.SubmitAsync(page, fill, "[name=state]").RedirectedAsync();
    }

    public static async Task<IReadOnlyList<string>> AskedAsync(this TestFamily family, Guid unit) =>
        [.. (await family.Guardian.GetAsync($"/units/{unit}/newer")).QuerySelectorAll(".collided > legend").Select(l => l.TextContent.Squeezed())];

    /// <summary>The unit as it would travel now.</summary>
    public static Task<UnitBundle> BundleAsync(this TestFamily family, Guid unit) => family.FromDbAsync(async db =>
        UnitTravel.ToBundle(await db.Units.Include(u => u.Subjects).Include(u => u.Activities).SingleAsync(u => u.Id == unit), await db.Subjects.ToListAsync()));

    public static BundleActivity In(this UnitBundle unit, string code) => unit.Activities.Single(a => a.Code == code);

    /// <summary>Saves the unit's pack, with all its files.</summary>
    public static async Task<byte[]> PackAsync(this TestFamily family, Guid unit)
    {
        var page = await family.Guardian.GetAsync($"/units/{unit}/share");
        var form = page.QuerySelectorAll("form").Single(f => f.GetAttribute("action")!.Contains("handler=Pack", StringComparison.Ordinal));
        var fields = Visitor.FieldsOf(form).Concat(form.QuerySelectorAll("input[name=prints]").Select(p => new KeyValuePair<string, string>("prints", p.GetAttribute("value")!)));
        using var answer = await family.Guardian.PostAsync(form.GetAttribute("action")!, fields);
        Assert.Equal((HttpStatusCode.OK, "application/zip"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        return await answer.Content.ReadAsByteArrayAsync();
    }

    public static async Task<HttpResponseMessage> BringPackAsync(this TestFamily family, byte[] pack, IHtmlDocument? page = null)
    {
        page ??= await family.Guardian.GetAsync("/units/take-in");
        var content = new MultipartFormDataContent();
        foreach (var name in new[] { "UnitId", "__RequestVerificationToken" })
            content.Add(new StringContent(page.QuerySelector($"main [name={name}]")!.GetAttribute("value")!), name);
        var part = new ByteArrayContent(pack);
        part.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        content.Add(part, "Bundle", "unit.zip");
        return await family.Guardian.SendAsync(new HttpRequestMessage(HttpMethod.Post, "/units/take-in") { Content = content });
    }
}
