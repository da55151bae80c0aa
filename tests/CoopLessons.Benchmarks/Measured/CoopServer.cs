using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Commands;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>The program itself on the loopback, in a data folder that is thrown away.</summary>
public sealed class CoopServer : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly DataFolder _folder;

    private CoopServer(WebApplication app, DataFolder folder) => (_app, _folder) = (app, folder);

    public Uri Address => new(_app.Urls.Single());

    /// <param name="settings">Settings by full name, such as the connection of another database.</param>
    public static async Task<CoopServer> StartAsync(params IEnumerable<KeyValuePair<string, string?>> settings)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = typeof(CommandTable).Assembly.GetName().Name, EnvironmentName = Environments.Production });
        builder.Configuration.AddInMemoryCollection([new("Serilog:MinimumLevel:Default", "Warning"), .. settings]);
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var folder = DataFolder.Hold(Directory.CreateTempSubdirectory("cooplessons-measured-").FullName);
        var app = Server.Build(builder, folder);
        await Upkeep.MigrateAsync(app.Services.GetRequiredService<DatabaseChoice>());
        await app.StartAsync();
        return new CoopServer(app, folder);
    }

    public async Task<Person> PersonAsync(string name, string email, string password)
    {
        await using var scope = _app.Services.CreateAsyncScope();
        var person = Person.Named(name, email);
        var made = await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().CreateAsync(person, password);
        return made.Succeeded ? person : throw new InvalidOperationException(string.Join(" ", made.Errors.Select(e => e.Description)));
    }

    /// <summary>Work on the database for one family.</summary>
    public async Task<T> WithDbAsync<T>(Guid familyId, Func<AppDb, Task<T>> work)
    {
        await using var scope = _app.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(familyId);
        return await work(scope.ServiceProvider.GetRequiredService<AppDb>());
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _folder.Dispose();
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder.Path, recursive: true);
    }
}
