using System.Diagnostics;
using CoopLessons.Web.Commands;
using CoopLessons.Web.Files;
using Microsoft.Extensions.Logging.Abstractions;

namespace CoopLessons.Web.Tests.Printing;

public sealed class The_program_that_looks_at_files
{
    private static readonly string Assembly = Path.Combine(AppContext.BaseDirectory, "CoopLessons.Web.dll");

    [Theory]
    [InlineData("/opt/cooplessons/CoopLessons.Web")]
    [InlineData("/opt/cooplessons/CoopLessons.Web.exe")]
    public void Is_the_one_that_runs(string running)
    {
        var (program, arguments) = FileLook.Again(running);
        Assert.Equal(running, program);
        Assert.Equal([LookAtFileCommand.Name], arguments);
    }

    [Theory]
    [InlineData("/usr/share/dotnet/dotnet", "/usr/share/dotnet/dotnet")]
    [InlineData("/usr/bin/testhost", "dotnet")]
    [InlineData(null, "dotnet")]
    public void Is_handed_to_the_runtime_where_that_is_what_runs(string? running, string expected)
    {
        var (program, arguments) = FileLook.Again(running);
        Assert.Equal(expected, program);
        Assert.Equal([Assembly, LookAtFileCommand.Name], arguments);
    }

    [Fact]
    public async Task Gives_no_verdict_where_it_cannot_be_started()
    {
        var look = new FileLook(NullLogger<FileLook>.Instance)
        {
            Starting = () => new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "no such program")) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true },
        };
        using var brought = new MemoryStream([1, 2, 3]);
        Assert.Null(await look.OfAsync(brought, Stream.Null, CancellationToken.None));
    }
}
