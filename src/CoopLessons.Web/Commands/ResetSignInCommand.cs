using System.CommandLine;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Commands;

/// <summary><c>reset-sign-in</c>: a new password for somebody who cannot sign in any more, made by the host and shown once.</summary>
public static class ResetSignInCommand
{
    public static Command Create(string[] settings)
    {
        var command = new Command("reset-sign-in", "Gives a person a new password, shown once, turns their authenticator app off and ends their sign-ins.");
        var email = new Option<string>("--email") { Description = "The person's e-mail address.", HelpName = "E", Required = true };
        command.Add(email);
        var options = HostOptions.AddTo(command, settings, listens: false);
        command.SetAction(async (parsed, ct) =>
        {
            await using var services = options.Services(parsed);
            await using var scope = services.CreateAsyncScope();
            var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            if (await people.FindByEmailAsync(parsed.GetRequiredValue(email).Trim()) is not { } person)
            {
                Console.Error.WriteLine("Nobody has signed up with this e-mail address.");
                return CommandTable.Failed;
            }

            var password = RandomPassword.Make();
            await using var transaction = await db.Database.BeginTransactionAsync(ct);
            await people.RemovePasswordAsync(person);
            var set = await people.AddPasswordAsync(person, password);
            await people.ForgetAuthenticatorAsync(person);
            await people.SetLockoutEndDateAsync(person, null);
            await people.ResetAccessFailedCountAsync(person);
            await db.SignInSessions.Where(s => s.PersonId == person.Id).ExecuteDeleteAsync(ct);
            if (!set.Succeeded)
                throw new InvalidOperationException($"The new password was refused: {string.Join(" ", set.Errors.Select(e => e.Description))}");
            await transaction.CommitAsync(ct);
            Console.WriteLine(password);
            return CommandTable.Done;
        });
        return command;
    }
}
