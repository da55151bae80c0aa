using System.Net;
using System.Text.Json;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;

namespace CoopLessons.Web.Tests.Phone;

/// <summary>The pages that a phone keeps, the frame they are shown in, and what puts it on a home screen.</summary>
[Collection(SharedServer.Name)]
public sealed class PagesForThePhone(TestServer server)
{
    [Fact]
    public async Task Are_seven_days_the_log_and_two_shopping_lists_as_they_would_be_opened()
    {
        var day = await PlannedDay.MakeAsync(server);
        var pages = await PagesAsync(day.Guardian);
        Assert.Equal(
            ["/today/2026-03-12", "/today/2026-03-13", "/today/2026-03-14", "/today/2026-03-15", "/today/2026-03-16", "/today/2026-03-17", "/today/2026-03-18", "/log/new", "/week/shopping/2026-W11", "/week/shopping/2026-W12"],
            pages.Keys);
        Assert.Contains("Read aloud: chapter 7", pages["/today/2026-03-12"], StringComparison.Ordinal);
        Assert.Contains("<title>Today, Thursday 12 March</title>", pages["/today/2026-03-12"], StringComparison.Ordinal);
        Assert.All(pages.Values, html => Assert.DoesNotContain("nav class=\"places\"", html, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Hold_no_token_and_no_minted_id_so_that_what_did_not_change_is_not_sent_again()
    {
        var day = await PlannedDay.MakeAsync(server);
        var first = await SentAsync(day.Guardian);
        Assert.All(first, page => Assert.DoesNotContain("__RequestVerificationToken", page.Html!, StringComparison.Ordinal));
        Assert.Contains("name=\"entryId\" value=\"\" data-mint", first[0].Html!, StringComparison.Ordinal);
        var second = await SentAsync(day.Guardian, first);
        Assert.Equal(first.Select(p => (p.Path, p.Tag)), second.Select(p => (p.Path, p.Tag)));
        Assert.All(second, page => Assert.Null(page.Html));

        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        var third = await SentAsync(day.Guardian, first);
        Assert.Contains("Read aloud: chapter 7", third[0].Html!, StringComparison.Ordinal);
        // What changed is its day, the log's form, and the entry itself with the form that changes it.
        Assert.Equal(["/today/2026-03-12", "/log/new"], third.Where(p => p.Html is not null).Select(p => p.Path).Take(2));
        Assert.Equal(4, third.Count(p => p.Html is not null));
    }

    [Fact]
    public async Task Bring_a_helper_the_days_and_the_log_and_nothing_else()
    {
        var day = await PlannedDay.MakeAsync(server);
        var pages = await PagesAsync(await server.HelperAsync(day.Family));
        Assert.Equal(8, pages.Count);
        Assert.DoesNotContain(pages.Keys, p => p.StartsWith("/week", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Show_nothing_of_another_family()
    {
        var (mine, other) = (await PlannedDay.MakeAsync(server), await server.FamilyAsync("Birch"));
        using var done = await mine.Guardian.SubmitAsync(await mine.TodayAsync(), within: PlannedDay.Form(mine.ReadAloud, "Done"));
        var pages = await PagesAsync(other.Guardian);
        Assert.DoesNotContain(pages.Values, html => html.Contains("Linnet", StringComparison.Ordinal));
        Assert.DoesNotContain(pages.Keys, p => p.StartsWith("/log/0", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Offer_tomorrows_things_to_be_done_since_it_will_be_tomorrow_there()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var moved = await day.Guardian.PostAsync(
            "/today/2026-03-12?handler=Move", [new("sessionId", day.ReadAloud.ToString()), new("from", "2026-03-12"), new("to", "2026-03-13"), new("__RequestVerificationToken", await day.Guardian.TokenAsync())]);
        Assert.DoesNotContain("handler=Done", (await day.Guardian.GetAsync("/today/2026-03-13")).Body!.InnerHtml, StringComparison.Ordinal);
        Assert.Contains("handler=Done", (await PagesAsync(day.Guardian))["/today/2026-03-13"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_card_for_a_day_out_is_kept_for_its_day_alone()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            db.TeachingAdults.Add(new TeachingAdult(Guid.CreateVersion7(), "Iris", null, "555 0142", 0));
            db.Appointments.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Millrace co-op day", AppointmentKind.CoOp, [day.Heron, day.Wren], [], new(2026, 3, 13), 9 * 60, 180, "", [], null)));
            await db.SaveChangesAsync();
        });
        var card = await day.Guardian.GetAsync("/today/2026-03-13/out");
        Assert.Contains("wheat", card.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Linnet", card.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("tel:5550142", card.QuerySelector("a[href^='tel:']")!.GetAttribute("href"));
        Assert.Equal("2026-03-13", (await SentAsync(day.Guardian)).Single(p => p.Path == "/today/2026-03-13/out").Until);
    }

    [Fact]
    public async Task The_frame_is_the_same_for_everybody()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var mine = await day.Guardian.OpenAsync("/phone");
        using var strangers = await server.Visitor().OpenAsync("/phone");
        Assert.Equal(await strangers.Content.ReadAsStringAsync(), await mine.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task The_worker_and_the_manifest_name_files_that_are_there()
    {
        var visitor = server.Visitor();
        using var worker = await visitor.OpenAsync("/worker.js");
        Assert.Equal("text/javascript", worker.Content.Headers.ContentType!.MediaType);
        Assert.Matches("^const version = \"[0-9a-f]{16}\";", await worker.Content.ReadAsStringAsync());
        using var manifest = await visitor.OpenAsync("/app.webmanifest");
        // W3C Web Application Manifest, 3.1: application/manifest+json.
        Assert.Equal("application/manifest+json", manifest.Content.Headers.ContentType!.MediaType);
        foreach (var icon in JsonDocument.Parse(await manifest.Content.ReadAsStringAsync()).RootElement.GetProperty("icons").EnumerateArray())
        {
            using var file = await visitor.OpenAsync(icon.GetProperty("src").GetString()!);
            Assert.Equal((HttpStatusCode.OK, icon.GetProperty("type").GetString()), (file.StatusCode, file.Content.Headers.ContentType!.MediaType));
        }
    }

    private static async Task<IReadOnlyList<SentPage>> SentAsync(Visitor visitor, IReadOnlyList<SentPage>? has = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/phone/pages");
        request.Headers.TryAddWithoutValidation("Kept-Pages", string.Join(' ', has?.Select(p => p.Tag) ?? []));
        using var answer = await visitor.SendAsync(request);
        answer.EnsureSuccessStatusCode();
        return JsonSerializer.Deserialize<Answer>(await answer.Content.ReadAsStringAsync(), JsonSerializerOptions.Web)!.Pages;
    }

    private static async Task<Dictionary<string, string>> PagesAsync(Visitor visitor) => (await SentAsync(visitor)).ToDictionary(p => p.Path, p => p.Html!);

    private sealed record Answer(IReadOnlyList<SentPage> Pages);

    private sealed record SentPage(string Path, string Tag, string? Until, string? Html);
}
