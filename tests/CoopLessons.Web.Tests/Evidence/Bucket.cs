using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>
/// A service on this machine that keeps objects as the S3 protocol has it, as far as files of families need: PUT, GET, HEAD,
/// DELETE and a list. Whoever cannot sign gets nothing.
/// </summary>
internal sealed class Bucket : IAsyncDisposable
{
    public const string Name = "millrace-files";
    public const string Key = "MILLRACEKEY";
    public const string Secret = "four stones in the race/and a wheel+";
    private readonly WebApplication _app;

    private Bucket(WebApplication app) => _app = app;

    public ConcurrentDictionary<string, (byte[] Bytes, DateTime At)> Objects { get; } = new();

    /// <summary>Requests whose signature was wrong.</summary>
    public ConcurrentBag<string> Refused { get; } = [];

    public string Address => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    public static async Task<Bucket> OpenAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        var bucket = new Bucket(app);
        app.Run(bucket.AnswerAsync);
        await app.StartAsync();
        return bucket;
    }

    public async ValueTask DisposeAsync() => await _app.DisposeAsync();

    private async Task AnswerAsync(HttpContext context)
    {
        using var memory = new MemoryStream();
        await context.Request.Body.CopyToAsync(memory);
        var body = memory.ToArray();
        var raw = context.Features.Get<IHttpRequestFeature>()!.RawTarget;
        if (!IsSigned(context.Request, raw, body))
        {
            Refused.Add($"{context.Request.Method} {raw}");
            context.Response.StatusCode = (int)HttpStatusCode.Forbidden;
            return;
        }

        var key = Uri.UnescapeDataString(raw.Split('?')[0])[(Name.Length + 2)..];
        switch (context.Request.Method)
        {
            case "PUT":
                Objects[key] = (body, DateTime.UtcNow);
                context.Response.Headers.ETag = $"\"{Convert.ToHexStringLower(SHA256.HashData(body))[..32]}\"";
                break;
            case "DELETE":
                Objects.TryRemove(key, out _);
                context.Response.StatusCode = (int)HttpStatusCode.NoContent;
                break;
            case "GET" when key.Length == 0:
                await ListAsync(context);
                break;
            case "GET" or "HEAD" when Objects.TryGetValue(key, out var found):
                context.Response.ContentLength = found.Bytes.Length;
                context.Response.Headers.LastModified = found.At.ToString("R", CultureInfo.InvariantCulture);
                if (context.Request.Method == "GET")
                    await context.Response.Body.WriteAsync(found.Bytes);
                break;
            default:
                context.Response.StatusCode = (int)HttpStatusCode.NotFound;
                break;
        }
    }

    /// <summary>One object a page, so that whoever lists must ask on.</summary>
    private async Task ListAsync(HttpContext context)
    {
        var prefix = context.Request.Query["prefix"].ToString();
        var after = context.Request.Query["continuation-token"].ToString();
        var keys = Objects.Keys.Where(k => k.StartsWith(prefix, StringComparison.Ordinal) && string.CompareOrdinal(k, after) > 0).Order(StringComparer.Ordinal).ToList();
        var first = keys.FirstOrDefault();
        var text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?><ListBucketResult xmlns=\"http://s3.amazonaws.com/doc/2006-03-01/\">");
        text.Append(CultureInfo.InvariantCulture, $"<Name>{Name}</Name><IsTruncated>{(keys.Count > 1 ? "true" : "false")}</IsTruncated>");
        if (keys.Count > 1)
            text.Append(CultureInfo.InvariantCulture, $"<NextContinuationToken>{first}</NextContinuationToken>");
        if (first is not null)
            text.Append(CultureInfo.InvariantCulture, $"<Contents><Key>{first}</Key><LastModified>{Objects[first].At:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}</LastModified><Size>{Objects[first].Bytes.Length}</Size></Contents>");
        context.Response.ContentType = "application/xml";
        await context.Response.WriteAsync(text.Append("</ListBucketResult>").ToString());
    }

    private static bool IsSigned(HttpRequest request, string raw, byte[] body)
    {
        // AWS4-HMAC-SHA256 Credential=KEY/20260312/us-east-1/s3/aws4_request, SignedHeaders=host;…, Signature=…
        var told = request.Headers.Authorization.ToString().Split(' ', 2);
        if (told is not ["AWS4-HMAC-SHA256", var rest])
            return false;
        var parts = rest.Split(',', StringSplitOptions.TrimEntries).Select(p => p.Split('=', 2)).ToDictionary(p => p[0], p => p[1]);
        var scope = parts["Credential"].Split('/', 2);
        var hash = request.Headers["x-amz-content-sha256"].ToString();
        if (scope[0] != Key || hash != Convert.ToHexStringLower(SHA256.HashData(body)))
            return false;
        var names = parts["SignedHeaders"].Split(';');
        var headers = names.Select(n => (n, n == "host" ? request.Host.Value! : request.Headers[n].ToString()));
        return parts["Signature"] == Signature.Of(Secret, request.Method, raw, headers, hash, request.Headers["x-amz-date"].ToString(), scope[1]);
    }
}

/// <summary>
/// The signature of a request, version 4, computed by its published steps: "Authenticating Requests: Using the Authorization
/// Header (AWS Signature Version 4)", Amazon Simple Storage Service API Reference.
/// </summary>
internal static class Signature
{
    /// <param name="scope"><c>20130524/us-east-1/s3/aws4_request</c>.</param>
    public static string Of(string secret, string method, string target, IEnumerable<(string Name, string Value)> headers, string bodyHash, string instant, string scope)
    {
        var (path, query) = target.Split('?', 2) is [var p, var q] ? (p, q) : (target, "");
        var asked = string.Join('&', query.Split('&', StringSplitOptions.RemoveEmptyEntries).Select(a => a.Contains('=', StringComparison.Ordinal) ? a : a + "=").Order(StringComparer.Ordinal));
        var signed = headers.OrderBy(h => h.Name, StringComparer.Ordinal).ToList();
        var canonical = $"{method}\n{path}\n{asked}\n{string.Concat(signed.Select(h => $"{h.Name}:{h.Value.Trim()}\n"))}\n{string.Join(';', signed.Select(h => h.Name))}\n{bodyHash}";
        var toSign = $"AWS4-HMAC-SHA256\n{instant}\n{scope}\n{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(canonical)))}";
        var key = scope.Split('/').Aggregate(Encoding.UTF8.GetBytes("AWS4" + secret), Mac);
        return Convert.ToHexStringLower(Mac(key, toSign));
    }

    private static byte[] Mac(byte[] key, string text) => HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(text));
}
