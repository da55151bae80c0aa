using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using AngleSharp.Html.Dom;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Json.Schema;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Bundles(TestServer server)
{
    public static TheoryData<string> Written => [.. ScenarioFiles.Units.Keys];

    /// <summary>The bundle that a family gives out which changed nothing.</summary>
    internal static async Task<string> FreshAsync(TestServer server)
    {
        var family = await server.FamilyAsync("Cedar");
        using var answer = await family.Guardian.OpenAsync($"/units/{await family.TakeInAsync()}/bundle.json");
        return await answer.Content.ReadAsStringAsync();
    }

    private static async Task<HttpResponseMessage> SendAsync(TestFamily family, byte[]? file, IHtmlDocument? form = null)
    {
        form ??= await family.Guardian.GetAsync("/units/take-in");
        var content = new MultipartFormDataContent();
        foreach (var name in new[] { "UnitId", "__RequestVerificationToken" })
            content.Add(new StringContent(form.QuerySelector($"main [name={name}]")!.GetAttribute("value")!), name);
        if (file is not null)
        {
            var part = new ByteArrayContent(file);
            part.Headers.ContentType = new MediaTypeHeaderValue("application/json");
            content.Add(part, "Bundle", "unit.json");
        }

        return await family.Guardian.SendAsync(new HttpRequestMessage(HttpMethod.Post, "/units/take-in") { Content = content });
    }

    private static byte[] Text(Action<JsonNode>? bend = null)
    {
        var node = JsonNode.Parse(ScenarioFiles.Bytes($"scenario/units/{UnitSamples.Loaf}.json"))!;
        bend?.Invoke(node);
        return Encoding.UTF8.GetBytes(node.ToJsonString());
    }

    private static async Task<byte[]> GiveOutAsync(TestFamily family, Guid id)
    {
        using var answer = await family.Guardian.OpenAsync($"/units/{id}/bundle.json");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    [Theory]
    [MemberData(nameof(Written))]
    public async Task Come_back_equal_from_another_family(string name)
    {
        var (alder, birch) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var given = await GiveOutAsync(alder, await alder.TakeInAsync(name));
        var path = await SendAsync(birch, given).RedirectedAsync();
        var again = await GiveOutAsync(birch, Guid.Parse(path.Split('/')[^1], CultureInfo.InvariantCulture));

        Assert.Equal(Encoding.UTF8.GetString(given), Encoding.UTF8.GetString(again));
    }

    [Theory]
    [MemberData(nameof(Written))]
    public async Task Keep_every_activity_of_the_file_that_came_in(string name)
    {
        var family = await server.FamilyAsync();
        var given = JsonNode.Parse(await GiveOutAsync(family, await family.TakeInAsync(name)))!;
        var file = JsonNode.Parse(ScenarioFiles.Bytes($"scenario/units/{name}.json"))!;

        foreach (var activity in file["activities"]!.AsArray())
        {
            var kept = given["activities"]!.AsArray().Single(a => (string?)a!["code"] == (string?)activity!["code"])!;
            foreach (var member in new[] { "does", "title", "week", "order", "handsOnMinutes", "waitingMinutes", "supplies", "hazards", "variants", "books", "printables" })
                Assert.True(JsonNode.DeepEquals(activity![member], kept[member]), $"{activity["code"]} {member}");
        }
    }

    [Theory]
    [MemberData(nameof(Written))]
    public async Task Given_out_pass_the_published_schema(string name)
    {
        var family = await server.FamilyAsync();
        Assert.True(await PassesAsync(family, await GiveOutAsync(family, await family.TakeInAsync(name))));
    }

    [Fact]
    public async Task Written_by_hand_pass_the_published_schema_and_travel()
    {
        var (family, birch) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var songs = await family.MillSongsAsync();
        var form = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/new");
        await family.Guardian.SubmitAsync(form, Writing_an_activity.Written(form, await family.SubjectAsync("science"))).RedirectedAsync();
        var given = await GiveOutAsync(family, songs.Id);
        Assert.True(await PassesAsync(family, given));

        var path = await SendAsync(birch, given).RedirectedAsync();
        Assert.Equal(Encoding.UTF8.GetString(given), Encoding.UTF8.GetString(await GiveOutAsync(birch, Guid.Parse(path.Split('/')[^1], CultureInfo.InvariantCulture))));
    }

    [Fact]
    public async Task Bring_their_subjects_along()
    {
        var family = await server.FamilyAsync();
        await SendAsync(family, Text(n =>
        {
            n["subjects"]!.AsArray().Add(new JsonObject { ["code"] = "milling", ["name"] = "Milling" });
            n["activities"]![0]!["subjects"] = new JsonArray(new JsonObject { ["code"] = "milling", ["weight"] = 1 });
        })).RedirectedAsync();

        var subject = await family.FromDbAsync(db => db.Subjects.OrderBy(s => s.Order).LastAsync());
        Assert.Equal(("milling", "Milling"), (subject.Code, subject.Name));
    }

    [Fact]
    public async Task Whose_subjects_meet_in_one_still_pass_when_given_out()
    {
        var family = await server.FamilyAsync();
        var path = await SendAsync(family, Text(n =>
        {
            n["subjects"]!.AsArray().Add(new JsonObject { ["code"] = "the-arts", ["name"] = "Art" });
            n["activities"]![0]!["subjects"] = new JsonArray(new JsonObject { ["code"] = "the-arts", ["weight"] = 100 }, new JsonObject { ["code"] = "art", ["weight"] = 100 }, new JsonObject { ["code"] = "science", ["weight"] = 100 });
            n["activities"]![0]!.AsObject().Remove("touches");
        })).RedirectedAsync();
        var given = await GiveOutAsync(family, Guid.Parse(path.Split('/')[^1], CultureInfo.InvariantCulture));

        Assert.True(await PassesAsync(family, given));
        var weights = JsonNode.Parse(given)!["activities"]!.AsArray().Single(a => (int)a!["week"]! == 1 && (int)a["order"]! == 1)!["subjects"]!.AsArray();
        Assert.Equal(["art 100", "science 50"], weights.Select(w => $"{w!["code"]} {w["weight"]}"));
    }

    [Fact]
    public async Task Are_named_after_the_unit_and_saved_as_JSON()
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync($"/units/{await family.TakeInAsync()}/bundle.json");

        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal("from-grain-to-loaf.json", answer.Content.Headers.ContentDisposition.FileName);
    }

    [Fact]
    public async Task Are_not_given_out_of_a_unit_without_activities()
    {
        var family = await server.FamilyAsync();
        var id = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            db.Units.Add(new Unit(id, "Empty", "Nothing yet.", 1));
            await db.SaveChangesAsync();
        });
        var next = await family.Guardian.OpenAsync($"/units/{id}/bundle.json").RedirectedAsync();

        Assert.Contains("at least one activity", (await family.Guardian.GetAsync(next)).Text("#said"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_taken_in_once_however_often_they_are_sent()
    {
        var family = await server.FamilyAsync();
        var form = await family.Guardian.GetAsync("/units/take-in");
        var first = await SendAsync(family, Text(), form).RedirectedAsync();
        var second = await SendAsync(family, Text(), form).RedirectedAsync();

        Assert.Equal(first, second);
        Assert.Equal(1, await family.UnitsAsync());
    }

    [Fact]
    public async Task Are_asked_for_when_none_was_chosen()
    {
        var family = await server.FamilyAsync();
        Assert.Contains("Choose a bundle file.", (await SendAsync(family, null).AnsweredAsync(HttpStatusCode.UnprocessableEntity)).Fault("Bundle"), StringComparison.Ordinal);
        Assert.Contains("This file is empty.", (await SendAsync(family, []).AnsweredAsync(HttpStatusCode.UnprocessableEntity)).Fault("Bundle"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Above_two_megabytes_are_refused()
    {
        var family = await server.FamilyAsync();
        var large = new byte[BundleFile.LargestBytes + 1];
        Array.Fill(large, (byte)' ');
        Text().CopyTo(large, 0);

        Assert.Contains("larger than 2 megabytes", (await SendAsync(family, large).AnsweredAsync(HttpStatusCode.UnprocessableEntity)).Fault("Bundle"), StringComparison.Ordinal);
        await SendAsync(family, large[..^1]).RedirectedAsync();
    }

    public static TheoryData<string, byte[], string, string> Broken => new()
    {
        { "no JSON", "hello"u8.ToArray(), "the file", "not JSON" },
        { "half a file", Text()[..2000], "the file", "not JSON" },
        { "bytes that are no text", [0x22, 0xff, 0xfe, 0x22], "the file", "should be" },
        { "a list", "[]"u8.ToArray(), "the file", "should be" },
        { "deep nesting", Encoding.UTF8.GetBytes(new string('[', 5000)), "the file", "not JSON" },
        { "another format", Text(n => n["format"] = "something-else"), "/format", "const" },
        { "a later version", Text(n => n["version"] = 2), "/version", "const" },
        { "no title", Text(n => n.AsObject().Remove("title")), "the file", "title" },
        { "too many weeks", Text(n => n["weeks"] = 13), "/weeks", "12" },
        { "a member of its own", Text(n => n["activities"]![3]!["familyId"] = "x"), "/activities/3/familyId", "false" },
        { "a week that is not there", Text(n => n["activities"]![0]!["week"] = 9), "/activities/0/week", "after the unit’s last week" },
        { "an unknown subject", Text(n => n["activities"]![2]!["touches"] = new JsonArray("alchemy")), "/activities/2/touches/0", "no subject" },
        { "no minutes", Text(n => n["activities"]![1]!["handsOnMinutes"] = 0), "/activities/1/handsOnMinutes", "minimum" },
        { "a NUL", Text(n => n["title"] = "a\0b"), "/title", "control characters" },
        { "two lines in a title", Text(n => n["activities"]![0]!["title"] = "a\nb"), "/activities/0/title", "line breaks" },
        { "a title of one letter and many accents", Text(n => n["title"] = "a" + new string('\u0301', 4000)), "/title", "longer than 120" },
        { "half a character", Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Text()).Replace("From Grain to Loaf", "\\ud800", StringComparison.Ordinal)), "the file", "half a character" },
        { "a member twice", Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Text()).Replace("\"weeks\":4", "\"weeks\":4,\"weeks\":4", StringComparison.Ordinal)), "the file", "twice" },
        { "a quantity of nothing", Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Text(n => n["activities"]![0]!["supplies"]![0]!["quantity"] = 77777)).Replace("77777", "1e-40", StringComparison.Ordinal)), "/activities/0/supplies/0/quantity", "more than nothing" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public async Task That_break_a_rule_are_refused_whole_with_the_place_and_the_rule(string what, byte[] file, string path, string rule)
    {
        var family = await server.FamilyAsync();
        var subjects = await family.FromDbAsync(db => db.Subjects.CountAsync());
        var page = await SendAsync(family, file).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        var faults = page.QuerySelectorAll("#faults li").Select(l => l.TextContent.Squeezed().Replace('\'', '’')).ToList();

        Assert.True(faults.Exists(f => f.Contains(path, StringComparison.Ordinal) && f.Contains(rule, StringComparison.Ordinal)), $"{what}: {string.Join(" | ", faults)}");
        Assert.Contains("nothing of it was saved", page.Fault("Bundle"), StringComparison.Ordinal);
        Assert.Equal(0, await family.UnitsAsync());
        Assert.Equal(subjects, await family.FromDbAsync(db => db.Subjects.CountAsync()));
    }

    [Fact]
    public async Task With_whole_numbers_written_as_decimals_are_read()
    {
        var family = await server.FamilyAsync();
        var text = Encoding.UTF8.GetString(Text()).Replace("\"weeks\":4", "\"weeks\":4.0", StringComparison.Ordinal);
        Assert.Contains("4.0", text, StringComparison.Ordinal);
        var path = await SendAsync(family, Encoding.UTF8.GetBytes(text)).RedirectedAsync();

        Assert.Equal(4, (await family.UnitAsync(Guid.Parse(path.Split('/')[^1], CultureInfo.InvariantCulture))).Weeks);
    }

    [Fact]
    public async Task With_hostile_texts_are_shown_as_text()
    {
        const string hostile = "<script>alert(1)</script> =1+1 \u202Ertl\u202C 🍞";
        var family = await server.FamilyAsync();
        var path = await SendAsync(family, Text(n =>
        {
            n["title"] = hostile;
            n["activities"]![0]!["title"] = hostile;
            n["activities"]![0]!["waitingMinutes"] = 20;
            n["activities"]![0]!["waitingFor"] = hostile;
        })).RedirectedAsync();
        var page = await family.Guardian.GetAsync(path);

        Assert.Equal(hostile, page.QuerySelector("h1")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("main script"));
    }

    private static async Task<bool> PassesAsync(TestFamily family, byte[] bundle)
    {
        using var answer = await family.Guardian.OpenAsync("/units/schema.json");
        Assert.Equal("application/schema+json", answer.Content.Headers.ContentType!.MediaType);
        // The check itself is made by a general reader of JSON Schema 2020-12, over the schema as it is published.
        var schema = Schema(await answer.Content.ReadAsStringAsync());
        using var document = System.Text.Json.JsonDocument.Parse(bundle);
        return schema.Evaluate(document.RootElement).IsValid;
    }

    private static JsonSchema Schema(string text)
    {
        var node = JsonNode.Parse(text)!;
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", (string?)node["$schema"]);
        // A schema of the same address is registered already by the program in this process.
        node["$id"] = $"urn:test:{Guid.NewGuid():N}";
        return JsonSchema.FromText(node.ToJsonString());
    }
}
