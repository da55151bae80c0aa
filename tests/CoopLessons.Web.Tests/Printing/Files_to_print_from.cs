using System.Net;
using System.Text;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using Microsoft.EntityFrameworkCore;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Printing;

[Collection(PlanningServer.Name)]
public sealed class Files_to_print_from(TestServer server)
{
    [Fact]
    public async Task Are_asked_for_by_the_activity_and_brought_on_its_page()
    {
        var family = await PrintingFamily.MakeAsync(server);
        var activity = await family.Guardian.GetAsync($"/units/{family.Unit}/activities/{family.Grind}");
        Assert.Contains("no file yet", activity.Body!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(activity.QuerySelector($"a[href='{family.Prints}']"));

        using var answer = await family.BringAsync(SamplePages.Sheet("mill-visit"), "mill visit.pdf");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await family.Guardian.GetAsync(family.Prints);
        Assert.Contains("mill visit.pdf", page.QuerySelector("#print-0")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("2 pages", page.QuerySelector("#print-0")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("There is no file for it yet.", page.QuerySelector("#print-1")!.TextContent, StringComparison.Ordinal);
        Assert.Single(await family.OnShelfAsync());
    }

    [Fact]
    public async Task Are_known_by_what_is_in_them_and_not_by_their_name()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var pdf = await family.BringAsync(SamplePages.Sheet("mill-visit"), "photo.jpg");
        using var picture = await family.BringAsync(SamplePages.Picture(SKEncodedImageFormat.Png), "..\\..\\etc/../\u202Emap\u0007.pdf", PrintingFamily.Map);

        var sources = await family.Family.FromDbAsync(db => db.PrintSources.OrderBy(s => s.Printable).Select(s => s.FileName).ToListAsync());
        Assert.Equal(["map.png", "photo.pdf"], sources);
        Assert.Equal([StoredKind.Pdf, StoredKind.Png], await family.Family.FromDbAsync(db => db.StoredFiles.OrderBy(f => f.Kind).Select(f => f.Kind).ToListAsync()));
    }

    [Fact]
    public async Task Are_given_back_as_they_came_to_be_saved_and_never_shown_in_place()
    {
        var family = await PrintingFamily.MakeAsync(server);
        var bytes = SamplePages.Sheet("mill-visit");
        using var brought = await family.BringAsync(bytes, "Ünsere mill.pdf");
        var link = (await family.Guardian.GetAsync(family.Prints)).QuerySelector("#print-0 a[href$='/file']")!.GetAttribute("href")!;
        using var answer = await family.Guardian.OpenAsync(link);

        Assert.Equal(bytes, await answer.Content.ReadAsByteArrayAsync());
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal("Ünsere mill.pdf", answer.Content.Headers.ContentDisposition.FileNameStar);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task Lose_what_a_photograph_says_of_its_place_and_stand_upright()
    {
        var family = await PrintingFamily.MakeAsync(server);
        var photo = SamplePages.Sideways();
        Assert.True(photo.AsSpan().IndexOf("Exif"u8) > 0);
        using var brought = await family.BringAsync(photo, "photo.jpg");

        var kept = await File.ReadAllBytesAsync(family.PathOf(Assert.Single(await family.OnShelfAsync())));
        Assert.True(kept.AsSpan().IndexOf("Exif"u8) < 0);
        using var upright = SKBitmap.Decode(kept);
        Assert.Equal((200, 300), (upright.Width, upright.Height));
        // What stood at the top left stands at the top right.
        Assert.True(upright.GetPixel(150, 20) is { Red: > 150, Green: < 90 });
    }

    [Fact]
    public async Task Lie_on_the_shelf_once_however_often_they_are_brought_and_go_with_their_last_use()
    {
        var family = await PrintingFamily.MakeAsync(server);
        var bytes = SamplePages.Sheet("gluten-test");
        foreach (var printable in new[] { PrintingFamily.Record, PrintingFamily.Map })
        {
            using var brought = await family.BringAsync(bytes, "test.pdf", printable);
            Assert.Equal(HttpStatusCode.Redirect, brought.StatusCode);
        }

        Assert.Single(await family.OnShelfAsync());
        foreach (var left in new[] { 1, 0 })
        {
            var page = await family.Guardian.GetAsync(family.Prints);
            var ask = await family.Guardian.GetAsync(page.QuerySelector("a[href$='/remove']")!.GetAttribute("href")!);
            Assert.Contains(left == 1 ? "stays where it is used elsewhere" : "deleted here", ask.Body!.TextContent, StringComparison.Ordinal);
            using var removed = await family.Guardian.SubmitAsync(ask);
            Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
            Assert.Equal(left, (await family.OnShelfAsync()).Count);
        }
    }

    [Fact]
    public async Task Are_swept_away_when_their_activity_is_gone_and_something_else_is_brought()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var first = await family.BringAsync(SamplePages.Sheet("gluten-test"), "test.pdf", "A song", family.Sing);
        Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
        await family.Family.WithDbAsync(async db =>
        {
            db.Remove(await db.Activities.SingleAsync(a => a.Id == family.Sing));
            await db.SaveChangesAsync();
        });
        using var second = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        Assert.Single(await family.OnShelfAsync());
    }

    [Fact]
    public async Task Are_printed_in_more_than_one_way_for_more_than_one_age()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        var page = await family.Guardian.GetAsync(family.Prints);
        using var more = await family.Guardian.SubmitAsync(page, new() { ["Choices[0].FromAge"] = "8", ["more"] = "true" }, within: "#print-0 select");
        var another = await family.Guardian.GetAsync(more.Headers.Location!.OriginalString.Split('#')[0]);
        using var saved = await family.Guardian.SubmitAsync(another, new() { ["Choices[1].Pages"] = "1", ["Choices[1].ToAge"] = "7", ["Choices[1].Colour"] = "true" }, within: "#print-0 select");

        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        var choices = await family.Family.FromDbAsync(db => db.PrintSources.Select(s => s.Choices).SingleAsync());
        Assert.Equal([PrintChoice.Usual with { FromAge = 8 }, PrintChoice.Usual with { Pages = "1", ToAge = 7, Colour = true }], choices);
    }

    [Theory]
    [InlineData("Choices[0].Pages", "3", "The file has 2 pages; there is no page 3.")]
    [InlineData("Choices[0].Pages", "2-1", "runs backwards")]
    [InlineData("Choices[0].FromAge", "99", "Ages run from 0 to 18.")]
    [InlineData("Choices[0].FromAge", "many", "not understood")]
    [InlineData("Choices[0].Copies", "Number", "Give a number of copies from 1 to 20.")]
    public async Task Say_beside_the_field_what_cannot_be_printed_and_keep_what_was_typed(string field, string value, string words)
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(family.Prints), new() { [field] = value, ["Choices[0].Colour"] = "true" }, within: "#print-0 select");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Contains(words, page.QuerySelector("#print-0 .fault:not(:empty)")!.TextContent, StringComparison.Ordinal);
        Assert.True(page.QuerySelector("#print-0 [name='Choices[0].Colour']")!.HasAttribute("checked"));
        if (field != "Choices[0].Copies")
            Assert.Equal(value, page.QuerySelector($"#print-0 [name='{field}']")!.GetAttribute("value"));
        Assert.Equal([PrintChoice.Usual], await family.Family.FromDbAsync(db => db.PrintSources.Select(s => s.Choices).SingleAsync()));
    }

    [Fact]
    public async Task Give_way_to_another_one_and_forget_pages_that_are_not_in_it()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        using var saved = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(family.Prints), new() { ["Choices[0].Pages"] = "2" }, within: "#print-0 select");
        using var other = await family.BringAsync(SamplePages.Sheet("gluten-test"), "test.pdf");

        Assert.Contains("all of its pages are chosen now", (await family.Guardian.GetAsync(family.Prints)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("", (await family.Family.FromDbAsync(db => db.PrintSources.Select(s => s.Choices).SingleAsync()))[0].Pages);
        Assert.Single(await family.OnShelfAsync());
    }

    [Fact]
    public async Task Are_not_exchanged_by_something_new_of_the_same_title()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        using var answer = await family.BringFromAsync(await family.Guardian.GetAsync(family.Prints), SamplePages.Sheet("gluten-test"), "test.pdf", asOwn: true);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var field = (await Visitor.ParseAsync(answer)).QuerySelector("input[name=printable][aria-invalid=true]")!;
        Assert.Equal(PrintingFamily.Record, field.GetAttribute("value"));
        Assert.Contains($"There is a file for “{PrintingFamily.Record}” already.", field.ParentElement!.QuerySelector(".fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["visit.pdf"], await NamesAsync(family));
        Assert.Single(await family.OnShelfAsync());
    }

    [Theory]
    [InlineData(PrintingFamily.Record, false)]
    [InlineData("A sheet of our own", true)]
    public async Task Are_not_exchanged_where_somebody_brought_one_meanwhile(string printable, bool own)
    {
        var family = await PrintingFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync(family.Prints);
        using var first = await family.BringFromAsync(page, SamplePages.Sheet("mill-visit"), "visit.pdf", printable, own);
        using var twice = await family.BringFromAsync(page, SamplePages.Sheet("mill-visit"), "visit.pdf", printable, own);
        using var other = await family.BringFromAsync(page, SamplePages.Sheet("gluten-test"), "test.pdf", printable, own);

        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (first.StatusCode, twice.StatusCode));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
        Assert.Contains("There is a file for", (await Visitor.ParseAsync(other)).QuerySelector(".fault:not(:empty)")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["visit.pdf"], await NamesAsync(family));
        Assert.Single(await family.OnShelfAsync());
    }

    [Fact]
    public async Task Are_exchanged_as_they_were_shown_and_not_as_somebody_changed_them()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        var page = await family.Guardian.GetAsync(family.Prints);
        using var others = await family.BringAsync(SamplePages.Sheet("gluten-test"), "test.pdf");
        using var late = await family.BringFromAsync(page, SamplePages.Sheet("world-outline"), "world.pdf");

        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Contains("Somebody changed this", (await Visitor.ParseAsync(late)).QuerySelector("#print-0 .fault:not(:empty)")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["test.pdf"], await NamesAsync(family));
        Assert.Single(await family.OnShelfAsync());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Go_with_their_activity_or_unit_after_this_was_said(bool unit)
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        var ask = await family.Guardian.GetAsync(unit ? $"/units/{family.Unit}/remove" : $"/units/{family.Unit}/activities/{family.Grind}/remove");
        Assert.Contains("goes the file", ask.QuerySelector("#files")!.TextContent, StringComparison.Ordinal);
        using var removed = await family.Guardian.SubmitAsync(ask);

        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.Empty(await family.OnShelfAsync());
    }

    // ITU-T T.81, A.3.3: blocks of eight by eight. 6,800 dots are read as 4,250 and written as 3,300.
    [Fact]
    public void Are_no_finer_than_paper_shows_and_look_as_they_did()
    {
        using var kept = new MemoryStream();
        var verdict = CoopLessons.Documents.Uploads.PrintableFile.Look(new MemoryStream(SamplePages.Picture(SKEncodedImageFormat.Jpeg, 6800, 3400)), kept, CancellationToken.None);
        using var small = SKBitmap.Decode(kept.ToArray());

        Assert.Null(verdict.Fault);
        Assert.Equal((3300, 1650), (small.Width, small.Height));
        Assert.True(small.GetPixel(100, 100) is { Red: > 180, Green: < 60 });
        Assert.True(small.GetPixel(3200, 1600) is { Red: > 240, Green: > 240, Blue: > 240 });
    }

    [Fact]
    public async Task Leave_no_unfinished_work_behind_when_the_program_starts_anew()
    {
        using var bench = new Workbench();
        var making = bench.Folder(Path.Combine("files", "making"));
        await File.WriteAllTextAsync(Path.Combine(making, "half a packet"), "%PDF");
        using var shelf = new FileShelf(Path.GetDirectoryName(making)!);

        await using (shelf.Scratch())
            Assert.Single(Directory.GetFiles(making));
        Assert.Empty(Directory.GetFiles(making));
    }

    [Fact]
    public async Task Are_looked_for_where_the_folder_came_back_without_them()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        File.Delete(family.PathOf(Assert.Single(await family.OnShelfAsync())));

        Assert.Contains("not in the folder of files any more", (await family.Guardian.GetAsync(family.Prints)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains(PrintingFamily.Record, (await family.Guardian.GetAsync(family.Packet)).QuerySelector("[aria-labelledby=missing]")!.TextContent, StringComparison.Ordinal);
        using var again = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        Assert.Single(await family.OnShelfAsync());
    }

    private static Task<List<string>> NamesAsync(PrintingFamily family) => family.Family.FromDbAsync(db => db.PrintSources.Select(s => s.FileName).ToListAsync());

    [Fact]
    public async Task Are_under_no_name_but_a_hash()
    {
        var family = await PrintingFamily.MakeAsync(server);
        foreach (var name in new[] { "../../cooplessons.db", new string('g', 64), "", new string('A', 64) })
            await Assert.ThrowsAsync<ArgumentException>(() => family.Shelf.HasAsync(family.Family.Id, name, CancellationToken.None));
        using var content = new MemoryStream(Encoding.UTF8.GetBytes("abc"));
        // FIPS 180-4's one-block example, "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", await family.Shelf.PutAsync(family.Family.Id, content, CancellationToken.None));
    }
}
