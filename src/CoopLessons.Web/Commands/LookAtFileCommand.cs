using System.CommandLine;
using System.Text.Json;
using CoopLessons.Documents.Uploads;

namespace CoopLessons.Web.Commands;

/// <summary>
/// <c>look-at-file</c>: what the program asks of a process of its own when somebody brings a file. Takes the file from
/// standard input; answers with the verdict on one line of standard output and then what is to be kept, for evidence with
/// a small picture behind it.
/// </summary>
public static class LookAtFileCommand
{
    public const string Name = "look-at-file";

    /// <summary>What a file is looked at for: to be printed from, unless this word is said.</summary>
    public const string AsEvidence = "evidence";

    /// <inheritdoc cref="AsEvidence"/>
    public const string AsReceipt = "receipt";

    // A little longer than whoever asked waits: where that one was ended meanwhile, nobody else stops this.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(45);

    public static Command Create()
    {
        var command = new Command(Name, "Looks at a file that somebody brought; used by the program itself.") { Hidden = true };
        var purpose = new Argument<string?>("for") { Arity = ArgumentArity.ZeroOrOne };
        purpose.AcceptOnlyFromAmong(AsEvidence, AsReceipt);
        command.Arguments.Add(purpose);
        command.SetAction(async (parsed, ct) =>
        {
            await using var end = new Timer(_ => Environment.Exit(CommandTable.Failed), null, Longest, Timeout.InfiniteTimeSpan);
            using var file = new MemoryStream();
            await using (var input = Console.OpenStandardInput())
                await input.CopyToAsync(file, ct);
            using var kept = new MemoryStream();
            using var small = new MemoryStream();
            var verdict = parsed.GetValue(purpose) switch
            {
                AsEvidence => JsonSerializer.SerializeToUtf8Bytes(EvidenceFile.Look(file, kept, small, ct)),
                AsReceipt => JsonSerializer.SerializeToUtf8Bytes(ReceiptFile.Look(file, kept, ct)),
                _ => JsonSerializer.SerializeToUtf8Bytes(PrintableFile.Look(file, kept, ct)),
            };
            await using var output = Console.OpenStandardOutput();
            await output.WriteAsync(verdict, ct);
            output.WriteByte((byte)'\n');
            foreach (var part in new[] { kept, small })
            {
                part.Position = 0;
                await part.CopyToAsync(output, ct);
            }

            return CommandTable.Done;
        });
        return command;
    }
}
