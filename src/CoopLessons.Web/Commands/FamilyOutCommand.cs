using System.CommandLine;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using CoopLessons.Web.Travel;

namespace CoopLessons.Web.Commands;

/// <summary><c>family-out</c>: writes everything of one family into a file, the same that its guardians make. It reads beside a running server.</summary>
public static class FamilyOutCommand
{
    public static Command Create(string[] settings)
    {
        var command = new Command("family-out", "Writes everything of one family into a file.");
        var family = new Option<string>("--family") { Required = true, Description = "The family, by name or id.", HelpName = "NAME|ID" };
        var to = new Option<string>("--out") { Required = true, Description = "File to write.", HelpName = "FILE" };
        command.Add(family);
        command.Add(to);
        var options = HostOptions.AddTo(command, settings, listens: false);
        command.SetAction(async (parsed, ct) =>
        {
            await using var services = options.Services(parsed);
            await using var scope = services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            if (!await Upkeep.IsReadyAsync(db, ct))
                throw new DatabaseUnfitException("The database cannot be reached, or is at another version of this program: start the server or run migrate first.");
            db.Current.ActForProgram(await Lookup.FamilyAsync(db, parsed.GetRequiredValue(family), ct));
            var path = parsed.GetRequiredValue(to);
            try
            {
                await using (var file = Created(path))
                    await OutWork.WriteAsync(db, scope.ServiceProvider.GetRequiredService<FileShelf>(), file, scope.ServiceProvider.GetRequiredService<TimeProvider>(), _ => { }, ct);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
            {
                throw new WrongUseException($"“{path}” cannot be written: {fault.Message}");
            }

            Console.Error.WriteLine(CommandTable.OneLine($"Written to {path}. Whoever holds the file reads everything of the family."));
            return CommandTable.Done;
        });
        return command;
    }

    private static FileStream Created(string path)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.ReadWrite };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite; // A family's record is nobody else's to read.
        return new FileStream(path, options);
    }
}
