using System.CommandLine;
using System.Text.Json;
using CoopLessons.Documents.Uploads;

namespace CoopLessons.Web.Commands;

/// <summary>
/// <c>look-at-file</c>: what the program asks of a process of its own when somebody brings a file. Takes the file from
/// standard input; answers with the verdict on one line of standard output and then what is to be kept.
/// </summary>
public static class LookAtFileCommand
{
    public const string Name = "look-at-file";

    // A little longer than whoever asked waits: where that one was ended meanwhile, nobody else stops this.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(45);

    public static Command Create()
    {
        var command = new Command(Name, "Looks at a file that somebody brought; used by the program itself.") { Hidden = true };
        command.SetAction(async (_, ct) =>
        {
            await using var end = new Timer(_ => Environment.Exit(CommandTable.Failed), null, Longest, Timeout.InfiniteTimeSpan);
            using var file = new MemoryStream();
            await using (var input = Console.OpenStandardInput())
                await input.CopyToAsync(file, ct);
            using var kept = new MemoryStream();
            var verdict = PrintableFile.Look(file, kept, ct);
            await using var output = Console.OpenStandardOutput();
            await output.WriteAsync(JsonSerializer.SerializeToUtf8Bytes(verdict), ct);
            output.WriteByte((byte)'\n');
            kept.Position = 0;
            await kept.CopyToAsync(output, ct);
            return CommandTable.Done;
        });
        return command;
    }
}
