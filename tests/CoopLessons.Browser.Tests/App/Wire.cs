using System.Net;
using System.Net.Sockets;
using System.Text;

namespace CoopLessons.Browser.Tests.App;

/// <summary>
/// What lies between a phone and the server: a port that passes every byte on, and can be cut, lose the server's answer to
/// one request, or answer in the server's place as the sign-in page of a guest network does.
/// </summary>
public sealed class Wire : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _end = new();
    private readonly List<Socket> _open = [];
    private Uri _server;
    private volatile bool _cut;
    private volatile bool _portal;
    private string? _loses;
    private string? _breaks;
    private Action? _broken;
    private int _lost;

    public Wire(string server)
    {
        _server = new Uri(server);
        _listener.Start();
        Address = $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}";
        _ = AcceptAsync();
    }

    public string Address { get; }

    /// <summary>How many answers were lost.</summary>
    public int Lost => _lost;

    /// <summary>The server's own port from now on, after it was started anew.</summary>
    public void LeadTo(string server) => _server = new Uri(server);

    /// <summary>Nothing gets through any more, and what was under way ends.</summary>
    public void Cut()
    {
        _cut = true;
        CloseAll();
    }

    /// <summary>Everything gets through again.</summary>
    public void Mend() => (_cut, _portal) = (false, false);

    /// <summary>Every request is answered with a page of somebody else's, and 200.</summary>
    public void AnswerForTheServer() => _portal = true;

    /// <summary>The next request that begins like this reaches the server whole; its answer does not come back.</summary>
    public void LoseTheAnswerTo(string request) => _loses = request;

    /// <summary>The next request that begins like this breaks off in its middle, and something happens to the server then.</summary>
    public void BreakIn(string request, Action then) => (_breaks, _broken) = (request, then);

    public void Dispose()
    {
        _end.Cancel();
        _listener.Stop();
        CloseAll();
        _end.Dispose();
    }

    private void CloseAll()
    {
        lock (_open)
        {
            foreach (var socket in _open)
                socket.Close(0);
            _open.Clear();
        }
    }

    private async Task AcceptAsync()
    {
        while (!_end.IsCancellationRequested)
        {
            try
            {
                var phone = await _listener.AcceptSocketAsync(_end.Token);
                _ = Task.Run(() => ServeAsync(phone));
            }
            catch (Exception fault) when (fault is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task ServeAsync(Socket phone)
    {
        if (_cut)
        {
            phone.Close(0);
            return;
        }

        if (_portal)
        {
            await AnswerAsync(phone);
            return;
        }

        using var server = new Socket(SocketType.Stream, ProtocolType.Tcp);
        var passing = new Passing();
        lock (_open)
            _open.AddRange([phone, server]);
        try
        {
            await server.ConnectAsync(_server.Host, _server.Port);
            await Task.WhenAny(UpAsync(phone, server, passing), DownAsync(server, phone, passing));
        }
        catch (Exception fault) when (fault is SocketException or ObjectDisposedException)
        {
            // One of both ends is gone; so is the other, then.
        }

        phone.Close(0);
        server.Close(0);
    }

    private async Task UpAsync(Socket phone, Socket server, Passing passing)
    {
        var buffer = new byte[65_536];
        int read;
        while ((read = await phone.ReceiveAsync(buffer)) > 0)
        {
            var text = Encoding.Latin1.GetString(buffer, 0, read);
            if (_loses is { } loses && text.StartsWith(loses, StringComparison.Ordinal) && Interlocked.CompareExchange(ref _loses, null, loses) == loses)
                passing.Loses = true;
            if (_breaks is { } breaks && text.StartsWith(breaks, StringComparison.Ordinal))
            {
                _breaks = null;
                await server.SendAsync(buffer.AsMemory(0, read / 2));
                _broken?.Invoke();
                return;
            }

            await server.SendAsync(buffer.AsMemory(0, read));
        }
    }

    private async Task DownAsync(Socket server, Socket phone, Passing passing)
    {
        var buffer = new byte[65_536];
        int read;
        while ((read = await server.ReceiveAsync(buffer)) > 0)
        {
            // The server has answered, so what was asked is done.
            if (passing.Loses)
            {
                Interlocked.Increment(ref _lost);
                return;
            }

            await phone.SendAsync(buffer.AsMemory(0, read));
        }
    }

    private static async Task AnswerAsync(Socket phone)
    {
        var buffer = new byte[65_536];
        await phone.ReceiveAsync(buffer);
        const string Page = "<!DOCTYPE html><title>Guest network</title><h1>Accept the terms of the guest network</h1>";
        await phone.SendAsync(Encoding.ASCII.GetBytes($"HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nContent-Length: {Page.Length}\r\nConnection: close\r\n\r\n{Page}"));
        phone.Shutdown(SocketShutdown.Both);
        phone.Close(1);
    }

    private sealed class Passing
    {
        public volatile bool Loses;
    }
}
