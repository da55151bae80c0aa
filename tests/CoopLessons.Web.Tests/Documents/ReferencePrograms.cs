using System.Diagnostics;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>
/// A fact that is checked by a program from outside the project. Without the program the fact is skipped and says so;
/// where CI is true it runs and fails.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FactBesideAttribute : FactAttribute
{
    /// <param name="names">Names under which the program may be found; one is enough.</param>
    public FactBesideAttribute(params string[] names)
    {
        if (ReferenceProgram.Find(names) is null && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = $"{names[0]} is not installed here.";
    }
}

/// <summary>A theory that is checked by programs from outside the project, as <see cref="FactBesideAttribute"/> says.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class TheoryBesideAttribute : TheoryAttribute
{
    /// <param name="programs">All of them are needed.</param>
    public TheoryBesideAttribute(params string[] programs)
    {
        if (Array.Find(programs, p => ReferenceProgram.Find(p) is null) is { } missing && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = $"{missing} is not installed here.";
    }
}

/// <summary>A program from outside the project, found on PATH.</summary>
internal sealed class ReferenceProgram(string path)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    public static string? Find(params string[] names) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(_ => names, Path.Combine)
            .FirstOrDefault(File.Exists);

    public static ReferenceProgram Named(params string[] names) =>
        new(Find(names) ?? throw new FileNotFoundException($"{names[0]} is not on PATH."));

    public async Task<(int ExitCode, string Output, string Errors)> Run(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(path, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        using var limit = new CancellationTokenSource(Patience);
        var output = process.StandardOutput.ReadToEndAsync(limit.Token);
        var errors = process.StandardError.ReadToEndAsync(limit.Token);
        try
        {
            await process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }

        return (process.ExitCode, await output, await errors);
    }
}

/// <summary>A folder of its own for one check, removed afterwards.</summary>
internal sealed class Workbench : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("coop-documents-");

    public string Put(string name, byte[] bytes)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public string Folder(string name) => _folder.CreateSubdirectory(name).FullName;

    public void Dispose() => _folder.Delete(recursive: true);
}
