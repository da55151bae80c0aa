using System.CommandLine;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Files;
using CoopLessons.Web.Security;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Identity;

namespace CoopLessons.Web.Commands;

/// <summary>
/// <c>family-in</c>: takes in a family's file from another installation. Somebody who signs in here, or somebody new, becomes a
/// guardian of it.
/// </summary>
public static class FamilyInCommand
{
    public static Command Create(string[] settings)
    {
        var command = new Command("family-in", "Takes in a family's file from another installation, whole or not at all.");
        var from = new Argument<string>("FILE") { Description = "The family's file." };
        var email = new Option<string>("--email") { Required = true, Description = "Who becomes its guardian: the e-mail address of somebody who signs in here, or of somebody new.", HelpName = "E" };
        var name = new Option<string?>("--name") { Description = "Name of somebody new, as the family calls them; their password is made and shown once.", HelpName = "NAME" };
        command.Add(from);
        command.Add(email);
        command.Add(name);
        var options = HostOptions.AddTo(command, settings, listens: false);
        command.SetAction(async (parsed, ct) =>
        {
            await using var services = options.Services(parsed);
            await using var scope = services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            if (!await Upkeep.IsReadyAsync(db, ct))
                throw new DatabaseUnfitException("The database cannot be reached, or is at another version of this program: start the server or run migrate first.");
            await using var file = Opened(parsed.GetRequiredValue(from));
            var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
            var known = await people.FindByEmailAsync(parsed.GetRequiredValue(email).Trim());
            var (person, password) = known is not null ? (known, null) : await NewAsync(people, parsed.GetRequiredValue(email).Trim(), parsed.GetValue(name));
            try
            {
                var look = new TravelLook(new FileLook(scope.ServiceProvider.GetRequiredService<ILogger<FileLook>>()));
                var family = await new FamilyIn(db, scope.ServiceProvider.GetRequiredService<FileShelf>(), look.OfAsync)
                    .TakeAsync(file, person, scope.ServiceProvider.GetRequiredService<TimeProvider>().GetUtcNow().UtcDateTime, _ => { }, ct);
                Console.Error.WriteLine(CommandTable.OneLine($"The {family.Name} family is here, with {family.Rows} rows and {family.Files} files."));
                if (password is not null)
                    Console.WriteLine(password);
                return CommandTable.Done;
            }
            catch (Exception fault)
            {
                if (password is not null)
                    await people.DeleteAsync((await people.FindByIdAsync(person.Id.ToString()))!);
                if (fault is not FamilyUnfitException)
                    throw;
                Console.Error.WriteLine(CommandTable.OneLine(fault.Message));
                return CommandTable.Failed;
            }
        });
        return command;
    }

    private static async Task<(Person, string?)> NewAsync(UserManager<Person> people, string email, string? name)
    {
        if (string.IsNullOrWhiteSpace(name) || name.Length > Person.LongestName)
            throw new WrongUseException($"Nobody here signs in with {email}. For somebody new give --name, of at most {Person.LongestName} signs.");
        var (person, password) = (Person.Named(name.Trim(), email), RandomPassword.Make());
        var made = await people.CreateAsync(person, password);
        return made.Succeeded ? (person, password) : throw new WrongUseException(string.Join(" ", made.Errors.Select(e => e.Description)));
    }

    private static FileStream Opened(string path)
    {
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 81_920, FileOptions.Asynchronous);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new WrongUseException($"“{path}” cannot be read: {fault.Message}");
        }
    }
}
