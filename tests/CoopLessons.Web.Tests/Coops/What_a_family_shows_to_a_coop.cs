using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Names, ages, allergies and contacts: each by itself, and each can be taken back.</summary>
[Collection(SharedServer.Name)]
public sealed class What_a_family_shows_to_a_coop(TestServer server)
{
    [Fact]
    public async Task Is_nothing_until_it_says_so_and_then_that_alone()
    {
        var (coop, birch) = await TwoAsync();
        var seen = await SeenAsync(coop.Leader, coop);
        Assert.DoesNotContain("Linnet", seen, StringComparison.Ordinal);
        Assert.Contains("shows nothing yet", seen, StringComparison.Ordinal);

        await ShowAsync(birch, coop, new() { ["Input.Learners[0].Name"] = "true" });
        seen = await SeenAsync(coop.Leader, coop);
        Assert.Contains("Linnet", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("wheat", seen, StringComparison.Ordinal);
        Assert.DoesNotContain(", 8", seen, StringComparison.Ordinal);

        await ShowAsync(birch, coop, new() { ["Input.Learners[0].Age"] = "true", ["Input.Learners[0].Allergies"] = "true", ["Input.Contact"] = "Olive", ["Input.Telephone"] = "555 0142" });
        seen = await SeenAsync(coop.Leader, coop);
        Assert.Contains("Linnet, 8, allergies: wheat, kiwi", seen, StringComparison.Ordinal);
        Assert.Contains("Olive, 555 0142", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("2017", seen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_taken_back_with_its_tick_and_when_the_family_leaves()
    {
        var (coop, birch) = await TwoAsync();
        await ShowAsync(birch, coop, new() { ["Input.Learners[0].Name"] = "true", ["Input.Contact"] = "Olive" });
        await ShowAsync(birch, coop, new() { ["Input.Learners[0].Name"] = null, ["Input.Contact"] = "" });
        Assert.Contains("shows nothing yet", await SeenAsync(coop.Leader, coop), StringComparison.Ordinal);

        await ShowAsync(birch, coop, new() { ["Input.Learners[0].Name"] = "true", ["Input.Contact"] = "Olive" });
        using var left = await birch.Guardian.PostAsync(coop.Home + "?handler=Leave", [new("__RequestVerificationToken", await birch.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        Assert.DoesNotContain("Linnet", await SeenAsync(coop.Leader, coop), StringComparison.Ordinal);
        Assert.Equal(0, await server.FromDbAsync(coop.Leader.Id, db =>
        {
            db.Current.Enter(coop.Id);
            return Task.FromResult(db.ShownLearners.Count() + db.ShownContacts.Count());
        }));
    }

    [Fact]
    public async Task Follows_the_child_whose_allergies_change_and_ends_when_it_is_set_aside()
    {
        var (coop, birch) = await TwoAsync();
        await ShowAsync(birch, coop, new() { ["Input.Learners[0].Name"] = "true", ["Input.Learners[0].Allergies"] = "true" });
        var child = (await birch.FromDbAsync(db => Task.FromResult(db.Learners.Single(l => l.Name == "Linnet")))).Id;
        using var changed = await birch.Guardian.SubmitAsync(await birch.Guardian.GetAsync($"/family/learners/{child}"), new() { ["Input.AllergyNote"] = "kiwi and figs" });
        Assert.Equal(HttpStatusCode.Redirect, changed.StatusCode);
        Assert.Contains("kiwi and figs", await SeenAsync(coop.Leader, coop), StringComparison.Ordinal);

        var page = await birch.Guardian.GetAsync($"/family/learners/{child}");
        using var aside = await birch.Guardian.SubmitAsync(page, within: "form[action*='Aside'] button");
        Assert.Equal(HttpStatusCode.Redirect, aside.StatusCode);
        Assert.DoesNotContain("Linnet", await SeenAsync(coop.Leader, coop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_asked_of_its_own_children_alone_and_of_a_number_that_can_be_called()
    {
        var (coop, birch) = await TwoAsync();
        var alders = await CoopOfTest.ChildAsync(coop.Leader, "Wren", new(2018, 2, 1));
        var form = await birch.Guardian.GetAsync(coop.Home + "/shown");
        using var foreign = await birch.Guardian.SubmitAsync(form, new() { ["Input.Learners[0].LearnerId"] = alders.ToString(), ["Input.Learners[0].Name"] = "true" });
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
        using var odd = await birch.Guardian.SubmitAsync(form, new() { ["Input.Contact"] = "Olive", ["Input.Telephone"] = "javascript:1" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, odd.StatusCode);
        using var nobody = await birch.Guardian.SubmitAsync(form, new() { ["Input.Telephone"] = "555 0142" });
        Assert.Contains("Say whose number this is.", await nobody.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private async Task<(CoopOfTest Coop, TestFamily Birch)> TwoAsync()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        await CoopOfTest.ChildAsync(birch, "Linnet", new(2017, 5, 1));
        return (coop, birch);
    }

    private static async Task ShowAsync(TestFamily family, CoopOfTest coop, Dictionary<string, string?> fill)
    {
        using var shown = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(coop.Home + "/shown"), fill);
        Assert.Equal(coop.Home, shown.Headers.Location?.OriginalString);
    }

    private static async Task<string> SeenAsync(TestFamily family, CoopOfTest coop) =>
        string.Join(' ', (await family.Guardian.GetAsync(coop.Home)).QuerySelector("main")!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ,", ",", StringComparison.Ordinal);
}
