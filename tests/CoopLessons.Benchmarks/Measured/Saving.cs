using BenchmarkDotNet.Attributes;
using CoopLessons.Benchmarks.Floor;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>An entry of the log, sent by its form and saved, beside one bare row saved as safely.</summary>
public abstract class Saving
{
    private BareHost _bare = null!;
    private CoopServer _coop = null!;
    private Browser _stranger = null!;
    private AlderFamily _family = null!;
    private LogForm _form = null!;
    private KeyValuePair<string, string>[] _row = [];

    [GlobalSetup]
    public async Task SetUpAsync()
    {
        await MakeDatabasesAsync();
        _bare = await BareHost.StartAsync(UseBare);
        _stranger = new Browser(_bare.Address);
        _row = [await _stranger.TokenAsync("/"), new("text", "A walk to the old mill")];
        await SaveBare();
        if (await _bare.CountAsync() != 1)
            throw new InvalidOperationException("The bare row was not saved.");
        _coop = await CoopServer.StartAsync(Settings());
        _family = await AlderFamily.MoveInAsync(_coop, AlderFamily.AYearOfEntries);
        _form = await LogForm.OpenAsync(_coop, _family);
    }

    [GlobalCleanup]
    public async Task CleanUpAsync()
    {
        _stranger.Dispose();
        _family.Guardian.Dispose();
        await _coop.DisposeAsync();
        await _bare.DisposeAsync();
        await DropDatabasesAsync();
    }

    [Benchmark(Baseline = true, Description = "One bare row")]
    public Task<int> SaveBare() => _stranger.SendAsync("/", _row);

    [Benchmark(Description = "An entry of the log: 3 children, 2 subjects")]
    public Task<int> SaveEntry() => _form.SendAsync();

    protected abstract Task MakeDatabasesAsync();

    protected abstract void UseBare(DbContextOptionsBuilder options);

    protected abstract IEnumerable<KeyValuePair<string, string?>> Settings();

    protected abstract Task DropDatabasesAsync();
}

[BenchmarkCategory("Saving on SQLite")]
public class SavingOnSqlite : Saving
{
    private string _folder = "";

    protected override Task MakeDatabasesAsync()
    {
        _folder = Directory.CreateTempSubdirectory("cooplessons-bare-").FullName;
        return Task.CompletedTask;
    }

    protected override void UseBare(DbContextOptionsBuilder options) => options.UseSqlite($"Data Source={Path.Combine(_folder, "bare.db")}");

    protected override IEnumerable<KeyValuePair<string, string?>> Settings() => [];

    protected override Task DropDatabasesAsync()
    {
        Directory.Delete(_folder, recursive: true);
        return Task.CompletedTask;
    }
}

[BenchmarkCategory("Saving on PostgreSQL")]
public class SavingOnPostgres : Saving
{
    private readonly ThrowAwayPostgres _bare = new();
    private readonly ThrowAwayPostgres _coop = new();

    protected override async Task MakeDatabasesAsync()
    {
        await _bare.MakeAsync();
        await _coop.MakeAsync();
    }

    protected override void UseBare(DbContextOptionsBuilder options) => options.UseNpgsql(_bare.Owner);

    protected override IEnumerable<KeyValuePair<string, string?>> Settings() =>
        [new("ConnectionStrings:Postgres", _coop.Serving), new("ConnectionStrings:PostgresOwner", _coop.Owner)];

    protected override async Task DropDatabasesAsync()
    {
        await _bare.DropAsync();
        await _coop.DropAsync();
    }
}
