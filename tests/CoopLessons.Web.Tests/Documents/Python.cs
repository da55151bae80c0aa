using System.Diagnostics;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>A fact that is checked by a package of Python, skipped without it and failed where CI is true.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FactBesidePythonAttribute : FactAttribute
{
    public FactBesidePythonAttribute(string package)
    {
        if (Python.Find(package) is null && Environment.GetEnvironmentVariable("CI") != "true")
            Skip = $"Python with its package {package} is not installed here.";
    }
}

/// <summary>The first Python on PATH that has a package: several may be there, of which one has what the system installed.</summary>
internal static class Python
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    public static ReferenceProgram With(string package) =>
        new(Find(package) ?? throw new FileNotFoundException($"No python3 on PATH has the package {package}."));

    public static string? Find(string package) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Select(folder => Path.Combine(folder, "python3"))
            .Where(File.Exists)
            .FirstOrDefault(path => Has(path, package));

    private static bool Has(string path, string package)
    {
        using var process = Process.Start(new ProcessStartInfo(path, ["-c", $"import {package}"]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        if (process.WaitForExit(Patience))
            return process.ExitCode == 0;
        process.Kill(entireProcessTree: true);
        return false;
    }
}
