using System.ComponentModel;
using System.Diagnostics;
using System.Text.Json;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Commands;

namespace CoopLessons.Web.Files;

/// <summary>
/// Has a file looked at by a process of its own, with a limit to its time and memory and without this one's settings: a
/// file may be made so that whoever reads it never ends, or ends with the whole program. Then the file is broken, and no
/// more than that has happened.
/// </summary>
public sealed class FileLook(ILogger<FileLook> log)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(40);

    // Hexadecimal, as the runtime reads it: 768 MB of what the runtime itself gives out, which is where PDFs are read. Pictures
    // are unpacked outside it: what they take is bounded by their dots (PrintableFile.MostDots).
    private const string MostMemory = "0x30000000";
    private const int LongestVerdict = 400;

    /// <summary>How the process is started.</summary>
    public Func<ProcessStartInfo> Starting { get; init; } = Own;

    /// <summary>Looks at a file that is to be printed from.</summary>
    /// <param name="kept">Gets what is to be kept.</param>
    /// <returns>Null where no process could be started.</returns>
    public Task<FileVerdict?> OfAsync(Stream brought, Stream kept, CancellationToken ct) =>
        AskAsync<FileVerdict>(null, new FileVerdict(FileFault.Broken, default, 0), brought, (_, output) => output.CopyToAsync(kept, ct), ct);

    /// <summary>Looks at a piece of evidence.</summary>
    /// <param name="kept">Gets what is to be kept.</param>
    /// <param name="small">Gets a small picture; nothing where there is no picture.</param>
    /// <returns>Null where no process could be started.</returns>
    public Task<EvidenceVerdict?> AsEvidenceAsync(Stream brought, Stream kept, Stream small, CancellationToken ct) =>
        AskAsync<EvidenceVerdict>(LookAtFileCommand.AsEvidence, new EvidenceVerdict(FileFault.Broken, default), brought, async (verdict, output) =>
        {
            await CopyAsync(output, kept, verdict.KeptBytes, ct);
            await output.CopyToAsync(small, ct);
        }, ct);

    /// <summary>Looks at the photo of a receipt.</summary>
    /// <param name="kept">Gets a JPEG of at most <see cref="ReceiptFile.MostKept"/> bytes.</param>
    /// <returns>Null where no process could be started.</returns>
    public Task<EvidenceVerdict?> AsReceiptAsync(Stream brought, Stream kept, CancellationToken ct) =>
        AskAsync<EvidenceVerdict>(LookAtFileCommand.AsReceipt, new EvidenceVerdict(FileFault.Broken, default), brought, (verdict, output) => CopyAsync(output, kept, verdict.KeptBytes, ct), ct);

    private async Task<T?> AskAsync<T>(string? purpose, T broken, Stream brought, Func<T, Stream, Task> take, CancellationToken ct)
        where T : class
    {
        using var process = Start(purpose);
        if (process is null)
            return null;
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(ct);
        limit.CancelAfter(Patience);
        try
        {
            var errors = process.StandardError.BaseStream.CopyToAsync(Stream.Null, limit.Token);
            var feeding = FeedAsync(brought, process.StandardInput.BaseStream, limit.Token);
            var verdict = await ReadAsync(process.StandardOutput.BaseStream, take, limit.Token);
            await Task.WhenAll(feeding, errors, process.WaitForExitAsync(limit.Token));
            if (process.ExitCode == CommandTable.Done && verdict is not null)
                return verdict;
            log.LogWarning("The process that looked at a file ended with {ExitCode} and {Verdict}", process.ExitCode, verdict is null ? "without a verdict" : "a verdict");
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            // It took too long, which a file that is whole does not.
            log.LogWarning("Looking at a file took longer than {Patience} and was stopped", Patience);
        }
        finally
        {
            Stop(process);
        }

        return broken;
    }

    /// <summary>The program and what it is told so that it is this one once more.</summary>
    /// <param name="running">Path of the program that runs now: this one's own, or one that was handed it; null where it is not known.</param>
    public static (string Program, IReadOnlyList<string> Arguments) Again(string? running)
    {
        var self = typeof(FileLook).Assembly.GetName().Name!;
        var name = Path.GetFileName(running);
        if (name == self || name == self + ".exe")
            return (running!, [LookAtFileCommand.Name]);
        return (name is "dotnet" or "dotnet.exe" ? running! : "dotnet", [Path.Combine(AppContext.BaseDirectory, self + ".dll"), LookAtFileCommand.Name]);
    }

    private Process? Start(string? purpose)
    {
        try
        {
            var start = Starting();
            if (purpose is not null)
                start.ArgumentList.Add(purpose);
            return Process.Start(start);
        }
        catch (Exception fault) when (fault is Win32Exception or InvalidOperationException)
        {
            log.LogError(fault, "No process could be started to look at a file");
            return null;
        }
    }

    private static ProcessStartInfo Own()
    {
        var (program, arguments) = Again(Environment.ProcessPath);
        var start = new ProcessStartInfo(program, arguments);
        start.RedirectStandardInput = start.RedirectStandardOutput = start.RedirectStandardError = true;
        var inherited = new[] { "PATH", "DOTNET_ROOT", "SystemRoot", "TEMP", "TMPDIR", "LD_LIBRARY_PATH" }.Select(n => (Name: n, Value: Environment.GetEnvironmentVariable(n))).ToList();
        start.Environment.Clear();
        foreach (var (variable, value) in inherited.Where(v => v.Value is not null))
            start.Environment[variable] = value;
        start.Environment["DOTNET_GCHeapHardLimit"] = MostMemory;
        start.Environment["DOTNET_gcServer"] = "0";
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        return start;
    }

    private static async Task FeedAsync(Stream brought, Stream input, CancellationToken ct)
    {
        try
        {
            await using (input)
                await brought.CopyToAsync(input, ct);
        }
        catch (IOException)
        {
            // It ended before it read everything: its exit code says the rest.
        }
    }

    private static async Task CopyAsync(Stream from, Stream to, long bytes, CancellationToken ct)
    {
        var buffer = new byte[81_920];
        while (bytes > 0)
        {
            var read = await from.ReadAsync(buffer.AsMemory(0, (int)Math.Min(bytes, buffer.Length)), ct);
            if (read == 0)
                return;
            await to.WriteAsync(buffer.AsMemory(0, read), ct);
            bytes -= read;
        }
    }

    private static async Task<T?> ReadAsync<T>(Stream output, Func<T, Stream, Task> take, CancellationToken ct)
        where T : class
    {
        var line = new List<byte>();
        var one = new byte[1];
        while (await output.ReadAsync(one, ct) == 1 && one[0] != '\n')
        {
            line.Add(one[0]);
            if (line.Count > LongestVerdict)
                return null;
        }

        T? verdict;
        try
        {
            verdict = line.Count == 0 ? null : JsonSerializer.Deserialize<T>(line.ToArray());
        }
        catch (JsonException)
        {
            return null;
        }

        if (verdict is null)
            await output.CopyToAsync(Stream.Null, ct);
        else
            await take(verdict, output);
        return verdict;
    }

    private static void Stop(Process process)
    {
        try
        {
            if (!process.HasExited)
                process.Kill(entireProcessTree: true);
        }
        catch (Exception fault) when (fault is InvalidOperationException or Win32Exception)
        {
            // It ended in this very moment.
        }
    }
}
