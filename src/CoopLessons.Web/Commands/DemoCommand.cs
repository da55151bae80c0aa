using System.CommandLine;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Commands;

/// <summary><c>demo</c>: loads the invented co-op into an empty data folder, serves it, and prints its sign-ins.</summary>
public static class DemoCommand
{
    public static Command Create(string[] settings)
    {
        var command = new Command("demo", "Loads the invented Millrace co-op, serves it, and prints the address and the sign-ins.");
        var options = HostOptions.AddTo(command, settings, listens: true);
        command.SetAction((parsed, ct) => ServeCommand.ServeAsync(options.Builder(parsed), app => PrepareAsync(app, ct), ct));
        return command;
    }

    private static async Task PrepareAsync(WebApplication app, CancellationToken ct)
    {
        var demo = app.Services.GetRequiredService<DemoCoop>();
        var (emails, password) = await SignInsAsync(app, demo, ct);
        app.Lifetime.ApplicationStarted.Register(() =>
        {
            Console.WriteLine($"The Millrace co-op is at {string.Join(" ", app.Urls)}");
            Console.WriteLine($"All sign in with the password: {password}");
            foreach (var email in emails)
                Console.WriteLine($"  {email}");
        });
    }

    private static async Task<(IReadOnlyList<string> Emails, string Password)> SignInsAsync(WebApplication app, DemoCoop demo, CancellationToken ct)
    {
        await using (var scope = app.Services.CreateAsyncScope())
        {
            if (!await scope.ServiceProvider.GetRequiredService<AppDb>().Users.AnyAsync(ct))
            {
                Console.WriteLine("Loading the Millrace co-op; this takes a little while.");
                var (coop, made) = await demo.LoadAsync(ct);
                return ([.. coop.Families.SelectMany(f => f.Adults).Select(a => a.Email)], made);
            }
        }

        return await demo.ReopenAsync(ct) is { } known
            ? ([.. known.People.Select(p => p.Email!)], known.Password)
            : throw new DatabaseUnfitException("There are families in this data folder already; the invented co-op goes into an empty one: name another with --data.");
    }
}
