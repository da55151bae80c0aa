using System.CommandLine;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;

namespace CoopLessons.Web.Commands;

/// <summary><c>migrate</c>: brings the database to this program's version and ends.</summary>
public static class MigrateCommand
{
    public static Command Create(string[] settings)
    {
        var command = new Command("migrate", "Brings the database to this program's version, and ends.");
        var options = HostOptions.AddTo(command, settings, listens: false);
        command.SetAction(async (parsed, ct) =>
        {
            var (configuration, path) = options.Settings(parsed);
            using var folder = DataFolder.Hold(path);
            await Upkeep.MigrateAsync(ServerSettings.Database(configuration, folder.Path), ct);
            Console.WriteLine("The database is at this program's version.");
            return CommandTable.Done;
        });
        return command;
    }
}
