using System.Diagnostics;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>A published program in a process of its own, with the invented co-op in it: as a host would run it, its files packed and told to be kept.</summary>
internal sealed class PublishedProgram : IAsyncDisposable
{
    private const string Says = "All sign in with the password: ";
    private readonly string _data = Directory.CreateTempSubdirectory("cooplessons-measured-").FullName;
    private readonly Process _process;

    private PublishedProgram(string folder, int port)
    {
        Address = new Uri($"http://127.0.0.1:{port}");
        _process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(folder, "CoopLessons.Web.dll"), "demo", "--data", _data, "--urls", Address.ToString()])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = folder,
        })!;
    }

    public Uri Address { get; }

    public string Password { get; private set; } = "";

    /// <summary>A guardian of the Alder family.</summary>
    public string Email { get; private set; } = "";

    /// <param name="folder">Made by <c>dotnet publish</c>.</param>
    public static async Task<PublishedProgram> StartAsync(string folder)
    {
        using var free = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        free.Start();
        var port = ((System.Net.IPEndPoint)free.LocalEndpoint).Port;
        free.Stop();
        var program = new PublishedProgram(folder, port);
        while (await program._process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith(Says, StringComparison.Ordinal))
                program.Password = line[Says.Length..].Trim();
            else if (program.Password.Length > 0 && line.Contains('@', StringComparison.Ordinal))
            {
                program.Email = line.Trim();
                _ = program._process.StandardOutput.ReadToEndAsync();
                return program;
            }
        }

        throw new InvalidOperationException($"The program in {folder} did not start.");
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_data, recursive: true);
    }
}
