using System.Net;
using System.Net.Sockets;
using System.Text;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>Passes every byte between a browser and the server on and counts it, as the phone's bill would: heads, bodies, and those of the service worker.</summary>
internal sealed class CountedWire : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly Uri _server;
    private readonly List<string> _requests = [];
    private long _down;

    public CountedWire(Uri server)
    {
        _server = server;
        _listener.Start();
        Address = $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}";
        _ = AcceptAsync();
    }

    public string Address { get; }

    /// <summary>What went down the wire since it was asked last, and for which requests.</summary>
    public (long Bytes, IReadOnlyList<string> Requests) Take()
    {
        lock (_requests)
        {
            var taken = (Interlocked.Exchange(ref _down, 0), (IReadOnlyList<string>)[.. _requests]);
            _requests.Clear();
            return taken;
        }
    }

    public void Dispose() => _listener.Dispose();

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                var phone = await _listener.AcceptTcpClientAsync();
                _ = ServeAsync(phone);
            }
        }
        catch (Exception fault) when (fault is SocketException or ObjectDisposedException)
        {
            // The measuring is over.
        }
    }

    private async Task ServeAsync(TcpClient phone)
    {
        using (phone)
        using (var server = new TcpClient())
        {
            try
            {
                await server.ConnectAsync(_server.Host, _server.Port);
                await Task.WhenAny(PassAsync(phone.GetStream(), server.GetStream(), Asked), PassAsync(server.GetStream(), phone.GetStream(), (_, count) => Interlocked.Add(ref _down, count)));
            }
            catch (IOException)
            {
                // The browser closed a connection that it kept for later.
            }
        }
    }

    private static async Task PassAsync(NetworkStream from, NetworkStream to, Action<byte[], int> passing)
    {
        var buffer = new byte[65_536];
        int read;
        while ((read = await from.ReadAsync(buffer)) > 0)
        {
            passing(buffer, read);
            await to.WriteAsync(buffer.AsMemory(0, read));
        }
    }

    private void Asked(byte[] buffer, int count)
    {
        var line = Encoding.Latin1.GetString(buffer, 0, Math.Min(count, 300)).Split("\r\n")[0];
        if (!line.EndsWith("HTTP/1.1", StringComparison.Ordinal))
            return;
        lock (_requests)
            _requests.Add(line[..^" HTTP/1.1".Length]);
    }
}
