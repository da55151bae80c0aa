using System.Data.Common;
using System.Text.Json.Nodes;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Scenario;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CoopLessons.Web.Tests.Travel;

/// <summary>
/// The demo's Alder family leaves its SQLite file for another database: PostgreSQL where the suite runs on it, else another
/// SQLite file.
/// </summary>
[Collection(OneCoop.Name)]
public sealed class A_family_that_moves(LoadedOnce once)
{
    private static readonly FakeTimeProvider Clock = new(new DateTimeOffset(2026, 11, 18, 20, 0, 0, TimeSpan.Zero));

    // As the README in the file names them.
    private static readonly string[] Documented = ["Memberships.PersonId", "Memberships.Role", "Memberships.ChosenAt", "TeachingAdults.PersonId", "UnitOrigins.CoopId"];

    [Fact]
    public async Task Is_the_same_there_but_for_the_documented_fields()
    {
        var before = await OutAsync();
        await using var there = await Elsewhere.BeginAsync();
        var brought = await there.TakeInAsync(before, "Iris");
        var after = OpenedFile.Of(await there.OutAsync(brought.Id));
        var first = OpenedFile.Of(before);
        Assert.Equal(first.Entries.Select(e => e.Path), after.Entries.Select(e => e.Path));
        var differing = first.Entries.Zip(after.Entries).Where(p => !p.First.Bytes.AsSpan().SequenceEqual(p.Second.Bytes)).Select(p => p.First.Path).ToList();
        Assert.Empty(differing.Except(Documented.SelectMany(d => new[] { $"data/{d.Split('.')[0]}.json", $"csv/{d.Split('.')[0]}.csv" }).Append("family.json")));
        foreach (var table in Documented.Select(d => d.Split('.')[0]).Distinct())
            Assert.Equal(Without(first.Rows(table), table), Without(after.Rows(table), table));
        Assert.Equal(Told(first), Told(after));
        foreach (var table in new[] { "Portfolios", "TermReports", "SealedYears", "KnownMarks", "Courses", "Pieces" })
            Assert.NotEmpty(first.Rows(table));
        Assert.True(brought.Rows > 5_000, $"{brought.Rows} rows");
        Assert.True(brought.Files > 3, $"{brought.Files} files");
    }

    [Fact]
    public async Task Keeps_its_files_where_it_is_called_off_in_the_moment_in_which_it_is_here()
    {
        using var calledOff = new CancellationTokenSource();
        await using var there = await Elsewhere.BeginAsync(new AfterCommit(calledOff.Cancel));
        var brought = await there.TakeInAsync(await OutAsync(), "Iris", calledOff.Token);
        Assert.True(calledOff.IsCancellationRequested);
        var hashes = await there.WithAsync(brought.Id, db => db.StoredFiles.Select(f => f.Hash).ToListAsync());
        Assert.Equal(brought.Files, hashes.Count);
        foreach (var hash in hashes)
            Assert.True(await there.Shelf.HasAsync(brought.Id, hash, default), hash);
    }

    [Fact]
    public async Task Brings_fingerprints_that_the_new_server_does_not_vouch_for()
    {
        Assert.All(await once.Coop.In(once.Coop.Loaded["Alder"], db => db.KnownMarks.AsNoTracking().ToListAsync()), m => Assert.True(m.GivenOutHere));
        await using var there = await Elsewhere.BeginAsync();
        var brought = await there.TakeInAsync(await OutAsync(), "Iris");
        var marks = await there.WithAsync(brought.Id, db => db.KnownMarks.AsNoTracking().ToListAsync());
        Assert.NotEmpty(marks);
        Assert.All(marks, m => Assert.False(m.GivenOutHere));
    }

    [Fact]
    public async Task Has_a_guardian_who_brought_it_and_names_for_the_others()
    {
        await using var there = await Elsewhere.BeginAsync();
        var brought = await there.TakeInAsync(await OutAsync(), "Iris");
        var members = await there.WithAsync(brought.Id, async db => await db.Memberships.AsNoTracking().Join(db.Users, m => m.PersonId, p => p.Id, (m, p) => new { m.Name, m.Role, p.Email }).ToListAsync());
        Assert.Equal(Data.Tenancy.Role.Guardian, Assert.Single(members, m => m.Email is not null).Role);
        Assert.All(members.Where(m => m.Email is null), m => Assert.Equal(Data.Tenancy.Role.Helper, m.Role));
        Assert.True(members.Count > 1);
        // Whoever wrote an entry is still named.
        Assert.Equal(
            await once.Coop.In(once.Coop.Loaded["Alder"], db => db.LogRevisions.GroupBy(r => r.AuthorName).Select(g => new { g.Key, Count = g.Count() }).OrderBy(g => g.Key).ToListAsync()),
            await there.WithAsync(brought.Id, db => db.LogRevisions.GroupBy(r => r.AuthorName).Select(g => new { g.Key, Count = g.Count() }).OrderBy(g => g.Key).ToListAsync()));
    }

    [Fact]
    public async Task Is_taken_in_once()
    {
        var file = await OutAsync();
        await using var there = await Elsewhere.BeginAsync();
        await there.TakeInAsync(file, "Iris");
        var fault = await Assert.ThrowsAsync<FamilyUnfitException>(() => there.TakeInAsync(file, "Iris"));
        Assert.StartsWith("This family is on this server already.", fault.Message, StringComparison.Ordinal);
    }

    // Reference program: Info-ZIP's unzip tests each entry's checksum.
    [FactBeside("unzip")]
    public async Task Is_read_by_unzip()
    {
        using var bench = new Workbench();
        var (code, output, errors) = await ReferenceProgram.Named("unzip").Run("-t", bench.Put("alder.zip", await OutAsync()));
        Assert.True(code == 0, output + errors);
        Assert.Contains("No errors detected", output, StringComparison.Ordinal);
    }

    // Reference programs: Python's zipfile and csv. The hash of each file is taken once more, and each table has as many records
    // as its JSON has rows.
    [FactBesidePython("csv")]
    public async Task Is_read_by_python()
    {
        using var bench = new Workbench();
        var script = bench.Put("read.py", """
            import csv, hashlib, io, json, sys, zipfile
            csv.field_size_limit(1 << 30)
            with zipfile.ZipFile(sys.argv[1]) as z:
                assert z.testzip() is None
                said = json.loads(z.read("family.json"))
                for f in said["files"]:
                    b = z.read(f["path"])
                    assert len(b) == f["bytes"] and hashlib.sha256(b).hexdigest() == f["sha256"], f["path"]
                assert len(said["files"]) + 1 == len(z.namelist())
                total = 0
                for table, count in said["rows"].items():
                    rows = json.loads(z.read(f"data/{table}.json"))
                    text = z.read(f"csv/{table}.csv").decode("utf-8-sig")
                    records = list(csv.reader(io.StringIO(text, newline=""), strict=True))
                    assert len(rows) == count == len(records) - 1, table
                    for row, record in zip(rows, records[1:]):
                        assert list(row) == records[0] and len(record) == len(records[0]), table
                        for value, cell in zip(row.values(), record):
                            if isinstance(value, str):
                                assert cell in (value, "'" + value) or "\n" in cell or cell.strip() == value.strip(), (table, value, cell)
                            elif value is None:
                                assert cell == "", (table, cell)
                    total += count
                print(total)
            """u8.ToArray());
        var (code, output, errors) = await Python.With("csv").Run(script, bench.Put("alder.zip", await OutAsync()));
        Assert.True(code == 0, errors);
        Assert.True(int.Parse(output.Trim(), System.Globalization.CultureInfo.InvariantCulture) > 5_000, output);
    }

    private Task<byte[]> OutAsync() => once.Coop.In(once.Coop.Loaded["Alder"], async db =>
    {
        using var zip = new MemoryStream();
        await OutWork.WriteAsync(db, once.Coop.Shelf, zip, Clock, _ => { }, default);
        return zip.ToArray();
    });

    private static string Without(JsonArray rows, string table)
    {
        foreach (var row in rows)
        {
            foreach (var field in Documented.Where(d => d.StartsWith(table + ".", StringComparison.Ordinal)))
                row!.AsObject().Remove(field[(table.Length + 1)..]);
        }

        // Where the person is part of the key, the order follows another id.
        return string.Join('\n', rows.Select(r => r!.ToJsonString()).Order(StringComparer.Ordinal));
    }

    private static string Told(OpenedFile file)
    {
        var said = file.Json("family.json").AsObject();
        said.Remove("files");
        return said.ToJsonString();
    }

    private sealed class AfterCommit(Action act) : DbTransactionInterceptor
    {
        public override Task TransactionCommittedAsync(DbTransaction transaction, TransactionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            act();
            return Task.CompletedTask;
        }
    }

    /// <summary>A new installation without anybody.</summary>
    private sealed class Elsewhere(TestDatabase database, ServiceProvider services) : IAsyncDisposable
    {
        public FileShelf Shelf => services.GetRequiredService<FileShelf>();

        public static async Task<Elsewhere> BeginAsync(IInterceptor? with = null)
        {
            var database = new TestDatabase();
            var services = new ServiceCollection().AddLogging().AddAppDb(database.Choice);
            if (with is not null)
            {
                services.ConfigureDbContext<SqliteAppDb>(o => o.AddInterceptors(with));
                services.ConfigureDbContext<PostgresAppDb>(o => o.AddInterceptors(with));
            }

            services.AddSingleton(new FileShelf(Path.Combine(database.Folder, "files")));
            services.AddIdentityCore<Person>(o => o.User.RequireUniqueEmail = true).AddEntityFrameworkStores<AppDb>();
            await Upkeep.MigrateAsync(database.Choice);
            return new Elsewhere(database, services.BuildServiceProvider(validateScopes: true));
        }

        public async Task<BroughtFamily> TakeInAsync(byte[] zip, string name, CancellationToken ct = default)
        {
            await using var scope = services.CreateAsyncScope();
            var person = Person.Named(name, $"{Guid.NewGuid():N}@millrace.example");
            Assert.True((await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().CreateAsync(person)).Succeeded);
            return await new FamilyIn(scope.ServiceProvider.GetRequiredService<AppDb>(), services.GetRequiredService<FileShelf>(), (_, _, _) => Task.FromResult<string?>(null))
                .TakeAsync(new MemoryStream(zip), person, Clock.GetUtcNow().UtcDateTime, _ => { }, ct);
        }

        public Task<byte[]> OutAsync(Guid family) => WithAsync(family, async db =>
        {
            using var zip = new MemoryStream();
            await OutWork.WriteAsync(db, services.GetRequiredService<FileShelf>(), zip, Clock, _ => { }, default);
            return zip.ToArray();
        });

        public async Task<T> WithAsync<T>(Guid family, Func<AppDb, Task<T>> read)
        {
            await using var scope = services.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<Data.Tenancy.CurrentFamily>().ActForProgram(family);
            return await read(scope.ServiceProvider.GetRequiredService<AppDb>());
        }

        public async ValueTask DisposeAsync()
        {
            await services.DisposeAsync();
            database.Dispose();
        }
    }
}
