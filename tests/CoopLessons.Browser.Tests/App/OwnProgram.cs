using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace CoopLessons.Browser.Tests.App;

/// <summary>The program in a process of its own, which can be killed and started again on the same data.</summary>
public sealed class OwnProgram : IAsyncDisposable
{
    private readonly string _data = Directory.CreateTempSubdirectory("cooplessons-").FullName;
    private Process? _process;

    public string Address { get; private set; } = "";

    /// <summary>Starts it on a free port; it answers when this returns.</summary>
    public async Task StartAsync()
    {
        Address = $"http://127.0.0.1:{FreePort()}";
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "CoopLessons.Web.dll"), "serve", "--data", _data, "--urls", Address]) { RedirectStandardOutput = true };
        _process = Process.Start(start)!;
        _ = _process.StandardOutput.ReadToEndAsync();
        using var http = new HttpClient();
        while (!await AnswersAsync(http))
        {
            Assert.False(_process.HasExited, $"The program ended with {(_process.HasExited ? _process.ExitCode : 0)}.");
            await Task.Delay(100);
        }
    }

    /// <summary>Ends it as a power cut would: nothing is said goodbye to.</summary>
    public void Kill()
    {
        _process!.Kill();
        _process.WaitForExit();
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false })
        {
            _process.Kill();
            await _process.WaitForExitAsync();
        }

        _process?.Dispose();
        Directory.Delete(_data, recursive: true);
    }

    private async Task<bool> AnswersAsync(HttpClient http)
    {
        try
        {
            using var answer = await http.GetAsync(Address + "/readyz");
            return answer.StatusCode == HttpStatusCode.OK;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
