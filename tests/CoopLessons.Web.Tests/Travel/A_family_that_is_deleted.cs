using System.Net;
using System.Text;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Tenancy;
using CoopLessons.Web.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Travel;

public sealed class A_family_that_is_deleted
{
    private const string Canary = "canary-that-sang-of-the-mill-race";

    [Fact]
    public async Task Is_asked_for_with_name_and_password_and_seen_by_every_guardian_who_can_stop_it()
    {
        using var server = new OwnServer();
        var family = await server.FamilyAsync();
        var (cole, basil) = (await GuardianAsync(server, family), await server.HelperAsync(family));
        Assert.Contains("This is not the family’s name.", await FaultAsync(await AskAsync(family, "Birch", TestServer.Password)), StringComparison.Ordinal);
        Assert.Contains("This is not your password.", await FaultAsync(await AskAsync(family, "Alder", "another wheel under stars")), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, (await basil.OpenAsync("/family/leave")).StatusCode);

        var receipt = await ReceiptAsync(await AskAsync(family, " alder ", TestServer.Password));
        Assert.Contains("It is due on 19 March 2026, 15:00 UTC.", await TextAsync(server, receipt), StringComparison.Ordinal);
        Assert.Contains("Everything of the family is deleted on Thursday 19 March.", (await cole.GetAsync("/today")).Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("is deleted on", (await basil.GetAsync("/today")).Body!.TextContent, StringComparison.Ordinal);
        // A second asking makes no second day.
        Assert.Equal("/family/leave", (await AskByHandAsync(family)).Headers.Location?.OriginalString);

        await cole.SubmitAsync(await cole.GetAsync("/family/leave"));
        Assert.Contains("It was stopped on 12 March 2026, 15:00 UTC; nothing was deleted.", await TextAsync(server, receipt), StringComparison.Ordinal);
        server.Clock.Advance(TimeSpan.FromDays(8));
        await server.Services.GetRequiredService<LeavingRound>().RunAsync(default);
        Assert.DoesNotContain("is deleted on", (await cole.GetAsync("/today")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_not_stopped_any_more_once_the_week_is_over()
    {
        using var server = new OwnServer();
        var family = await server.FamilyAsync();
        await AskAsync(family, "Alder", TestServer.Password);
        // A page that was left open, and the round is about to begin.
        var page = await family.Guardian.GetAsync("/family/leave");
        var due = TestServer.Start.UtcDateTime;
        await family.WithDbAsync(db => db.Families.ExecuteUpdateAsync(s => s.SetProperty(f => f.LeavesAt, due)));
        await server.WithDbAsync(null, db => db.LeavingReceipts.ExecuteUpdateAsync(s => s.SetProperty(r => r.DueAt, due)));
        using var late = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Contains("It can no longer be stopped.", (await Visitor.ParseAsync(late)).Body!.TextContent, StringComparison.Ordinal);
        var left = await family.Guardian.GetAsync("/family/leave");
        Assert.Null(left.QuerySelector("main form"));
        Assert.Contains("The week is over: everything of the family is being deleted.", left.Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("or stop it", left.Body.TextContent, StringComparison.Ordinal);
        await server.Services.GetRequiredService<LeavingRound>().RunAsync(default);
        Assert.Empty(await CountsAsync(server, family.Id));
    }

    [Fact]
    public async Task Is_gone_after_a_week_with_rows_files_and_sign_ins_and_nobody_elses()
    {
        using var server = new OwnServer();
        var (mine, other) = (await Furnished.MakeAsync(server, "Alder"), await Furnished.MakeAsync(server, "Birch"));
        var family = mine.Family;
        var shelf = server.Services.GetRequiredService<FileShelf>();
        var twice = await server.PersonAsync("Olive");
        await family.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Membership(twice.Id, "Olive", Role.Guardian, TestServer.Start.UtcDateTime));
            var subject = await db.Subjects.OrderBy(s => s.Order).FirstAsync();
            for (var i = 0; i < 50; i++)
                db.Add(LogEntry.Write(Guid.CreateVersion7(), new EntryFacts(TestServer.Today, null, $"{Canary} {i}", Place.Home, new string('n', 500) + Canary, [new LearnerTime(mine.Learner, new Minutes(20))], [new SubjectWeight(subject.Id, 1)], []), new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            db.Add(new StoredFile(await shelf.PutAsync(family.Id, new MemoryStream(Encoding.UTF8.GetBytes(Canary)), default), StoredKind.AsItCame, 33, 1, "Iris", TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        await other.Family.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Membership(twice.Id, "Olive", Role.Helper, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        var before = await CountsAsync(server, other.Family.Id);
        Assert.True(await CanaryIsFoundAsync(server));
        var files = await family.FromDbAsync(db => db.StoredFiles.CountAsync());
        var receipt = await ReceiptAsync(await AskAsync(family, "Alder", TestServer.Password));

        server.Clock.Advance(TimeSpan.FromDays(7) - TimeSpan.FromMinutes(1));
        await server.Services.GetRequiredService<LeavingRound>().RunAsync(default);
        Assert.NotEmpty(await CountsAsync(server, family.Id));
        server.Clock.Advance(TimeSpan.FromMinutes(1));
        await server.Services.GetRequiredService<LeavingRound>().RunAsync(default);

        Assert.Empty(await CountsAsync(server, family.Id));
        Assert.Equal(before, await CountsAsync(server, other.Family.Id));
        Assert.False(Directory.Exists(Path.Combine(server.Database.Folder, "files", family.Id.ToString("N"))));
        Assert.False(await server.FromDbAsync(null, db => db.Users.AnyAsync(p => p.Id == family.GuardianId)));
        Assert.True(await server.FromDbAsync(null, db => db.Users.AnyAsync(p => p.Id == twice.Id)));
        Assert.Equal("/sign-in", new Uri(new Uri("http://x"), (await family.Guardian.OpenAsync("/today")).Headers.Location!).AbsolutePath);
        // Nobody else was in its co-op.
        Assert.False(await server.FromDbAsync(other.Family.Id, async db =>
        {
            db.Current.BelongTo([mine.Shared.Coop]);
            return await db.Coops.AnyAsync(c => c.Id == mine.Shared.Coop);
        }));
        Assert.False(await CanaryIsFoundAsync(server));

        var text = await TextAsync(server, receipt);
        Assert.Matches($"It was done on 19 March 2026, 15:00 UTC: [0-9]{{3}} rows and {files} files of the family were deleted", text);
        Assert.DoesNotContain("Alder", text, StringComparison.Ordinal);
        var saved = await (await server.Visitor().OpenAsync(receipt + "?handler=Text")).Content.ReadAsStringAsync();
        Assert.Contains("It was done on 19 March 2026", saved, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Visitor().OpenAsync("/receipt/" + new string('0', 64))).StatusCode);
    }

    [Fact]
    public async Task Leaves_a_co_op_with_what_it_gave_and_a_leader()
    {
        using var server = new OwnServer();
        var (alder, birch) = (await Furnished.MakeAsync(server, "Alder"), await server.FamilyAsync("Birch"));
        var coop = alder.Shared.Coop;
        await birch.WithDbAsync(async db =>
        {
            db.Current.BelongTo([coop]);
            db.CoopFamilies.Add(new CoopFamily(coop, birch.Id, "Birch", CoopPart.Member, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        await AskAsync(alder.Family, "Alder", TestServer.Password);
        server.Clock.Advance(TimeSpan.FromDays(7));
        await server.Services.GetRequiredService<LeavingRound>().RunAsync(default);
        await birch.WithDbAsync(async db =>
        {
            db.Current.BelongTo([coop]);
            Assert.Equal(CoopPart.Leader, (await db.CoopFamilies.SingleAsync(f => f.FamilyId == birch.Id)).Part);
            var gone = await db.CoopFamilies.SingleAsync(f => f.FamilyId == alder.Family.Id);
            Assert.Equal(("Alder", true), (gone.Name, gone.LeftAt is not null));
            Assert.Equal(1, await db.SharedUnits.CountAsync());
            Assert.Equal(0, await db.ShownLearners.CountAsync());
            Assert.Equal(0, await db.ShownContacts.CountAsync());
        });
        // The pages of the co-op open as before.
        foreach (var path in new[] { "", "/families", "/units", "/money", "/turns", "/days" })
            await birch.Guardian.GetAsync($"/coop/{coop}{path}");
    }

    private static async Task<Visitor> GuardianAsync(TestServer server, TestFamily family)
    {
        var cole = await server.PersonAsync("Cole");
        await family.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Membership(cole.Id, "Cole", Role.Guardian, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return await server.SignInAsync(cole.Email!);
    }

    private static async Task<HttpResponseMessage> AskAsync(TestFamily family, string name, string password) =>
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/leave"), new() { ["Name"] = name, ["Password"] = password }, "#Password");

    private static async Task<HttpResponseMessage> AskByHandAsync(TestFamily family) => await family.Guardian.PostAsync("/family/leave?handler=Ask",
        [new("Name", "Alder"), new("Password", TestServer.Password), new("__RequestVerificationToken", await family.Guardian.TokenAsync("/family/learners/new"))]);

    private static async Task<string> FaultAsync(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return (await Visitor.ParseAsync(answer)).Body!.TextContent;
    }

    private static async Task<string> ReceiptAsync(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return new Uri((await Visitor.ParseAsync(answer)).QuerySelector("#link")!.GetAttribute("value")!).AbsolutePath;
    }

    private static async Task<string> TextAsync(TestServer server, string receipt) => (await server.Visitor().GetAsync(receipt)).Body!.TextContent;

    /// <summary>How many rows each table of a family holds, past the model; tables without any left out.</summary>
    private static Task<SortedDictionary<string, long>> CountsAsync(TestServer server, Guid family) => server.FromDbAsync(family, async db =>
    {
        var counts = new SortedDictionary<string, long>(StringComparer.Ordinal);
        await db.Database.OpenConnectionAsync();
        foreach (var type in db.Model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(IFamilyOwned))))
        {
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.CommandText = $"SELECT COUNT(*) FROM \"{type.GetTableName()}\" WHERE \"{type.FindPrimaryKey()!.Properties[0].Name}\" = @f";
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = ("f", db.Database.IsNpgsql() ? family : family.ToString().ToUpperInvariant());
            command.Parameters.Add(parameter);
            if (Convert.ToInt64(await command.ExecuteScalarAsync(), System.Globalization.CultureInfo.InvariantCulture) is var count and > 0)
                counts[type.GetTableName()!] = count;
        }

        return counts;
    });

    /// <summary>In the database file, its log and the families' files; on PostgreSQL, whose files are the server's, in the tables alone.</summary>
    private static async Task<bool> CanaryIsFoundAsync(TestServer server)
    {
        if (server.Database.Choice is not DatabaseChoice.Sqlite)
            return Directory.EnumerateFiles(Path.Combine(server.Database.Folder, "files"), "*", SearchOption.AllDirectories).Any(p => File.ReadAllText(p).Contains(Canary, StringComparison.Ordinal));
        var found = false;
        foreach (var path in Directory.EnumerateFiles(server.Database.Folder, "*", SearchOption.AllDirectories).Where(p => !p.EndsWith("-shm", StringComparison.Ordinal) && !p.EndsWith(".lock", StringComparison.Ordinal)))
        {
            await using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes);
            found |= bytes.GetBuffer().AsSpan(0, (int)bytes.Length).IndexOf(Encoding.UTF8.GetBytes(Canary)) >= 0;
        }

        return found;
    }
}
