using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Data.People;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

/// <summary>The co-op loaded into a database file of its own.</summary>
public sealed class MillraceDatabase : IAsyncDisposable
{
    public static readonly DayRange LastYear = new(new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30));
    public static readonly DayRange ThisYear = new(new DateOnly(2026, 7, 1), new DateOnly(2027, 6, 30));

    private const string Password = "Four-stones-in-the-race-7";
    private readonly string _folder;
    private readonly ServiceProvider _services;

    private MillraceDatabase(string folder, ServiceProvider services, DateOnly today, MillraceLoaded loaded) =>
        (_folder, _services, Today, Loaded) = (folder, services, today, loaded);

    public DateOnly Today { get; }
    public MillraceLoaded Loaded { get; }
    public FileShelf Shelf => _services.GetRequiredService<FileShelf>();
    public IEnumerable<(LoadedFamily Family, LoadedLearner Learner)> Learners => Loaded.Families.SelectMany(f => f.Learners.Select(l => (f, l)));

    public static async Task<MillraceDatabase> LoadedOn(DateOnly today)
    {
        var folder = Directory.CreateTempSubdirectory("millrace").FullName;
        var choice = new DatabaseChoice.Sqlite(Path.Combine(folder, "millrace.db"));
        var services = new ServiceCollection().AddLogging().AddAppDb(choice);
        services.AddSingleton(new FileShelf(Path.Combine(folder, "files")));
        services.AddIdentityCore<Person>(o => o.User.RequireUniqueEmail = true).AddEntityFrameworkStores<AppDb>();
        var provider = services.BuildServiceProvider(validateScopes: true);
        await Upkeep.MigrateAsync(choice);
        var loaded = await Millrace.LoadAsync(provider, today, Password, null, CancellationToken.None);
        return new MillraceDatabase(folder, provider, today, loaded);
    }

    /// <summary>Works in a family's own rows.</summary>
    public async Task<T> In<T>(LoadedFamily family, Func<AppDb, Task<T>> work)
    {
        await using var scope = _services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(family.FamilyId);
        return await work(scope.ServiceProvider.GetRequiredService<AppDb>());
    }

    public async Task<List<T>> InEach<T>(Func<LoadedFamily, AppDb, Task<List<T>>> work)
    {
        var all = new List<T>();
        foreach (var family in Loaded.Families)
            all.AddRange(await In(family, db => work(family, db)));
        return all;
    }

    public async Task<bool> CanSignIn(string email)
    {
        await using var scope = _services.CreateAsyncScope();
        var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        return await people.FindByEmailAsync(email) is { } person && await people.CheckPasswordAsync(person, Password);
    }

    public Task LoadAgain() => Millrace.LoadAsync(_services, Today, Password, null, CancellationToken.None);

    public Task<LearnerYear> YearOf(LoadedFamily family, LoadedLearner learner, DayRange year) =>
        In(family, async db => (await LearnerYear.LoadAsync(db, learner.Id, year, CancellationToken.None))!);

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }
}

/// <summary>The co-op loaded once, as on a Wednesday in November, for tests that only read.</summary>
public sealed class LoadedOnce : IAsyncLifetime
{
    public MillraceDatabase Coop { get; private set; } = null!;

    public async Task InitializeAsync() => Coop = await MillraceDatabase.LoadedOn(new DateOnly(2026, 11, 18));

    public async Task DisposeAsync() => await Coop.DisposeAsync();
}

/// <summary>The tests that share one loaded co-op.</summary>
[CollectionDefinition(Name)]
public sealed class OneCoop : ICollectionFixture<LoadedOnce>
{
    public const string Name = "one co-op";
}
