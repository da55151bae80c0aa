using System.Net;
using CoopLessons.Data.Evidence;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Evidence;

[Collection(PlanningServer.Name)]
public sealed class Photos_brought_by_a_form(TestServer server)
{
    [Fact]
    public async Task Become_pieces_of_the_day_on_which_they_were_taken_without_their_place()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var piece = await family.KeptAsync(SamplePhotos.Photo(), "..\\DCIM/IMG \u202E1.JPEG", fill: [("Caption", "Mine rose the most!"), ("Learners", family.Wren.ToString()), ("SubjectId", family.Science.ToString()), ("SetAside", "true"), ("FacesOut", "true")]);

        Assert.Equal((new DateOnly(2026, 3, 10), 9 * 60 + 41, "Mine rose the most!", PieceKind.Photo, "IMG 1.jpg"), (piece.Date, piece.TakenAt, piece.Caption, piece.Kind, piece.Name));
        Assert.Equal([family.Wren], piece.Learners);
        Assert.Equal((family.Science, true, true, "Iris Alder"), (piece.SubjectId, piece.SetAside, piece.FacesOut, piece.BroughtBy));
        Assert.Null(piece.OriginalHash);
        foreach (var path in new[] { "file", "small" })
            Assert.Empty(ImageMetadataReader.ReadMetadata(new MemoryStream(await family.BytesAsync($"/evidence/{piece.Id}/{path}"))).OfType<ExifDirectoryBase>());
        Assert.Equal(2, family.OnDisk().Count);
    }

    [Fact]
    public async Task Of_a_camera_whose_clock_was_never_set_are_todays()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        foreach (var taken in new[] { "1980:01:01 00:00:00", "2026:03:13 09:00:00" })
        {
            var piece = await family.KeptAsync(SamplePhotos.Photo(taken));
            Assert.Equal((TestServer.Today, null), (piece.Date, piece.TakenAt));
        }
    }

    [Fact]
    public async Task Of_an_entry_follow_it_where_nothing_else_is_said()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var form = await family.Guardian.GetAsync($"/evidence/new?entry={family.Entry}");
        Assert.Contains("To “Baked a loaf”", form.Body!.TextContent, StringComparison.Ordinal);
        var piece = await family.KeptAsync(SamplePhotos.Photo(), query: $"?entry={family.Entry}");

        Assert.Equal((TestServer.Today, family.Science, family.Entry, null), (piece.Date, piece.SubjectId, piece.EntryId, piece.TakenAt));
        Assert.Equal([family.Wren], piece.Learners);
        var page = await family.Guardian.GetAsync($"/log/{family.Entry}");
        Assert.NotNull(page.QuerySelector($"#pieces a[href='/evidence/{piece.Id}'] img[src='/evidence/{piece.Id}/small'][alt]"));
        Assert.NotNull(page.QuerySelector($"#pieces a[href='/evidence/new?entry={family.Entry}']"));
    }

    [Fact]
    public async Task Come_several_at_once_and_once_however_often_the_form_is_sent()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var form = await family.Guardian.GetAsync("/evidence/new");
        (byte[], string)[] files = [(SamplePhotos.Photo(), "one.jpg"), (SamplePages.Sheet("mill-visit"), "two.pdf"), (SampleRecordings.Wav(), "three.wav")];
        var both = await Task.WhenAll(EvidenceFamily.BringFromAsync(form, files, family.Guardian, "/evidence/new"), EvidenceFamily.BringFromAsync(form, files, family.Guardian, "/evidence/new"));
        using var third = await EvidenceFamily.BringFromAsync(form, files, family.Guardian, "/evidence/new");

        Assert.All(both.Append(third), a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal([PieceKind.Photo, PieceKind.Paper, PieceKind.Sound], (await family.PiecesAsync()).Select(p => p.Kind).Order());
        Array.ForEach(both, a => a.Dispose());
    }

    [Fact]
    public async Task Are_kept_all_or_none_with_a_sentence_for_each_that_cannot_be()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        using var answer = await family.BringAsync([(SamplePhotos.Photo(), "good.jpg"), (Files_refused_as_evidence.Made("SVG"), "drawing.png")], fill: [("Caption", "A boat")]);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        var fault = page.GetElementById("files-fault")!.TextContent;
        Assert.Contains("“drawing.png”: This is an SVG drawing", fault, StringComparison.Ordinal);
        Assert.Contains("None of these files was kept", fault, StringComparison.Ordinal);
        Assert.Equal("true", page.QuerySelector("input[type=file]")!.GetAttribute("aria-invalid"));
        Assert.Equal("A boat", page.QuerySelector("input[name=Caption]")!.GetAttribute("value"));
        Assert.Empty(await family.PiecesAsync());
        Assert.Empty(family.OnDisk());
    }

    [Theory]
    [InlineData("SVG", "drawing.svg", 415)]
    [InlineData("HEIC", "photo.heic", 415)]
    [InlineData("page", "photo.jpg", 415)]
    [InlineData("photo cut in half", "photo.jpg", 422)]
    [InlineData("empty", "photo.jpg", 422)]
    [InlineData("larger than fifty megabytes", "photo.jpg", 413)]
    public async Task Are_refused_with_a_status_that_fits(string what, string name, int status)
    {
        var family = await EvidenceFamily.MakeAsync(server);
        using var answer = await family.BringAsync(Files_refused_as_evidence.Made(what), name);
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).GetElementById("files-fault")!.TextContent);
        Assert.Empty(await family.PiecesAsync());
    }

    [Fact]
    public async Task Named_otherwise_than_they_are_are_taken_for_what_they_are()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var paper = await family.KeptAsync(SamplePages.Sheet("mill-visit"), "page.jpg");
        Assert.Equal((PieceKind.Paper, "page.pdf"), (paper.Kind, paper.Name));
        Assert.Contains("“page.jpg” is a PDF, and is kept as one.", (await family.Guardian.GetAsync("/today")).Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(SamplePages.Sheet("mill-visit"), await family.BytesAsync($"/evidence/{paper.Id}/file"));
    }

    [Fact]
    public async Task Are_kept_as_they_came_too_only_where_the_family_says_so()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var settings = await family.Guardian.GetAsync("/family/photos");
        Assert.Contains("holds the place where it was taken", settings.Body!.TextContent, StringComparison.Ordinal);
        using var saved = await family.Guardian.SubmitAsync(settings, new() { ["KeepOriginals"] = "true" });
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);

        var photo = SamplePhotos.Photo();
        var piece = await family.KeptAsync(photo);
        Assert.Equal(photo, await family.BytesAsync($"/evidence/{piece.Id}/original"));
        var paper = await family.KeptAsync(SamplePages.Sheet("mill-visit"), "page.pdf");
        Assert.Null(paper.OriginalHash);
        var helper = await server.HelperAsync(family.Family);
        using var closed = await helper.OpenAsync($"/evidence/{piece.Id}/original");
        Assert.Equal(HttpStatusCode.NotFound, closed.StatusCode);
    }

    [Fact]
    public async Task Come_with_the_entry_in_its_own_form()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        var form = await family.Guardian.GetAsync("/log/new");
        (string, string)[] said = [("Input.What", "Kneaded"), ("Input.Date", "2026-03-12"), ("Input.Length", "30"), ("Input.Who[0].There", "true"), ("Input.Counts[0].Weight", "1"), ("Input.Place", "Home")];
        using var refused = await EvidenceFamily.BringFromAsync(form, [(Files_refused_as_evidence.Made("HEIC"), "photo.heic")], family.Guardian, "/log/new", said);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, refused.StatusCode);
        var again = await Visitor.ParseAsync(refused);
        Assert.Contains("HEIC", again.GetElementById("files-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Kneaded", again.QuerySelector("[name='Input.What']")!.GetAttribute("value"));

        for (var sending = 0; sending < 2; sending++)
        {
            using var taken = await EvidenceFamily.BringFromAsync(form, [(SamplePhotos.Photo(), "one.jpg"), (SamplePhotos.WebP(), "two.webp")], family.Guardian, "/log/new", said);
            Assert.Equal("/today/2026-03-12", taken.Headers.Location!.OriginalString);
        }

        var pieces = await family.PiecesAsync();
        var entry = Guid.Parse(form.QuerySelector("input[name=EntryId]")!.GetAttribute("value")!);
        Assert.Equal([entry, entry], pieces.Select(p => p.EntryId!.Value));
        Assert.All(pieces, p => Assert.Equal(TestServer.Today, p.Date));
        Assert.All(pieces, p => Assert.Equal([family.Wren], p.Learners));
        Assert.NotNull((await family.Guardian.GetAsync("/today")).QuerySelector("a[href='/evidence/day/2026-03-12']"));
    }

    [Fact]
    public async Task Are_asked_for_where_none_was_chosen_and_of_no_day_to_come()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        using var none = await family.BringAsync(Array.Empty<(byte[], string)>());
        Assert.Contains("Choose at least one", (await Visitor.ParseAsync(none)).GetElementById("files-fault")!.TextContent, StringComparison.Ordinal);
        using var tomorrow = await family.BringAsync(SamplePhotos.Photo(), fill: [("Date", "2026-03-13")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, tomorrow.StatusCode);
        Assert.Contains("still to come", (await Visitor.ParseAsync(tomorrow)).GetElementById("date-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(await family.PiecesAsync());
    }

    [Fact]
    public async Task Are_too_many_at_a_time_beyond_a_dozen()
    {
        var family = await EvidenceFamily.MakeAsync(server);
        using var answer = await family.BringAsync(Enumerable.Range(0, 13).Select(i => (SamplePhotos.Encoded(SamplePhotos.Quarters(8, 8), SKEncodedImageFormat.Png), $"{i}.png")));
        Assert.Contains("At most 12 files", (await Visitor.ParseAsync(answer)).GetElementById("files-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(await family.PiecesAsync());
    }
}
