using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.People;
using CoopLessons.Data.Scenario;
using CoopLessons.Web.Tests.Documents;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class A_coop_that_could_not_be_loaded
{
    [Fact]
    public async Task Leaves_no_family_and_none_of_its_files()
    {
        using var bench = new Workbench();
        var files = bench.Folder("files");
        var choice = new DatabaseChoice.Sqlite(Path.Combine(bench.Folder("data"), "millrace.db"));
        var services = new ServiceCollection().AddLogging().AddAppDb(choice);
        services.ConfigureDbContext<SqliteAppDb>(o => o.AddInterceptors(new FullAtTheLog(files)));
        services.AddSingleton(new FileShelf(files));
        services.AddIdentityCore<Person>(o => o.User.RequireUniqueEmail = true).AddEntityFrameworkStores<AppDb>();
        await using (var provider = services.BuildServiceProvider(validateScopes: true))
        {
            await Upkeep.MigrateAsync(choice);
            await Assert.ThrowsAsync<IOException>(() => Millrace.LoadAsync(provider, new DateOnly(2026, 11, 18), "Four-stones-in-the-race-7", null, CancellationToken.None));

            await using var scope = provider.CreateAsyncScope();
            Assert.Empty(await scope.ServiceProvider.GetRequiredService<AppDb>().Families.IgnoreQueryFilters().ToListAsync());
            Assert.Empty(Directory.GetFileSystemEntries(files));
        }

        SqliteConnection.ClearAllPools();
    }

    /// <summary>A disk that is full when the log is written, after the files.</summary>
    private sealed class FullAtTheLog(string files) : SaveChangesInterceptor
    {
        public override ValueTask<InterceptionResult<int>> SavingChangesAsync(DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
        {
            if (!eventData.Context!.ChangeTracker.Entries<LogEntry>().Any())
                return ValueTask.FromResult(result);
            Assert.NotEmpty(Directory.GetFiles(files, "*", SearchOption.AllDirectories));
            throw new IOException("No space is left.");
        }
    }
}
