using System.Net;
using System.Net.Http.Headers;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Evidence;

[Collection(PlanningServer.Name)]
public sealed class Pieces_shown_and_changed(TestServer server)
{
    [Fact]
    public async Task Are_served_as_files_that_are_nobodys_page()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var photo = await family.KeptAsync(SamplePhotos.Photo());
        var sound = await family.KeptAsync(SampleRecordings.Wav(), "song.wav");
        var video = await family.KeptAsync(SampleRecordings.Video(SampleRecordings.Keyed()), "mill.mov");
        foreach (var (path, type, disposition) in new[]
        {
            ($"/evidence/{photo.Id}/file", "image/jpeg", "inline"), ($"/evidence/{photo.Id}/small", "image/jpeg", "inline"),
            ($"/evidence/{sound.Id}/file", "audio/wav", "attachment"), ($"/evidence/{video.Id}/file", "video/mp4", "attachment"),
        })
        {
            using var answer = await family.Guardian.OpenAsync(path);
            Assert.Equal((type, disposition), (answer.Content.Headers.ContentType!.MediaType, answer.Content.Headers.ContentDisposition!.DispositionType));
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("default-src 'none'; sandbox; frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single());
            Assert.Equal((true, false), (answer.Headers.CacheControl!.Private, answer.Headers.CacheControl.NoStore));
            Assert.Contains("immutable", answer.Headers.CacheControl.ToString(), StringComparison.Ordinal);

            using var known = new HttpRequestMessage(HttpMethod.Get, path);
            known.Headers.IfNoneMatch.Add(answer.Headers.ETag!);
            using var same = await family.Guardian.SendAsync(known);
            Assert.Equal(HttpStatusCode.NotModified, same.StatusCode);
        }

        // A player asks for a piece of it first.
        using var part = new HttpRequestMessage(HttpMethod.Get, $"/evidence/{video.Id}/file");
        part.Headers.Range = new RangeHeaderValue(4, 7);
        using var begin = await family.Guardian.SendAsync(part);
        Assert.Equal((HttpStatusCode.PartialContent, "ftyp"), (begin.StatusCode, await begin.Content.ReadAsStringAsync()));
        using var none = await family.Guardian.OpenAsync($"/evidence/{sound.Id}/small");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task Are_shown_large_with_their_caption_as_what_stands_for_them()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var photo = await family.KeptAsync(SamplePhotos.Photo(), fill: [("Caption", "My \"loaf\" <3")]);
        var video = await family.KeptAsync(SampleRecordings.Video(), "mill.mp4");
        var sound = await family.KeptAsync(SampleRecordings.Mp3(), "song.mp3");

        var page = await family.Guardian.GetAsync($"/evidence/{photo.Id}");
        Assert.Equal("My \"loaf\" <3", page.QuerySelector("figure img")!.GetAttribute("alt"));
        Assert.Contains("taken at 9:41", page.QuerySelector("dl.facts")!.TextContent, StringComparison.Ordinal);
        using var answer = await family.Guardian.OpenAsync($"/evidence/{video.Id}");
        Assert.Contains("media-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.NotNull((await Visitor.ParseAsync(answer)).QuerySelector("figure video[controls][aria-label]"));
        var heard = await family.Guardian.GetAsync($"/evidence/{sound.Id}");
        Assert.NotNull(heard.QuerySelector("figure audio[controls][aria-label]"));
        Assert.Contains("kept as they came", heard.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_described_otherwise_and_never_over_a_newer_word()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var piece = await family.KeptAsync(SamplePhotos.Photo());
        var (one, two) = (await family.Guardian.GetAsync($"/evidence/{piece.Id}"), await family.Guardian.GetAsync($"/evidence/{piece.Id}"));
        using var saved = await family.Guardian.SubmitAsync(one, new() { ["Caption"] = "The crust", ["SubjectId"] = family.Science.ToString(), ["SetAside"] = "true" }, within: "#Caption", more: [new("Learners", family.Heron.ToString())]);
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        using var late = await family.Guardian.SubmitAsync(two, new() { ["Caption"] = "The crumb" }, within: "#Caption");
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Equal("The crumb", (await Visitor.ParseAsync(late)).QuerySelector("#Caption")!.GetAttribute("value"));

        var now = Assert.Single(await family.PiecesAsync());
        Assert.Equal(("The crust", family.Science, true), (now.Caption, now.SubjectId, now.SetAside));
        Assert.Equal([family.Heron], now.Learners);
        using var long200 = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/evidence/{piece.Id}"), new() { ["Caption"] = new string('a', 201) }, within: "#Caption");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, long200.StatusCode);
    }

    [Fact]
    public async Task Stand_in_a_gallery_by_month_subject_and_whether_they_are_set_aside()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var (wren, science) = (("Learners", family.Wren.ToString()), ("SubjectId", family.Science.ToString()));
        var march = await family.KeptAsync(SamplePhotos.Photo(), fill: [wren, science, ("Caption", "The oven"), ("SetAside", "true")]);
        var january = await family.KeptAsync(SamplePhotos.WebP(), fill: [wren, ("Date", "2026-01-20"), ("Caption", "Snow")]);
        var herons = await family.KeptAsync(SampleRecordings.Wav(), "song.wav", fill: [("Learners", family.Heron.ToString())]);

        var gallery = await family.Guardian.GetAsync($"/records/gallery/{family.Wren}");
        Assert.Equal(["March 2026", "January 2026"], gallery.QuerySelectorAll(".sheet > h2").Select(h => h.TextContent));
        Assert.Equal([march.Id, january.Id], Ids(gallery));
        Assert.Equal([march.Id], Ids(await family.Guardian.GetAsync($"/records/gallery/{family.Wren}?subject={family.Science}")));
        Assert.Equal([march.Id], Ids(await family.Guardian.GetAsync($"/records/gallery/{family.Wren}?aside=true")));
        Assert.Equal([january.Id], Ids(await family.Guardian.GetAsync($"/records/gallery/{family.Wren}?until=2026-02")));
        Assert.Equal([herons.Id], Ids(await family.Guardian.GetAsync($"/records/gallery/{family.Heron}")));
        foreach (var wrong in new[] { "?until=soon", "?subject=nothing", $"?subject={Guid.CreateVersion7()}" })
        {
            using var answer = await family.Guardian.OpenAsync($"/records/gallery/{family.Wren}{wrong}");
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Are_removed_can_be_brought_back_for_thirty_days_and_are_gone_with_their_files_after_that()
    {
        using var own = new OwnServer();
        var family = await EvidenceFamily.MakeAsync(own);
        var piece = await family.KeptAsync(SamplePhotos.Photo(), fill: [("Learners", family.Wren.ToString())]);
        await RemoveAsync(family, piece);
        Assert.Empty(Ids(await family.Guardian.GetAsync($"/evidence/day/{piece.Date:yyyy-MM-dd}")));
        var gallery = await family.Guardian.GetAsync($"/records/gallery/{family.Wren}");
        Assert.Equal([piece.Id], Ids(gallery));
        Assert.NotNull(gallery.QuerySelector($"details a[href='/evidence/{piece.Id}']"));

        using var back = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/evidence/{piece.Id}"), within: "form[action$='BringBack']");
        Assert.Equal([piece.Id], Ids(await family.Guardian.GetAsync($"/evidence/day/{piece.Date:yyyy-MM-dd}")));
        // A test that names it keeps no file alive, and does not stand in its way.
        await family.Family.WithDbAsync(async db =>
        {
            db.Add(new Assessment(Guid.CreateVersion7(), family.Wren, new AssessmentFacts(TestServer.Today, AssessmentKind.NormReferencedTest, "Spring battery", "Hazel", "", "", [], piece.Id)));
            await db.SaveChangesAsync();
        });
        await RemoveAsync(family, piece);
        own.Clock.Advance(Piece.WayBack - TimeSpan.FromHours(1));
        await TidyAsync(family);
        Assert.Single(await family.PiecesAsync());
        own.Clock.Advance(TimeSpan.FromHours(2));
        await TidyAsync(family);
        Assert.Empty(await family.PiecesAsync());
        Assert.Empty(family.OnDisk());
        Assert.Null((await family.Family.FromDbAsync(db => db.Assessments.SingleAsync())).PieceId);
    }

    [Fact]
    public async Task Of_another_family_are_nowhere()
    {
        var (mine, other) = (await EvidenceFamily.MakeAsync(server), await EvidenceFamily.MakeAsync(server, "Birch"));
        var piece = await other.KeptAsync(SamplePhotos.Photo());
        foreach (var path in new[] { $"/evidence/{piece.Id}", $"/evidence/{piece.Id}/file", $"/evidence/{piece.Id}/small", $"/evidence/{piece.Id}/original", $"/evidence/take/{piece.Id}", $"/evidence/new?entry={other.Entry}", $"/records/gallery/{other.Wren}" })
        {
            using var answer = await mine.Guardian.OpenAsync(path);
            Assert.True(answer.StatusCode == HttpStatusCode.NotFound, $"{path} answered {(int)answer.StatusCode}");
        }

        var token = await mine.Guardian.TokenAsync("/evidence/new");
        foreach (var handler in new[] { "", "?handler=Remove", "?handler=BringBack" })
        {
            using var answer = await mine.Guardian.PostAsync($"/evidence/{piece.Id}{handler}", [new("__RequestVerificationToken", token)]);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        Assert.Null(Assert.Single(await other.PiecesAsync()).RemovedAt);
    }

    [Fact]
    public async Task Of_the_day_are_a_helpers_to_see_and_their_own_to_change()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var helper = await server.HelperAsync(family.Family);
        var today = await family.KeptAsync(SamplePhotos.Photo(), fill: [("Date", "2026-03-12")]);
        var before = await family.KeptAsync(SamplePhotos.WebP(), fill: [("Date", "2026-03-11")]);
        var own = await family.KeptAsync(SamplePhotos.Photo("2026:03:09 10:00:00"), who: helper);

        Assert.Equal("Basil", own.BroughtBy);
        Assert.Equal([today.Id], Ids(await helper.GetAsync("/evidence/day")));
        Assert.Equal([own.Id], Ids(await helper.GetAsync("/evidence/day/2026-03-09")));
        Assert.Empty(Ids(await helper.GetAsync("/evidence/day/2026-03-11")));
        Assert.Null((await helper.GetAsync($"/evidence/{today.Id}")).QuerySelector("main form[method=post] #Caption"));
        Assert.NotNull((await helper.GetAsync($"/evidence/{own.Id}")).QuerySelector("#Caption"));
        foreach (var path in new[] { $"/evidence/{before.Id}", $"/evidence/{before.Id}/file", $"/evidence/{before.Id}/small" })
        {
            using var closed = await helper.OpenAsync(path);
            Assert.Equal(HttpStatusCode.NotFound, closed.StatusCode);
        }

        using var removed = await helper.PostAsync($"/evidence/{today.Id}?handler=Remove", [new("__RequestVerificationToken", await helper.TokenAsync("/evidence/new"))]);
        Assert.Equal(HttpStatusCode.NotFound, removed.StatusCode);
        using var gallery = await helper.OpenAsync($"/records/gallery/{family.Wren}");
        Assert.Equal(HttpStatusCode.Forbidden, gallery.StatusCode);
    }

    private static async Task RemoveAsync(EvidenceFamily family, Piece piece)
    {
        using var removed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/evidence/{piece.Id}"), within: "form[action$='Remove']");
        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
    }

    // What stands in the file system is as old as the machine's clock says; the sweep looks at rows alone here.
    private static Task TidyAsync(EvidenceFamily family) => family.Family.WithDbAsync(async db =>
    {
        var shelf = family.Family.Server.Services.GetRequiredService<FileShelf>();
        using var turn = await shelf.TurnAsync(default);
        await shelf.TidyAsync(db, family.Family.Server.Clock.GetUtcNow().UtcDateTime, default);
    });

    private static IEnumerable<Guid> Ids(AngleSharp.Dom.IDocument page) =>
        page.QuerySelectorAll(".pieces a[href^='/evidence/']").Select(a => Guid.Parse(a.GetAttribute("href")!["/evidence/".Length..]));
}
