using System.Net;
using CoopLessons.Data.Coops;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Founding, joining by a link, parts, and leaving.</summary>
[Collection(SharedServer.Name)]
public sealed class A_coop_of_several_families(TestServer server)
{
    [Fact]
    public async Task Is_led_by_the_family_that_founds_it_and_joined_by_a_link_that_opens_once()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var link = await coop.LinkAsync("Birch");
        var (birch, cedar) = (await server.FamilyAsync("Birch"), await server.FamilyAsync("Cedar"));
        var invited = await birch.Guardian.GetAsync(link);
        Assert.Equal("The Alder family invites you to Millrace", invited.QuerySelector("h1")!.TextContent);
        using var joined = await birch.Guardian.SubmitAsync(invited);
        Assert.Equal(coop.Home, joined.Headers.Location!.OriginalString);

        using var late = await cedar.Guardian.OpenAsync(link);
        Assert.Equal(HttpStatusCode.Gone, late.StatusCode);
        using var shut = await cedar.Guardian.OpenAsync(coop.Home);
        Assert.Equal(HttpStatusCode.NotFound, shut.StatusCode);
        Assert.Equal([("Alder", CoopPart.Leader), ("Birch", CoopPart.Member)], (await coop.PartsAsync()).Select(f => (f.Name, f.Part)));
        Assert.Contains("2 families", (await birch.Guardian.GetAsync("/coop")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_founded_once_however_often_the_form_is_sent()
    {
        var family = await server.FamilyAsync();
        var form = await family.Guardian.GetAsync("/coop/found");
        for (var i = 0; i < 3; i++)
        {
            using var founded = await family.Guardian.SubmitAsync(form, new() { ["Input.Name"] = "Millrace" });
            Assert.Equal(HttpStatusCode.Redirect, founded.StatusCode);
        }

        Assert.Single((await family.Guardian.GetAsync("/coop")).QuerySelectorAll("main .row-link"));
        using var nameless = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/coop/found"), new() { ["Input.Name"] = " " });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, nameless.StatusCode);
    }

    [Fact]
    public async Task Lets_one_family_in_where_several_open_a_link_in_the_same_moment()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var link = await coop.LinkAsync("Birch");
        var families = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => server.FamilyAsync("Birch")));
        var forms = await Task.WhenAll(families.Select(f => f.Guardian.GetAsync(link)));
        var answers = await Task.WhenAll(families.Zip(forms, (f, form) => f.Guardian.SubmitAsync(form)));
        Assert.Equal(1, answers.Count(a => a.StatusCode == HttpStatusCode.Redirect));
        Assert.Equal(3, answers.Count(a => a.StatusCode == HttpStatusCode.Gone));
        Assert.Equal(2, (await coop.PartsAsync()).Count);
    }

    [Fact]
    public async Task Takes_a_link_back()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var link = await coop.LinkAsync("Birch");
        var page = await coop.Leader.Guardian.GetAsync(coop.Home + "/families");
        using var withdrawn = await coop.Leader.Guardian.SubmitAsync(page, within: "[name='invitationId']");
        Assert.Equal(HttpStatusCode.Redirect, withdrawn.StatusCode);
        var birch = await server.FamilyAsync("Birch");
        using var shut = await birch.Guardian.OpenAsync(link);
        Assert.Equal(HttpStatusCode.Gone, shut.StatusCode);
        using var never = await birch.Guardian.OpenAsync("/coop/join/" + new string('0', 64));
        Assert.Equal(HttpStatusCode.NotFound, never.StatusCode);
    }

    [Fact]
    public async Task Opens_to_leaders_alone_what_only_leaders_do()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        foreach (var path in new[] { "/families", "/describe" })
        {
            using var refused = await birch.Guardian.OpenAsync(coop.Home + path);
            Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        }

        await coop.PartAsync(birch, CoopPart.Leader);
        Assert.NotNull((await birch.Guardian.GetAsync(coop.Home + "/families")).QuerySelector("#invite-name"));
    }

    [Fact]
    public async Task Ends_the_open_links_of_a_family_that_leads_no_longer()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var (birch, link) = (await coop.JoinAsync("Birch"), await coop.LinkAsync("Cedar"));
        await coop.PartAsync(birch, CoopPart.Leader);
        await coop.PartAsync(coop.Leader, CoopPart.Teacher);
        var cedar = await server.FamilyAsync("Cedar");
        using var shut = await cedar.Guardian.OpenAsync(link);
        Assert.Equal(HttpStatusCode.Gone, shut.StatusCode);
    }

    [Fact]
    public async Task Is_never_without_a_leader()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        using var left = await coop.Leader.Guardian.PostAsync(coop.Home + "?handler=Leave", [await TokenAsync(coop.Leader)]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, left.StatusCode);
        Assert.Contains("The last leader stays", await left.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var down = await coop.Leader.Guardian.PostAsync(coop.Home + "/families?handler=Part", [new("memberId", coop.Leader.Id.ToString()), new("part", "Member"), await TokenAsync(coop.Leader)]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, down.StatusCode);

        await coop.PartAsync(birch, CoopPart.Leader);
        using var now = await coop.Leader.Guardian.PostAsync(coop.Home + "?handler=Leave", [await TokenAsync(coop.Leader)]);
        Assert.Equal("/coop", now.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Is_shut_at_once_for_a_family_that_leaves_or_is_taken_out_and_opens_again_by_a_new_link()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var (birch, cedar) = (await coop.JoinAsync("Birch"), await coop.JoinAsync("Cedar"));
        using var left = await birch.Guardian.PostAsync(coop.Home + "?handler=Leave", [await TokenAsync(birch)]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        using var out1 = await coop.Leader.Guardian.PostAsync(coop.Home + "/families?handler=TakeOut", [new("memberId", cedar.Id.ToString()), await TokenAsync(coop.Leader)]);
        Assert.Equal(HttpStatusCode.Redirect, out1.StatusCode);
        foreach (var family in new[] { birch, cedar })
        {
            foreach (var path in new[] { "", "/shown" })
            {
                using var shut = await family.Guardian.OpenAsync(coop.Home + path);
                Assert.Equal(HttpStatusCode.NotFound, shut.StatusCode);
            }
        }

        using var back = await birch.Guardian.SubmitAsync(await birch.Guardian.GetAsync(await coop.LinkAsync("Birch")));
        Assert.Equal(coop.Home, back.Headers.Location!.OriginalString);
        Assert.Equal(["Alder", "Birch"], (await coop.PartsAsync()).Where(f => f.LeftAt is null).Select(f => f.Name));
    }

    [Fact]
    public async Task Ends_with_its_last_family()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var wren = await CoopOfTest.ChildAsync(coop.Leader, "Wren", new(2017, 5, 1));
        using var ended = await coop.Leader.Guardian.PostAsync(coop.Home + "?handler=Leave", [await TokenAsync(coop.Leader)]);
        Assert.Equal("/coop", ended.Headers.Location!.OriginalString);
        Assert.Empty(await coop.PartsAsync());
        Assert.NotNull(await coop.Leader.FromDbAsync(db => db.Learners.FindAsync(coop.Leader.Id, wren).AsTask()));
    }

    private static async Task<KeyValuePair<string, string>> TokenAsync(TestFamily family) => new("__RequestVerificationToken", await family.Guardian.TokenAsync());
}
