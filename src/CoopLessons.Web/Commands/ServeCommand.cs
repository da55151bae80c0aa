using System.CommandLine;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.Connections;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Commands;

/// <summary><c>serve</c>, also what the program does when it is asked for nothing else.</summary>
public static class ServeCommand
{
    public static Command Create(string[] settings)
    {
        var command = new Command("serve", "Serves the web pages. This is what happens without a command, too.");
        Fill(command, settings);
        return command;
    }

    public static void Fill(Command command, string[] settings)
    {
        var options = HostOptions.AddTo(command, settings, listens: true);
        command.SetAction((parsed, ct) => ServeAsync(options.Builder(parsed), app =>
        {
            app.Lifetime.ApplicationStarted.Register(() => AnnounceAsync(app).GetAwaiter().GetResult());
            return Task.CompletedTask;
        }, ct));
    }

    /// <summary>Holds the data folder, brings the database to this version and serves until it is told to stop.</summary>
    /// <param name="prepare">What is done before the first page is served.</param>
    public static async Task<int> ServeAsync(WebApplicationBuilder builder, Func<WebApplication, Task> prepare, CancellationToken ct)
    {
        using var folder = DataFolder.Hold(ServerSettings.From(builder.Configuration).Data);
        await using var app = Server.Build(builder, folder);
        await Upkeep.MigrateAsync(app.Services.GetRequiredService<DatabaseChoice>(), ct);
        await prepare(app);
        try
        {
            await app.RunAsync(ct);
            return CommandTable.Done;
        }
        catch (IOException fault) when (fault.InnerException is AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"{fault.Message} Stop the program that listens there, or choose another address with --urls.");
            return CommandTable.Failed;
        }
    }

    // Nobody has signed up yet: the host reads here what the first-run page asks of other machines.
    private static async Task AnnounceAsync(WebApplication app)
    {
        await using var scope = app.Services.CreateAsyncScope();
        if (!await scope.ServiceProvider.GetRequiredService<AppDb>().Users.AnyAsync())
            app.Logger.LogWarning(
                "Nobody has signed up yet. Open {Address}; from another machine the page asks for the word {Word}",
                app.Services.GetRequiredService<ServerSettings>().PublicUrl ?? string.Join(" ", app.Urls), app.Services.GetRequiredService<FirstRunWord>().Word);
    }
}
