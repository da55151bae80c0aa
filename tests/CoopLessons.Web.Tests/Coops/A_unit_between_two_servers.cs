using System.IO.Compression;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using CoopLessons.Core.Sharing;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Printing;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;
using static CoopLessons.Web.Tests.Coops.SharingOfTest;

namespace CoopLessons.Web.Tests.Coops;

[Collection(PlanningServer.Name)]
public class A_unit_between_two_servers(TestServer server)
{
    [Fact]
    public async Task Comes_back_with_changes_on_both_sides_and_goes_out_again()
    {
        using var elsewhere = new OwnServer();
        var (alder, juniper) = (await server.FamilyAsync("Alder"), await elsewhere.FamilyAsync("Juniper"));
        var here = (await alder.MillSongsAsync()).Id;
        var there = IdIn(await juniper.BringPackAsync(await alder.PackAsync(here)).RedirectedAsync());
        Assert.Equal(UnitHash.Of(await alder.BundleAsync(here)), UnitHash.Of(await juniper.BundleAsync(there)));

        await juniper.EditAsync(there, "sing", new() { ["HandsOnMinutes"] = "10" });
        await juniper.EditAsync(there, "wheel", new() { ["Does"] = "Pour slowly." });
        await alder.EditAsync(here, "wheel", new() { ["Does"] = "Pour from a height." });
        await alder.EditAsync(here, "picture", new() { ["HandsOnMinutes"] = "40" });

        Assert.Equal($"/units/{here}/newer", await alder.BringPackAsync(await juniper.PackAsync(there)).RedirectedAsync());
        Assert.EndsWith("what you do was changed here and there, each in another way", Assert.Single(await alder.AskedAsync(here)), StringComparison.Ordinal);
        await alder.BringInAsync(here, (0, "Mine", null));
        var own = await alder.BundleAsync(here);
        Assert.Equal((10, 40, "Pour from a height."), (own.In("sing").HandsOnMinutes, own.In("picture").HandsOnMinutes, own.In("wheel").Does));

        // Back again: what the Junipers sent is known, so that nothing of it is asked; what was decided there comes in.
        await juniper.EditAsync(there, "sing", new() { ["Title"] = "Sing the mill song twice" });
        Assert.Equal($"/units/{there}/newer", await juniper.BringPackAsync(await alder.PackAsync(here)).RedirectedAsync());
        Assert.Empty(await juniper.AskedAsync(there));
        await juniper.BringInAsync(there);
        var theirs = await juniper.BundleAsync(there);
        Assert.Equal((10, 40, "Pour from a height.", "Sing the mill song twice"), (theirs.In("sing").HandsOnMinutes, theirs.In("picture").HandsOnMinutes, theirs.In("wheel").Does, theirs.In("sing").Title));
    }

    [Fact]
    public async Task Takes_along_what_is_printed_and_keeps_the_same_file()
    {
        using var elsewhere = new OwnServer();
        var alder = await PrintingFamily.MakeAsync(server);
        using (var brought = await alder.BringAsync(SamplePages.Sheet("mill-visit"), "record.pdf"))
            Assert.Equal(HttpStatusCode.Redirect, brought.StatusCode);
        var juniper = await elsewhere.FamilyAsync("Juniper");
        var there = IdIn(await juniper.BringPackAsync(await alder.Family.PackAsync(alder.Unit)).RedirectedAsync());
        var source = await juniper.FromDbAsync(db => db.PrintSources.SingleAsync());
        Assert.Equal((PrintingFamily.Record, "record.pdf", await alder.Family.FromDbAsync(db => db.PrintSources.Select(s => s.Hash).SingleAsync())), (source.Printable, source.FileName, source.Hash));
        Assert.Equal("grind", await juniper.FromDbAsync(db => db.Activities.Where(a => a.Id == source.ActivityId).Select(a => a.Code).SingleAsync()));
        Assert.NotEqual(alder.Unit, there);
    }

    [Fact]
    public async Task Is_refused_where_anything_of_it_was_changed_on_the_way()
    {
        var alder = await server.FamilyAsync("Alder");
        var birch = await server.FamilyAsync("Birch");
        var pack = await alder.PackAsync((await alder.MillSongsAsync()).Id);
        foreach (var (what, bend) in new (string, Func<string, string, string>)[]
        {
            ("the unit", (name, text) => name == "unit.json" ? text.Replace("Pour.", "Drink.", StringComparison.Ordinal) : text),
            ("the base", (name, text) => name == "base.json" ? text.Replace("\"handsOnMinutes\": 40", "\"handsOnMinutes\": 41", StringComparison.Ordinal) : text),
            ("who sent it", (name, text) => name == "pack.json" ? text.Replace("Alder", "Cedar", StringComparison.Ordinal) : text),
            ("its version", (name, text) => name == "pack.json" ? text.Replace("\"version\": 1", "\"version\": 9", StringComparison.Ordinal) : text),
            ("its shape", (name, text) => name == "pack.json" ? "[]" : text),
            ("a bundle that breaks a rule", (name, text) => name == "unit.json" ? text.Replace("\"week\": 2", "\"week\": 9", StringComparison.Ordinal) : text),
        })
        {
            var page = await birch.BringPackAsync(Bent(pack, bend)).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
            Assert.True(page.Fault("Bundle").Length > 20, what);
        }

        await birch.BringPackAsync(pack[..(pack.Length / 2)]).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal(0, await birch.FromDbAsync(db => db.Units.CountAsync()));
    }

    /// <summary>RFC 8785 leaves plain ASCII keys in order and without spaces, as this does for a manifest without numbers beyond integers.</summary>
    [Fact]
    public async Task Is_named_by_hashes_that_anybody_can_recompute()
    {
        var alder = await server.FamilyAsync("Alder");
        await using var zip = new ZipArchive(new MemoryStream(await alder.PackAsync((await alder.MillSongsAsync()).Id)));
        var manifest = JsonNode.Parse(Entry(zip, "pack.json"))!.AsObject();
        var said = (string)manifest["hash"]!;
        manifest.Remove("hash");
        var sorted = "{" + string.Join(",", manifest.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => $"\"{m.Key}\":{m.Value!.ToJsonString()}")) + "}";
        Assert.Equal(said, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(sorted))));
    }

    [Fact]
    public async Task Is_taken_in_once_however_often_the_form_is_sent()
    {
        var (alder, birch) = (await server.FamilyAsync("Alder"), await server.FamilyAsync("Birch"));
        var pack = await alder.PackAsync((await alder.MillSongsAsync()).Id);
        var page = await birch.Guardian.GetAsync("/units/take-in");
        Assert.Equal(await birch.BringPackAsync(pack, page).RedirectedAsync(), await birch.BringPackAsync(pack, page).RedirectedAsync());
        Assert.Equal(1, await birch.FromDbAsync(db => db.Units.CountAsync()));
    }

    private static byte[] Bent(byte[] pack, Func<string, string, string> bend)
    {
        using var made = new MemoryStream();
        using (var from = new ZipArchive(new MemoryStream(pack)))
        using (var to = new ZipArchive(made, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in from.Entries)
            {
                using var text = to.CreateEntry(entry.FullName).Open();
                text.Write(Encoding.UTF8.GetBytes(bend(entry.FullName, Entry(from, entry.FullName))));
            }
        }

        return made.ToArray();
    }

    private static string Entry(ZipArchive zip, string name)
    {
        using var reader = new StreamReader(zip.GetEntry(name)!.Open());
        return reader.ReadToEnd();
    }
}
