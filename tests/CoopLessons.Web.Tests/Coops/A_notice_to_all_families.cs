using System.Net;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.News;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Who teaches or leads writes; all read; nothing is edited.</summary>
[Collection(SharedServer.Name)]
public sealed class A_notice_to_all_families(TestServer server)
{
    [Fact]
    public async Task Is_new_for_the_others_until_they_look_and_never_for_its_writer()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        await WriteAsync(coop, "Bring boots", "The meadow is wet.");
        Assert.Contains("1 new", await MainAsync(birch, coop.Home), StringComparison.Ordinal);
        Assert.Contains("1 new notice", await MainAsync(birch, "/coop"), StringComparison.Ordinal);
        Assert.Contains("nothing new", await MainAsync(coop.Leader, coop.Home), StringComparison.Ordinal);

        var list = await birch.Guardian.GetAsync(coop.Home + "/news");
        Assert.Contains("new", list.QuerySelector("main .row-link .tag")!.TextContent, StringComparison.Ordinal);
        var notice = await birch.Guardian.GetAsync(list.QuerySelector("main .row-link")!.GetAttribute("href")!);
        Assert.Equal("Bring boots", notice.QuerySelector("h1")!.TextContent);
        Assert.Contains("The meadow is wet.", notice.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("the Alder family", notice.QuerySelector(".sub")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("nothing new", await MainAsync(birch, coop.Home), StringComparison.Ordinal);
        Assert.Null((await birch.Guardian.GetAsync(coop.Home + "/news")).QuerySelector("main .row-link .tag"));
    }

    [Fact]
    public async Task Is_not_new_for_a_family_that_joined_after_it()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        await coop.WithDbAsync(async db =>
        {
            db.CoopNotices.Add(new CoopNotice(coop.Id, Guid.CreateVersion7(), await db.CoopFamilies.SingleAsync(), "Bring boots", "", TestServer.Start.UtcDateTime.AddDays(-1)));
            await db.SaveChangesAsync();
        });
        var birch = await coop.JoinAsync("Birch");
        Assert.Contains("nothing new", await MainAsync(birch, coop.Home), StringComparison.Ordinal);
        Assert.Contains("Bring boots", await MainAsync(birch, coop.Home + "/news"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_there_once_however_often_its_page_is_sent()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var page = await coop.Leader.Guardian.GetAsync(coop.Home + "/news");
        var answers = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => coop.Leader.Guardian.SubmitAsync(page, new() { ["Input.Title"] = "Bring boots" })));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Single((await coop.Leader.Guardian.GetAsync(coop.Home + "/news")).QuerySelectorAll("main .row-link"));
    }

    [Fact]
    public async Task Is_written_by_those_who_teach_or_lead_and_by_nobody_else()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        Assert.Null((await birch.Guardian.GetAsync(coop.Home + "/news")).QuerySelector("main form"));
        using var refused = await birch.Guardian.PostAsync(coop.Home + "/news", [new("Input.Title", "Bring boots"), await TokenAsync(birch)]);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        await coop.PartAsync(birch, CoopPart.Teacher);
        using var written = await birch.Guardian.SubmitAsync(await birch.Guardian.GetAsync(coop.Home + "/news"), new() { ["Input.Title"] = "Bring boots" });
        Assert.Equal(HttpStatusCode.Redirect, written.StatusCode);
        Assert.Contains("the Birch family", await MainAsync(coop.Leader, coop.Home + "/news"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_asked_for_once_more_where_it_says_nothing_and_keeps_what_was_typed()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var page = await coop.Leader.Guardian.GetAsync(coop.Home + "/news");
        using var answer = await coop.Leader.Guardian.SubmitAsync(page, new() { ["Input.Title"] = " ", ["Input.Text"] = "The meadow is wet." });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var again = await Visitor.ParseAsync(answer);
        Assert.Contains("The meadow is wet.", again.QuerySelector("textarea")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Say in a few words what it is about.", again.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using var foreign = await coop.Leader.Guardian.SubmitAsync(page, new() { ["Input.Title"] = "Boots" }, more: [new("Input.MeetingId", Guid.NewGuid().ToString())]);
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
    }

    [Fact]
    public async Task Can_be_withdrawn_by_its_writer_alone_and_leaves_no_word()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        await coop.PartAsync(birch, CoopPart.Leader);
        await WriteAsync(coop, "Bring boots", "The meadow is wet.");
        var path = (await birch.Guardian.GetAsync(coop.Home + "/news")).QuerySelector("main .row-link")!.GetAttribute("href")!;
        using var refused = await birch.Guardian.PostAsync(path + "?handler=Withdraw", [await TokenAsync(birch)]);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);

        using var withdrawn = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(path), within: "details.more");
        Assert.Equal(HttpStatusCode.Redirect, withdrawn.StatusCode);
        foreach (var page in new[] { path, coop.Home + "/news" })
        {
            var text = await MainAsync(birch, page);
            Assert.Contains("ithdr", text, StringComparison.Ordinal);
            Assert.Contains("Alder family", text, StringComparison.Ordinal);
            Assert.DoesNotContain("boots", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("meadow", text, StringComparison.Ordinal);
        }
    }

    private static async Task WriteAsync(CoopOfTest coop, string title, string text)
    {
        using var written = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(coop.Home + "/news"), new() { ["Input.Title"] = title, ["Input.Text"] = text });
        Assert.Equal(coop.Home + "/news", written.Headers.Location!.OriginalString);
    }

    private static async Task<string> MainAsync(TestFamily family, string path) => (await family.Guardian.GetAsync(path)).QuerySelector("main")!.TextContent;

    private static async Task<KeyValuePair<string, string>> TokenAsync(TestFamily family) => new("__RequestVerificationToken", await family.Guardian.TokenAsync());
}
