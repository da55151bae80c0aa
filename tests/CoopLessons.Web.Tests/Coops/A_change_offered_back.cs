using System.Net;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Coops;

[Collection(PlanningServer.Name)]
public class A_change_offered_back(TestServer server)
{
    private async Task<(CoopOfTest Coop, TestFamily Cedar, Guid Songs, Guid Taken)> BentAsync()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var cedar = await coop.JoinAsync("Cedar");
        var songs = (await coop.Leader.MillSongsAsync()).Id;
        await coop.Leader.PublishAsync(coop.Id, songs);
        var taken = await cedar.TakeUpAsync(coop.Id, songs);
        await cedar.EditAsync(taken, "sing", new() { ["HandsOnMinutes"] = "10" });
        await cedar.EditAsync(taken, "wheel", new() { ["Does"] = "Pour slowly." });
        return (coop, cedar, songs, taken);
    }

    private static async Task<string> OfferAsync(TestFamily family, Guid unit, string containing)
    {
        var page = await family.Guardian.GetAsync($"/units/{unit}/offer");
        var key = page.QuerySelectorAll("input[name=chosen]").Single(c => c.ParentElement!.TextContent.Contains(containing, StringComparison.Ordinal)).GetAttribute("value");
        return await family.Guardian.SubmitAsync(page, new() { ["chosen"] = key, ["why"] = "Halved it for the young ones." }, "#why").RedirectedAsync();
    }

    [Fact]
    public async Task Holds_what_was_ticked_and_nothing_else_of_the_familys()
    {
        var (coop, cedar, songs, taken) = await BentAsync();
        var there = await OfferAsync(cedar, taken, "minutes 20 → 10");
        Assert.Equal($"/coop/{coop.Id}/units/{songs}", there);
        var list = await coop.Leader.Guardian.GetAsync(there);
        var look = await coop.Leader.Guardian.GetAsync(list.QuerySelector("#offers a")!.GetAttribute("href")!);
        Assert.Contains("minutes 20 → 10", look.Text("main"), StringComparison.Ordinal);
        Assert.DoesNotContain("Turn a wheel", look.Text("main"), StringComparison.Ordinal);

        Assert.Equal($"/units/{songs}/share", await coop.Leader.Guardian.SubmitAsync(look, null, "#word").RedirectedAsync());
        var own = await coop.Leader.BundleAsync(songs);
        Assert.Equal((10, "Pour."), (own.In("sing").HandsOnMinutes, own.In("wheel").Does));
        Assert.Contains("taken", (await cedar.Guardian.GetAsync(there)).Text("#offers .row-side"), StringComparison.Ordinal);

        // With the next revision the family has nothing left to say of it.
        await coop.Leader.PublishAsync(coop.Id, songs, "Shorter for the young ones, from Cedar.");
        Assert.Empty(await cedar.AskedAsync(taken));
        await cedar.BringInAsync(taken);
        Assert.DoesNotContain("minutes", (await cedar.Guardian.GetAsync($"/units/{taken}/offer")).Text("fieldset"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_declined_with_a_word_and_asked_no_more()
    {
        var (coop, cedar, songs, taken) = await BentAsync();
        var there = await OfferAsync(cedar, taken, "what you do");
        var path = (await coop.Leader.Guardian.GetAsync(there)).QuerySelector("#offers a")!.GetAttribute("href")!;
        var look = await coop.Leader.Guardian.GetAsync(path);
        await coop.Leader.Guardian.SubmitAsync(look, new() { ["decline"] = "true", ["word"] = "With us it must splash." }, "#word").RedirectedAsync();
        Assert.Equal("Pour.", (await coop.Leader.BundleAsync(songs)).In("wheel").Does);
        var list = await cedar.Guardian.GetAsync(there);
        Assert.Contains("not taken", list.Text("#offers"), StringComparison.Ordinal);
        Assert.Contains("With us it must splash.", list.Text("#offers"), StringComparison.Ordinal);
        Assert.Equal(there + "#offers", await coop.Leader.Guardian.SubmitAsync(look, null, "#word").RedirectedAsync());
    }

    [Fact]
    public async Task Collides_with_what_the_author_changed_meanwhile_and_is_decided_there()
    {
        var (coop, cedar, songs, taken) = await BentAsync();
        var there = await OfferAsync(cedar, taken, "what you do");
        await coop.Leader.EditAsync(songs, "wheel", new() { ["Does"] = "Pour from a height." });
        var look = await coop.Leader.Guardian.GetAsync((await coop.Leader.Guardian.GetAsync(there)).QuerySelector("#offers a")!.GetAttribute("href")!);
        Assert.Single(look.QuerySelectorAll(".collided"));
        await coop.Leader.Guardian.SubmitAsync(look, new() { ["Decisions[0].Choice"] = "OwnText", ["Decisions[0].Text"] = "Pour slowly, from a height." }, "#word").RedirectedAsync();
        Assert.Equal("Pour slowly, from a height.", (await coop.Leader.BundleAsync(songs)).In("wheel").Does);
    }

    [Fact]
    public async Task Is_answered_by_its_author_alone()
    {
        var (coop, cedar, _, taken) = await BentAsync();
        var birch = await coop.JoinAsync("Birch");
        var there = await OfferAsync(cedar, taken, "what you do");
        var path = (await birch.Guardian.GetAsync(there)).QuerySelector("#offers a")!.GetAttribute("href")!;
        var look = await birch.Guardian.GetAsync(path);
        Assert.Null(look.QuerySelector("#word"));
        using var refused = await birch.Guardian.PostAsync(path, [new("decline", "true"), new("__RequestVerificationToken", await birch.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
    }

    [Fact]
    public async Task Says_what_is_offered_and_why()
    {
        var (_, cedar, _, taken) = await BentAsync();
        var again = await cedar.Guardian.SubmitAsync(await cedar.Guardian.GetAsync($"/units/{taken}/offer"), null, "#why").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal(("Tick what you offer.", "Say why, so that the author can weigh it."), (again.Text("#chosen-fault"), again.Text("#why-fault")));
    }
}
