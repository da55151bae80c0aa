using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>A mail as the mail server got it.</summary>
/// <param name="Raw">The octets as Latin-1, so that each is one sign.</param>
/// <param name="To">Addresses of the envelope.</param>
internal sealed record Mailed(MimeMessage Message, string Raw, IReadOnlyList<string> To);

/// <summary>
/// A mail server (RFC 5321) on this machine, by the SmtpServer package, which shares no code with what sends. It can go away
/// and come back at the same port.
/// </summary>
internal sealed class LoopbackMail : MessageStore, IAsyncDisposable
{
    private readonly ConcurrentQueue<Mailed> _came = [];
    private SmtpServer.SmtpServer? _server;
    private Task _runs = Task.CompletedTask;

    private LoopbackMail(int port) => Port = port;

    public int Port { get; }

    /// <summary>What it answers to the next mails.</summary>
    public SmtpResponse Answers { get; set; } = SmtpResponse.Ok;

    public static async Task<LoopbackMail> StartAsync()
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var mail = new LoopbackMail(((IPEndPoint)free.LocalEndpoint).Port);
        free.Stop();
        await mail.ComeAsync();
        return mail;
    }

    public async Task ComeAsync()
    {
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(this);
        var options = new SmtpServerOptionsBuilder().ServerName("mail.millrace.example").Endpoint(e => e.Endpoint(new IPEndPoint(IPAddress.Loopback, Port))).Build();
        _server = new SmtpServer.SmtpServer(options, services);
        _runs = _server.StartAsync(CancellationToken.None);
        while (!await IsThereAsync())
            await Task.Yield();
    }

    public async Task GoAsync()
    {
        _server?.Shutdown();
        await _runs;
        _server = null;
    }

    /// <summary>What came since this was asked last.</summary>
    public IReadOnlyList<Mailed> Came()
    {
        var came = new List<Mailed>();
        while (_came.TryDequeue(out var mailed))
            came.Add(mailed);
        return came;
    }

    public override Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        if (Answers == SmtpResponse.Ok)
        {
            var bytes = buffer.ToArray();
            using var stream = new MemoryStream(bytes);
            _came.Enqueue(new Mailed(MimeMessage.Load(stream, cancellationToken), System.Text.Encoding.Latin1.GetString(bytes), [.. transaction.To.Select(t => $"{t.User}@{t.Host}")]));
        }

        return Task.FromResult(Answers);
    }

    public async ValueTask DisposeAsync() => await GoAsync();

    private async Task<bool> IsThereAsync()
    {
        using var client = new TcpClient();
        try
        {
            await client.ConnectAsync(IPAddress.Loopback, Port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
