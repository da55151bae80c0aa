using System.Net;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Commands;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Travel;

/// <summary>By the pages, as a guardian does it, and by the commands, as a host does.</summary>
public sealed class Everything_out_and_in
{
    [Fact]
    public async Task Is_made_against_the_password_fetched_by_who_asked_and_gone_after_a_day()
    {
        using var server = new OwnServer();
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/out");
        var wrong = await family.Guardian.SubmitAsync(page, new() { ["Password"] = "not this one at all" }, "#Password");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("This is not your password.", await wrong.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync("/family/out/file")).StatusCode);

        await MakeAsync(server, family);
        var answer = await family.Guardian.OpenAsync("/family/out/file");
        Assert.Equal("application/zip", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("family-alder-2026-03-12.zip", answer.Content.Headers.ContentDisposition!.FileName);
        Assert.Equal(family.Id.ToString(), (string?)OpenedFile.Of(await answer.Content.ReadAsByteArrayAsync()).Json("family.json")["familyId"]);

        var other = await server.PersonAsync("Cole");
        await family.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Membership(other.Id, "Cole", Role.Guardian, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        Assert.Equal(HttpStatusCode.NotFound, (await (await server.SignInAsync(other.Email!)).OpenAsync("/family/out/file")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await server.HelperAsync(family)).OpenAsync("/family/out")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await server.FamilyAsync("Birch")).Guardian.OpenAsync("/family/out/file")).StatusCode);

        server.Clock.Advance(MadeFiles.Life);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync("/family/out/file")).StatusCode);
        server.Services.GetRequiredService<FilesOfFamilies>().Sweep(server.Clock.GetUtcNow().UtcDateTime);
        Assert.Empty(Directory.GetFiles(Path.Combine(server.Database.Folder, "leaving")));
    }

    [Fact]
    public async Task Comes_to_a_new_server_by_its_first_page()
    {
        using var old = new OwnServer();
        var family = await old.FamilyAsync();
        await MakeAsync(old, family);
        var file = await (await family.Guardian.OpenAsync("/family/out/file")).Content.ReadAsByteArrayAsync();

        using var server = new OwnServer();
        var visitor = server.Visitor();
        Assert.NotNull((await visitor.GetAsync("/first-run")).QuerySelector("a[href='/first-run/bring']"));
        var made = await visitor.SubmitAsync(await visitor.GetAsync("/first-run/bring"), new()
        {
            ["Input.Name"] = "Iris Alder",
            ["Input.Email"] = "iris@alder.millrace.example",
            ["Input.Password"] = "seven stones under the wheel",
            ["Word"] = Word(server),
        });
        Assert.Equal("/person/bring", made.Headers.Location?.OriginalString);

        Assert.Contains("Choose the family’s file.", await TextAsync(await BringAsync(visitor, null)), StringComparison.Ordinal);
        Assert.Equal("/person/bring", (await BringAsync(visitor, "no file"u8.ToArray())).Headers.Location?.OriginalString);
        await TakenAsync(server);
        Assert.Contains("This file is no family’s file", (await visitor.GetAsync("/person/bring")).QuerySelector("#file-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("/person/bring", (await BringAsync(visitor, file)).Headers.Location?.OriginalString);
        await TakenAsync(server);
        var here = await visitor.GetAsync("/person/bring");
        Assert.Equal("The Alder family is here", here.QuerySelector("#here")!.TextContent);
        Assert.Null(here.QuerySelector("input[type='file']"));
        Assert.Equal("Alder", (await visitor.GetAsync("/family")).QuerySelector("h1")!.TextContent.Trim());
        Assert.Equal(family.Id, await server.FromDbAsync(family.Id, db => db.Families.Select(f => f.Id).SingleAsync()));
        // The server is theirs, and closed to others.
        Assert.Equal(HttpStatusCode.NotFound, (await server.Visitor().OpenAsync("/first-run/bring")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await BringAsync(visitor, file)).StatusCode);
    }

    [Fact]
    public async Task Waits_for_its_turn_in_the_line_and_can_be_called_off_there()
    {
        using var old = new OwnServer();
        var family = await old.FamilyAsync();
        await MakeAsync(old, family);
        var file = await (await family.Guardian.OpenAsync("/family/out/file")).Content.ReadAsByteArrayAsync();

        using var server = new OwnServer(new KeyValuePair<string, string>("CoopLessons:SignUp", "open"));
        var other = await server.FamilyAsync("Birch");
        var line = server.Services.GetRequiredService<LayoutLine>();
        var before = new TaskCompletionSource<object>();
        var first = line.Ask(other.Id, "before", (_, _) => before.Task)!.Value;
        Assert.Equal(HttpStatusCode.Redirect, (await BringAsync(other.Guardian, file)).StatusCode);
        var waits = await other.Guardian.GetAsync("/person/bring");
        Assert.Contains("this is begun next", waits.QuerySelector("#progress")!.TextContent, StringComparison.Ordinal);
        Assert.Null(waits.QuerySelector("input[type='file']"));
        using var asked = await other.Guardian.OpenAsync("/person/bring?handler=Progress", htmx: true);
        Assert.False(asked.Headers.Contains("HX-Redirect"));
        // How far somebody's own work is, nobody else sees.
        Assert.Null((await (await server.FamilyAsync("Cedar")).Guardian.GetAsync("/person/bring")).QuerySelector("#progress"));

        Assert.Equal(HttpStatusCode.Redirect, (await other.Guardian.SubmitAsync(waits, [], "#progress + form button")).StatusCode);
        Assert.Contains("This was called off. Nothing was taken in.", (await other.Guardian.GetAsync("/person/bring")).QuerySelector("#file-fault")!.TextContent, StringComparison.Ordinal);
        before.SetResult(new object());
        await line.WaitAsync(other.Id, first, default);
        Assert.False(await server.FromDbAsync(family.Id, db => db.Families.AnyAsync()));

        await BringAsync(other.Guardian, file);
        await line.WaitAsync(other.GuardianId, line.Newest(other.GuardianId, InWork.Key)!.Id, default);
        using var over = await other.Guardian.OpenAsync("/person/bring?handler=Progress", htmx: true);
        Assert.Equal("/person/bring", Assert.Single(over.Headers.GetValues("HX-Redirect")));
        Assert.True(await server.FromDbAsync(family.Id, db => db.Families.AnyAsync()));
    }

    [Fact]
    public async Task Goes_by_commands_with_a_look_at_each_file()
    {
        using var old = new OwnServer();
        var family = await old.FamilyAsync();
        var good = await old.Services.GetRequiredService<Data.Files.FileShelf>().PutAsync(family.Id, new MemoryStream(SamplePages.Blank(2)), default);
        await family.WithDbAsync(async db =>
        {
            db.Add(new Data.Files.StoredFile(good, Data.Files.StoredKind.Pdf, 100, 2, "Iris", TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        using var bench = new Workbench();
        var path = Path.Combine(bench.Folder("out"), "alder.zip");
        var written = await ProgramRun.OfAsync(old.Database, "family-out", "--family", family.Id.ToString(), "--out", path);
        Assert.True(written.Code == 0, written.Error);

        using var server = new OwnServer();
        _ = server.Services;
        (await ProgramRun.OfAsync(server.Database, "family-in", path, "--email", "iris@alder.millrace.example")).AssertWrongUse("give --name");
        var taken = await ProgramRun.OfAsync(server.Database, "family-in", path, "--email", "iris@alder.millrace.example", "--name", "Iris Alder");
        Assert.True(taken.Code == 0, taken.Error);
        Assert.StartsWith("The Alder family is here", taken.Error, StringComparison.Ordinal);
        await (await server.SignInAsync("iris@alder.millrace.example", taken.Text.Trim())).GetAsync("/family");

        var again = await ProgramRun.OfAsync(server.Database, "family-in", path, "--email", "cole@alder.millrace.example", "--name", "Cole");
        Assert.Equal((1, ""), (again.Code, again.Text));
        Assert.StartsWith("This family is on this server already.", Assert.Single(again.ErrorLines), StringComparison.Ordinal);
        Assert.Equal(1, await server.FromDbAsync(null, db => db.Users.CountAsync()));

        var forged = OpenedFile.Of(await File.ReadAllBytesAsync(path)).As(Guid.CreateVersion7());
        var rows = forged.Rows("StoredFiles");
        rows[0]!["Kind"] = "Png";
        forged.Put("data/StoredFiles.json", rows);
        var refused = await ProgramRun.OfAsync(server.Database, "family-in", bench.Put("forged.zip", forged.Told().Zip()), "--email", "iris@alder.millrace.example");
        Assert.Contains("This is something else than its row says.", Assert.Single(refused.ErrorLines), StringComparison.Ordinal);
    }

    private static string Word(OwnServer server) => server.Services.GetRequiredService<Hosting.FirstRunWord>().Word;

    private static async Task<string> TextAsync(HttpResponseMessage answer) => (await Visitor.ParseAsync(answer)).Body!.TextContent;

    private static async Task MakeAsync(OwnServer server, TestFamily family)
    {
        var asked = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/out"), new() { ["Password"] = TestServer.Password }, "#Password");
        Assert.Equal("/family/out", asked.Headers.Location?.OriginalString);
        var line = server.Services.GetRequiredService<LayoutLine>();
        await line.WaitAsync(family.Id, line.Newest(family.Id, OutWork.Key)!.Id, default);
        Assert.Equal(JobState.Done, line.Newest(family.Id, OutWork.Key)!.State);
        Assert.NotNull((await family.Guardian.GetAsync("/family/out")).QuerySelector("a[href='/family/out/file']"));
    }

    /// <summary>Waits until what the only person here brought is taken in or refused.</summary>
    private static async Task TakenAsync(OwnServer server)
    {
        var person = await server.FromDbAsync(null, db => db.Users.Where(p => p.Email != null).Select(p => p.Id).SingleAsync());
        var line = server.Services.GetRequiredService<LayoutLine>();
        await line.WaitAsync(person, line.Newest(person, InWork.Key)!.Id, default);
    }

    private static async Task<HttpResponseMessage> BringAsync(Visitor visitor, byte[]? file)
    {
        var token = await visitor.TokenAsync(file is null ? "/person/bring" : "/person/password");
        var form = new MultipartFormDataContent { { new StringContent(token), "__RequestVerificationToken" } };
        if (file is not null)
            form.Add(new ByteArrayContent(file), "Brought", "alder.zip");
        return await visitor.SendAsync(new HttpRequestMessage(HttpMethod.Post, "/person/bring") { Content = form });
    }
}
