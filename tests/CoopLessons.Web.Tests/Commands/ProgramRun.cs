using System.Diagnostics;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Commands;

/// <summary>The program run once as a process of its own, as a host runs it.</summary>
public sealed record ProgramRun(int Code, byte[] Output, string Error)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    public string Text => System.Text.Encoding.UTF8.GetString(Output);

    public IReadOnlyList<string> ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public static Task<ProgramRun> OfAsync(params string[] args) => OfAsync(null, args);

    /// <summary>On the database of a test server, where one is given.</summary>
    public static async Task<ProgramRun> OfAsync(TestDatabase? database, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = AppContext.BaseDirectory,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "CoopLessons.Web.dll"));
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        foreach (var (key, value) in database?.Settings() ?? [])
            start.Environment[key.Replace(":", "__", StringComparison.Ordinal)] = value;

        using var process = Process.Start(start)!;
        using var ends = new CancellationTokenSource(Longest);
        using var output = new MemoryStream();
        try
        {
            var error = process.StandardError.ReadToEndAsync(ends.Token);
            await process.StandardOutput.BaseStream.CopyToAsync(output, ends.Token);
            await process.WaitForExitAsync(ends.Token);
            return new ProgramRun(process.ExitCode, output.ToArray(), await error);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill(entireProcessTree: true);
        }
    }

    /// <summary>What wrong use looks like: 2, one line on standard error, nothing on standard output.</summary>
    public void AssertWrongUse(string part)
    {
        Assert.True(Code == 2, $"ended with {Code}: {Error}");
        Assert.Empty(Output);
        Assert.Contains(part, Assert.Single(ErrorLines), StringComparison.Ordinal);
        Assert.EndsWith("\n", Error, StringComparison.Ordinal);
    }
}
