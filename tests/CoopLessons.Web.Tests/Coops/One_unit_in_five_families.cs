using System.Net;
using CoopLessons.Core.Sharing;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;
using static CoopLessons.Web.Tests.Coops.SharingOfTest;

namespace CoopLessons.Web.Tests.Coops;

[Collection(PlanningServer.Name)]
public class One_unit_in_five_families(TestServer server)
{
    [Fact]
    public async Task Keeps_what_each_changed_and_brings_in_the_rest_of_two_revisions()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var alder = coop.Leader;
        var families = new Dictionary<string, TestFamily>();
        foreach (var name in new[] { "Birch", "Cedar", "Dogwood", "Elder", "Fir" })
            families[name] = await coop.JoinAsync(name);
        var authors = await alder.TakeInAsync(Water);
        var there = await alder.PublishAsync(coop.Id, authors);
        Assert.Equal($"/coop/{coop.Id}/units/{authors}", there);

        // Each takes it up, and bends it.
        var units = new Dictionary<string, Guid>();
        foreach (var (name, family) in families)
            units[name] = await family.TakeUpAsync(coop.Id, authors);
        Assert.Equal(UnitHash.Of(await alder.BundleAsync(authors)), UnitHash.Of(await families["Fir"].BundleAsync(units["Fir"])));
        var art = await families["Birch"].SubjectAsync("art");
        await families["Birch"].WithDbAsync(async db =>
        {
            (await db.Units.Include(u => u.Subjects).SingleAsync(u => u.Id == units["Birch"])).LeaveOut(art);
            await db.SaveChangesAsync();
        });
        foreach (var code in new[] { "w2-06-the-river-bank", "w3-07-crow-and-pitcher" })
            await families["Cedar"].EditAsync(units["Cedar"], code, new() { ["HandsOnMinutes"] = "20" });
        await families["Dogwood"].EditAsync(units["Dogwood"], "w3-01-sand-filter", new() { ["Week"] = "4", ["Order"] = "20" });
        await families["Dogwood"].EditAsync(units["Dogwood"], "w3-02-aqueduct", new() { ["Week"] = "4", ["Order"] = "21" });
        await families["Elder"].EditAsync(units["Elder"], "w1-02-bag-on-the-window", new() { ["Does"] = "Hang a jar in the window instead, and look at it at noon." });

        // The second revision touches what Cedar, Dogwood and Elder changed, and something nobody did.
        await alder.EditAsync(authors, "w2-06-the-river-bank", new() { ["HandsOnMinutes"] = "55" });
        await alder.EditAsync(authors, "w3-01-sand-filter", new() { ["Order"] = "8" });
        await alder.EditAsync(authors, "w1-02-bag-on-the-window", new() { ["Does"] = "Seal the bag and tape it up where the sun comes in." });
        await alder.EditAsync(authors, "w4-04-floods", new() { ["HandsOnMinutes"] = "75" });
        await alder.PublishAsync(coop.Id, authors, "Longer by the river bank; the filter comes last.");

        Assert.Empty(await families["Birch"].AskedAsync(units["Birch"]));
        Assert.Equal(["“Reading: The river bank”: minutes 45 before, 20 here, 55 there".Replace("Reading: The river bank", (await alder.BundleAsync(authors)).In("w2-06-the-river-bank").Title, StringComparison.Ordinal)], await families["Cedar"].AskedAsync(units["Cedar"]));
        Assert.Single(await families["Dogwood"].AskedAsync(units["Dogwood"]));
        Assert.Single(await families["Elder"].AskedAsync(units["Elder"]));
        foreach (var (name, family) in families)
            await family.BringInAsync(units[name]);
        Assert.All(await Task.WhenAll(families.Select(f => f.Value.BundleAsync(units[f.Key]))), b => Assert.Equal(75, b.In("w4-04-floods").HandsOnMinutes));
        Assert.Equal(20, (await families["Cedar"].BundleAsync(units["Cedar"])).In("w2-06-the-river-bank").HandsOnMinutes);
        Assert.Equal((4, 20), Place(await families["Dogwood"].BundleAsync(units["Dogwood"]), "w3-01-sand-filter"));
        Assert.StartsWith("Hang a jar", (await families["Elder"].BundleAsync(units["Elder"])).In("w1-02-bag-on-the-window").Does, StringComparison.Ordinal);
        Assert.Equal("Art", (await families["Birch"].Guardian.GetAsync($"/units/{units["Birch"]}")).Text(".is-left-out th"));

        // What was left is asked again of the third; one takes theirs, one keeps its own, one writes a third wording.
        await alder.EditAsync(authors, "w2-06-the-river-bank", new() { ["HandsOnMinutes"] = "50" });
        await alder.EditAsync(authors, "w4-05-fruit-waters", new() { ["HandsOnMinutes"] = "30" });
        await alder.PublishAsync(coop.Id, authors, "The river bank as it went with us.");
        Assert.EndsWith("minutes 45 before, 20 here, 50 there", Assert.Single(await families["Cedar"].AskedAsync(units["Cedar"])), StringComparison.Ordinal);
        await families["Cedar"].BringInAsync(units["Cedar"], (0, "Theirs", null));
        await families["Dogwood"].BringInAsync(units["Dogwood"], (0, "Mine", null));
        await families["Elder"].BringInAsync(units["Elder"], (0, "OwnText", "Bag or jar: hang it where the sun comes in."));
        await families["Birch"].BringInAsync(units["Birch"]);
        await families["Fir"].BringInAsync(units["Fir"]);

        Assert.Equal(50, (await families["Cedar"].BundleAsync(units["Cedar"])).In("w2-06-the-river-bank").HandsOnMinutes);
        Assert.Equal(20, (await families["Cedar"].BundleAsync(units["Cedar"])).In("w3-07-crow-and-pitcher").HandsOnMinutes);
        Assert.Equal((4, 20), Place(await families["Dogwood"].BundleAsync(units["Dogwood"]), "w3-01-sand-filter"));
        Assert.Equal((4, 21), Place(await families["Dogwood"].BundleAsync(units["Dogwood"]), "w3-02-aqueduct"));
        Assert.Equal("Bag or jar: hang it where the sun comes in.", (await families["Elder"].BundleAsync(units["Elder"])).In("w1-02-bag-on-the-window").Does);
        Assert.Equal(UnitHash.Of(await alder.BundleAsync(authors)), UnitHash.Of(await families["Fir"].BundleAsync(units["Fir"])));
        Assert.True(await families["Birch"].FromDbAsync(db => db.Units.Where(u => u.Id == units["Birch"]).SelectMany(u => u.Subjects).AnyAsync(s => s.SubjectId == art && s.LeftOut)));
        // Nothing is asked twice.
        Assert.All(await Task.WhenAll(families.Select(f => f.Value.Guardian.OpenAsync($"/units/{units[f.Key]}/newer"))), a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));

        var page = await alder.Guardian.GetAsync(there);
        Assert.All(families.Keys, name => Assert.Contains($"{name}: revision 3, the newest", page.Text(".lines li"), StringComparison.Ordinal));
        Assert.Contains("Longer by the river bank", page.Text("#revisions"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Comes_with_the_days_on_which_it_stands_and_with_what_was_left_out()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        var authors = await coop.Leader.TakeInAsync(Water);
        await coop.Leader.PublishAsync(coop.Id, authors);
        var page = await birch.Guardian.GetAsync($"/coop/{coop.Id}/units/{authors}");
        var path = await birch.Guardian.SubmitAsync(page, new() { ["Input.Subjects"] = "science", ["Input.Starts"] = "2026-03-12" }, "[name='Input.UnitId']").RedirectedAsync();
        var unit = await birch.FromDbAsync(db => db.Units.Include(u => u.Subjects).SingleAsync(u => u.Id == IdIn(path)));
        Assert.Equal(new DateOnly(2026, 3, 9), unit.StartsOn);
        Assert.Equal([await birch.SubjectAsync("science")], unit.Subjects.Where(s => !s.LeftOut).Select(s => s.SubjectId));
    }

    [Fact]
    public async Task Is_published_by_those_who_teach_with_a_word_about_each_change()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        var songs = (await birch.MillSongsAsync()).Id;
        Assert.Contains("A leader can make you one", (await birch.Guardian.GetAsync($"/units/{songs}/share")).Text("main"), StringComparison.Ordinal);
        List<KeyValuePair<string, string>> Form(string token, int next) => [new("coopId", coop.Id.ToString()), new("next", next.ToString()), new("note", ""), new("__RequestVerificationToken", token)];
        var token = await birch.Guardian.TokenAsync();
        using (var refused = await birch.Guardian.PostAsync($"/units/{songs}/share?handler=Publish", Form(token, 1)))
            Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);

        await coop.PartAsync(birch, CoopPart.Teacher);
        await birch.PublishAsync(coop.Id, songs);
        // Sent twice it is one revision.
        using (var twice = await birch.Guardian.PostAsync($"/units/{songs}/share?handler=Publish", Form(token, 1)))
            Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        Assert.Contains("nothing changed since", (await birch.Guardian.GetAsync($"/units/{songs}/share")).Text("main"), StringComparison.Ordinal);

        await birch.EditAsync(songs, "wheel", new() { ["HandsOnMinutes"] = "25" });
        var page = await birch.Guardian.GetAsync($"/units/{songs}/share");
        Assert.Contains("minutes 40 → 25", page.Text(".lines"), StringComparison.Ordinal);
        var again = await birch.Guardian.SubmitAsync(page, new() { ["note"] = " " }, $"#note-{coop.Id}").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Contains("Say in a sentence what changed", again.Text($"#note-{coop.Id}-fault"), StringComparison.Ordinal);
        await birch.Guardian.SubmitAsync(page, new() { ["note"] = "Shorter.", ["next"] = "3" }, $"#note-{coop.Id}").AnsweredAsync(HttpStatusCode.Conflict);
        await birch.PublishAsync(coop.Id, songs, "Shorter.");
        Assert.Equal([1, 2], await server.FromDbAsync(birch.Id, db =>
        {
            db.Current.Enter(coop.Id);
            return db.SharedRevisions.OrderBy(r => r.Number).Select(r => r.Number).ToListAsync();
        }));
    }

    [Fact]
    public async Task Is_there_for_nobody_outside_and_stays_when_its_author_leaves()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var (birch, cedar, stranger) = (await coop.JoinAsync("Birch"), await coop.JoinAsync("Cedar"), await server.FamilyAsync("Juniper"));
        await coop.PartAsync(birch, CoopPart.Teacher);
        var songs = (await birch.MillSongsAsync()).Id;
        var there = await birch.PublishAsync(coop.Id, songs);
        var taken = await cedar.TakeUpAsync(coop.Id, songs);
        foreach (var path in new[] { there, $"/coop/{coop.Id}/units", $"/units/{songs}/share", $"/units/{songs}/newer", $"/units/{taken}/offer" })
        {
            using var answer = await stranger.Guardian.OpenAsync(path);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        await birch.Guardian.SubmitAsync(await birch.Guardian.GetAsync(coop.Home), null, "form[action*=Leave] button").RedirectedAsync();
        using (var gone = await birch.Guardian.OpenAsync(there))
            Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
        Assert.Contains("by Birch", (await cedar.Guardian.GetAsync(there)).Text(".sub"), StringComparison.Ordinal);
        Assert.Equal(songs, await birch.FromDbAsync(db => db.Units.Select(u => u.Id).SingleAsync()));

        // A leader may take out what its author no longer can; the family that has it keeps it.
        await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(there), null, "form[action*=Withdraw] button").RedirectedAsync();
        using (var gone = await cedar.Guardian.OpenAsync(there))
            Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
        Assert.Equal(3, (await cedar.BundleAsync(taken)).Activities.Count);
    }

    [Fact]
    public async Task Asks_once_more_where_it_was_changed_while_the_page_was_open()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        var songs = (await coop.Leader.MillSongsAsync()).Id;
        await coop.Leader.PublishAsync(coop.Id, songs);
        var taken = await birch.TakeUpAsync(coop.Id, songs);
        await birch.EditAsync(taken, "sing", new() { ["Does"] = "Hum it." });
        await coop.Leader.EditAsync(songs, "sing", new() { ["Does"] = "Sing it in two parts." });
        await coop.Leader.PublishAsync(coop.Id, songs, "In two parts.");
        var page = await birch.Guardian.GetAsync($"/units/{taken}/newer");
        await birch.EditAsync(taken, "wheel", new() { ["HandsOnMinutes"] = "10" });

        var again = await birch.Guardian.SubmitAsync(page, new() { ["Decisions[0].Choice"] = "OwnText", ["Decisions[0].Text"] = "Hum it in two parts." }, "[name=state]").AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Equal("Hum it in two parts.", again.QuerySelector("#own-0")!.TextContent);
        Assert.Contains("changed while this page was open", again.Text("main"), StringComparison.Ordinal);
        var empty = await birch.Guardian.SubmitAsync(again, new() { ["Decisions[0].Text"] = " " }, "[name=state]").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal("Write a text, or choose one of the two.", empty.Text("#own-0-fault"));
        await birch.Guardian.SubmitAsync(again, null, "[name=state]").RedirectedAsync();
        Assert.Equal("Hum it in two parts.", (await birch.BundleAsync(taken)).In("sing").Does);
    }

    private static (int Week, int Order) Place(Core.Units.UnitBundle unit, string code) => (unit.In(code).Week, unit.In(code).Order);
}
