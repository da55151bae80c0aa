using System.Threading.Channels;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>What came in at the push service.</summary>
internal sealed record Pushed(string Path, IReadOnlyDictionary<string, string> Headers, byte[] Body);

/// <summary>A push service on this machine, which keeps what it is sent (RFC 8030 § 5).</summary>
internal sealed class PushService : IAsyncDisposable
{
    private readonly Channel<Pushed> _came = Channel.CreateUnbounded<Pushed>();
    private readonly WebApplication _app;

    private PushService()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _app = builder.Build();
        _app.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            context.Response.StatusCode = Answers;
            if (Answers is >= 300 and < 400)
                context.Response.Headers.Location = "/elsewhere";
            _came.Writer.TryWrite(new Pushed(context.Request.Path, context.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase), body.ToArray()));
        });
    }

    /// <summary>The status of each answer.</summary>
    public int Answers { get; set; } = StatusCodes.Status201Created;

    public string Address => _app.Urls.First();

    public static async Task<PushService> StartAsync()
    {
        var service = new PushService();
        await service._app.StartAsync();
        return service;
    }

    /// <summary>Those that have come by now.</summary>
    public IReadOnlyList<Pushed> Came()
    {
        var came = new List<Pushed>();
        while (_came.Reader.TryRead(out var pushed))
            came.Add(pushed);
        return came;
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
