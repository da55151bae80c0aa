using System.CommandLine;
using CoopLessons.Data.Databases;

namespace CoopLessons.Web.Commands;

/// <summary>What the program can be asked to do. Wrong use ends with 2 and one line on standard error.</summary>
public static class CommandTable
{
    public const int Done = 0;
    public const int Failed = 1;
    public const int WrongUse = 2;

    public static Task<int> RunAsync(string[] args)
    {
        var root = new RootCommand("CoopLessons: themed units, the day's run sheet, the log and the hours report.")
        {
            ServeCommand.Create(),
            MigrateCommand.Create(),
        };
        ServeCommand.Fill(root);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            Console.Error.WriteLine($"{parsed.Errors[0].Message} See --help.");
            return Task.FromResult(WrongUse);
        }

        return RunAsync(parsed);
    }

    private static async Task<int> RunAsync(ParseResult parsed)
    {
        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (WrongUseException fault)
        {
            Console.Error.WriteLine(fault.Message);
            return WrongUse;
        }
        catch (DatabaseUnfitException fault)
        {
            Console.Error.WriteLine(fault.Message);
            return Failed;
        }
    }
}

/// <summary>The command was given something it cannot use; the message is the one line that says what.</summary>
public sealed class WrongUseException(string message) : Exception(message);
