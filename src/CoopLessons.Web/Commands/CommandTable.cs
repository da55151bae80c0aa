using System.CommandLine;
using System.Globalization;
using System.Text;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;

namespace CoopLessons.Web.Commands;

/// <summary>What the program can be asked to do. Wrong use ends with 2 and one line on standard error.</summary>
public static class CommandTable
{
    public const int Done = 0;
    public const int Failed = 1;
    public const int WrongUse = 2;

    public static Task<int> RunAsync(string[] args)
    {
        // Any setting can stand as a flag by its full name, as ASP.NET has it: --CoopLessons:SignUp=open.
        // A host in another process may name the empty sections above them, too: --CoopLessons=.
        var settings = args.Where(IsSetting).ToArray();
        args = [.. args.Where(a => !IsSetting(a) && !(a.EndsWith('=') && settings.Any(s => s.StartsWith(a[..^1] + ":", StringComparison.Ordinal))))];
        var root = new RootCommand("CoopLessons: themed units, the day's run sheet, the log and the hours report.")
        {
            ServeCommand.Create(settings),
            DemoCommand.Create(settings),
            MigrateCommand.Create(settings),
            HoursCommand.Create(settings),
            ResetSignInCommand.Create(settings),
            FamilyOutCommand.Create(settings),
            FamilyInCommand.Create(settings),
            CheckCatalogCommand.Create(),
            LookAtFileCommand.Create(),
        };
        ServeCommand.Fill(root, settings);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            Console.Error.WriteLine(OneLine($"{parsed.Errors[0].Message} See --help."));
            return Task.FromResult(WrongUse);
        }

        return RunAsync(parsed);
    }

    private static bool IsSetting(string argument) =>
        argument.StartsWith("--", StringComparison.Ordinal) && argument.Split('=', 2) is [var name, _] && name.Contains(':', StringComparison.Ordinal);

    /// <summary>What was typed or stored may hold line ends and signs that steer a terminal; a message is one plain line.</summary>
    public static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            line.Append(IsPlain(rune) ? rune.ToString() : " ");
        return string.Join(' ', line.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private static bool IsPlain(Rune rune) => !Rune.IsControl(rune)
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Format);

    private static async Task<int> RunAsync(ParseResult parsed)
    {
        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null, // The web host ends its own work when it is told to stop.
            });
        }
        catch (WrongUseException fault)
        {
            Console.Error.WriteLine(OneLine(fault.Message));
            return WrongUse;
        }
        catch (SettingUnfitException fault)
        {
            Console.Error.WriteLine(fault.Message);
            return WrongUse;
        }
        catch (DatabaseUnfitException fault)
        {
            Console.Error.WriteLine(OneLine(fault.Message));
            return Failed;
        }
    }
}

/// <summary>The command was given something it cannot use; the message is the one line that says what.</summary>
public sealed class WrongUseException(string message) : Exception(message);
