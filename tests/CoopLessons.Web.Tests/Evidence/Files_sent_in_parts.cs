using System.Net;
using System.Text.Json;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;

namespace CoopLessons.Web.Tests.Evidence;

[Collection(PlanningServer.Name)]
public sealed class Files_sent_in_parts(TestServer server)
{
    [Fact]
    public async Task Go_on_where_they_broke_off_and_become_one_piece()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var (item, photo) = (Guid.CreateVersion7(), SamplePhotos.Photo());
        Assert.Equal(0, await family.HeldAsync(item));
        Assert.Equal((HttpStatusCode.OK, 300), await family.PartAsync(item, photo[..300], 0, photo.Length));
        // The answer was lost, and the part is sent once more; then one is left out, and one is sent before its turn.
        Assert.Equal((HttpStatusCode.Conflict, 300), await family.PartAsync(item, photo[..300], 0, photo.Length));
        Assert.Equal((HttpStatusCode.Conflict, 300), await family.PartAsync(item, photo[400..], 400, photo.Length));
        Assert.Equal(300, await family.HeldAsync(item));
        using (var early = await family.TakeAsync(item))
            Assert.Equal(HttpStatusCode.Conflict, early.StatusCode);
        Assert.Equal((HttpStatusCode.OK, photo.Length), await family.PartAsync(item, photo[300..], 300, photo.Length));

        (string, string)[] said = [("entryId", family.Entry.ToString()), ("caption", "It sings when it cools"), ("name", "IMG.jpg"), ("taken", "2026-03-12T08:05")];
        for (var sending = 0; sending < 2; sending++)
        {
            using var taken = await family.TakeAsync(item, fields: said);
            Assert.Equal($"/evidence/{item}", taken.Headers.Location!.OriginalString);
        }

        var piece = Assert.Single(await family.PiecesAsync());
        Assert.Equal((item, TestServer.Today, 8 * 60 + 5, "It sings when it cools", family.Entry), (piece.Id, piece.Date, piece.TakenAt, piece.Caption, piece.EntryId));
        Assert.Equal(0, await family.HeldAsync(item));
        // A script that does not know yet sends the first part again, and hears that nothing is missing.
        Assert.Equal((HttpStatusCode.OK, photo.Length), await family.PartAsync(item, photo[..300], 0, photo.Length));
        Assert.Equal(0, await family.HeldAsync(item));
    }

    [Fact]
    public async Task Taken_twice_at_the_same_moment_are_one_piece()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var item = Guid.CreateVersion7();
        await family.SendAsync(item, SamplePhotos.Photo());
        var answers = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => family.TakeAsync(item)));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Single(await family.PiecesAsync());
        Array.ForEach(answers, a => a.Dispose());
    }

    [Fact]
    public async Task Sent_twice_at_the_same_moment_are_held_once()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var (item, file) = (Guid.CreateVersion7(), SampleRecordings.Wav());
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => family.PartAsync(item, file, 0, file.Length)));
        Assert.Single(answers, a => a.Status == HttpStatusCode.OK);
        Assert.All(answers, a => Assert.Equal(file.Length, a.Held));
    }

    [Fact]
    public async Task Are_spoken_of_to_scripts_in_their_words()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var (good, bad) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        await family.SendAsync(good, SamplePages.Sheet("mill-visit"));
        await family.SendAsync(bad, Files_refused_as_evidence.Made("HEIC"));
        using var taken = await family.TakeAsync(good, asScript: true, fields: [("name", "page.jpg")]);
        using var word = await JsonDocument.ParseAsync(await taken.Content.ReadAsStreamAsync());
        Assert.Equal((good, true), (word.RootElement.GetProperty("item").GetGuid(), word.RootElement.GetProperty("saved").GetBoolean()));
        Assert.Equal("“page.jpg” is a PDF, and is kept as one.", (await family.Guardian.GetAsync("/today")).GetElementById("said")!.TextContent.Trim());

        using var refused = await family.TakeAsync(bad, asScript: true, fields: [("name", "photo.heic")]);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, refused.StatusCode);
        using var fault = await JsonDocument.ParseAsync(await refused.Content.ReadAsStreamAsync());
        Assert.Contains("most compatible format", fault.RootElement.GetProperty("faults")[0].GetProperty("says").GetString(), StringComparison.Ordinal);
        // It would never be taken, so it is not held any longer.
        Assert.Equal(0, await family.HeldAsync(bad));
    }

    [Fact]
    public async Task Are_refused_before_they_are_sent_where_they_are_too_large()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var item = Guid.CreateVersion7();
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, 0), await family.PartAsync(item, [1, 2, 3], 0, 50_000_001));
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, 0), await family.PartAsync(item, new byte[ArrivingFiles.MostOfPart + 1], 0, 20_000_000));
        Assert.Equal((HttpStatusCode.BadRequest, 0), await family.PartAsync(item, [1, 2, 3], -1, 10));
        // More than it said of itself, or another length than before.
        Assert.Equal((HttpStatusCode.Conflict, 0), await family.PartAsync(item, [1, 2, 3], 0, 2));
        Assert.Equal((HttpStatusCode.OK, 3), await family.PartAsync(item, [1, 2, 3], 0, 9));
        Assert.Equal((HttpStatusCode.Conflict, 3), await family.PartAsync(item, [4], 3, 10));
    }

    [Fact]
    public async Task Are_nobody_elses_under_the_same_number()
    {
        var (mine, other) = (await EvidenceFamily.MakeAsync(server), await EvidenceFamily.MakeAsync(server, "Birch"));
        var helper = await server.HelperAsync(mine.Family);
        var item = Guid.CreateVersion7();
        await mine.SendAsync(item, SamplePhotos.Photo());
        foreach (var (family, who) in new[] { (other, other.Guardian), (mine, helper) })
        {
            Assert.Equal(0, await family.HeldAsync(item, who));
            using var taken = await family.TakeAsync(item, who);
            Assert.Equal(HttpStatusCode.Conflict, taken.StatusCode);
        }

        Assert.Empty(await other.PiecesAsync());
        using var own = await mine.TakeAsync(item);
        Assert.Equal(HttpStatusCode.Redirect, own.StatusCode);
    }

    [Theory]
    [InlineData("entryId")]
    [InlineData("subjectId")]
    [InlineData("learners")]
    public async Task Become_no_piece_that_names_somebody_elses(string field)
    {
        var (mine, other) = (await EvidenceFamily.MakeAsync(server), await EvidenceFamily.MakeAsync(server, "Birch"));
        var item = Guid.CreateVersion7();
        await mine.SendAsync(item, SamplePhotos.Photo());
        var foreign = field switch { "entryId" => other.Entry, "subjectId" => other.Science, _ => other.Wren };
        using var taken = await mine.TakeAsync(item, fields: [(field, foreign.ToString())]);
        Assert.Equal(HttpStatusCode.NotFound, taken.StatusCode);
        using var brought = await mine.BringAsync(SamplePhotos.Photo(), fill: [(field, foreign.ToString())]);
        Assert.Equal(HttpStatusCode.NotFound, brought.StatusCode);
        Assert.Empty(await mine.PiecesAsync());
    }

    [Fact]
    public void Are_kept_within_bounds_and_forgotten_after_a_fortnight()
    {
        using var bench = new Workbench();
        var arriving = new ArrivingFiles(bench.Folder("arriving"));
        var (family, person) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var part = new byte[ArrivingFiles.MostOfPart];
        for (var i = 0; i < ArrivingFiles.MostFiles; i++)
            Assert.Equal(PartAnswer.Kept, arriving.Add(family, person, Guid.CreateVersion7(), 0, 10, [1]).Answer);
        var item = Guid.CreateVersion7();
        Assert.Equal((PartAnswer.NoRoom, 0), arriving.Add(family, person, item, 0, 10, [1]));
        // Another family's room is its own.
        Assert.Equal((PartAnswer.Kept, 1), arriving.Add(Guid.CreateVersion7(), person, item, 0, 10, [1]));

        var since = DateTime.UtcNow;
        arriving.Sweep(since + ArrivingFiles.Kept - TimeSpan.FromHours(1));
        Assert.Equal(PartAnswer.NoRoom, arriving.Add(family, person, item, 0, 10, [1]).Answer);
        arriving.Sweep(since + ArrivingFiles.Kept + TimeSpan.FromHours(1));
        Assert.Equal((PartAnswer.Kept, part.Length), arriving.Add(family, person, item, 0, part.Length, part));
        using var whole = arriving.Open(family, person, item);
        Assert.Equal(part.Length, whole!.Length);
    }

    [Fact]
    public void Of_one_family_are_half_a_thousand_megabytes_together_at_most()
    {
        using var bench = new Workbench();
        var arriving = new ArrivingFiles(bench.Folder("arriving"));
        var (family, person) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var first = Guid.CreateVersion7();
        arriving.Add(family, person, first, 0, ArrivingFiles.MostOfFamily, [1]);
        // A file of holes is as long as it says and takes no room on the disk.
        using (var file = File.OpenWrite(Assert.Single(Directory.GetFiles(bench.Folder("arriving"), "*", SearchOption.AllDirectories))))
            file.SetLength(ArrivingFiles.MostOfFamily - 1);
        Assert.Equal((PartAnswer.Kept, 1), arriving.Add(family, person, Guid.CreateVersion7(), 0, 10, [1]));
        Assert.Equal((PartAnswer.NoRoom, 0), arriving.Add(family, person, Guid.CreateVersion7(), 0, 10, [1]));
    }
}
