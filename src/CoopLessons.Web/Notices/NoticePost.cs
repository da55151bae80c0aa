using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CoopLessons.Data.Notices;

namespace CoopLessons.Web.Notices;

/// <summary>What a push service answered.</summary>
public enum Delivery
{
    Taken,

    /// <summary>The browser takes no notices any more: its address is forgotten.</summary>
    Gone,

    /// <summary>Not now; it may be tried again while it is worth it.</summary>
    Later,

    /// <summary>Never so.</summary>
    Refused,
}

/// <summary>A notice as it is sent.</summary>
/// <param name="Key">Names it once and for all, so that it is sent once.</param>
/// <param name="To">Path that opens when it is tapped.</param>
/// <param name="Life">How long the push service keeps it for a device that is off.</param>
public sealed record Notice(string Key, string Title, string Body, string To, TimeSpan Life, bool Urgent);

/// <summary>Sends notices by web push (RFC 8030): the only connections that this server makes by itself.</summary>
public sealed class NoticePost : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private readonly HttpClient _client;
    private readonly NoticeAddresses _addresses;
    private readonly NoticeKeys _keys;

    public NoticePost(NoticeAddresses addresses, NoticeKeys keys)
    {
        (_addresses, _keys) = (addresses, keys);
        _client = new HttpClient(new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            UseCookies = false,
            // A proxy would connect in this server's stead, past the look at where the name leads.
            UseProxy = false,
            ConnectTimeout = Patience,
            MaxResponseHeadersLength = 16,
            PooledConnectionLifetime = TimeSpan.FromMinutes(5),
            ConnectCallback = ConnectAsync,
        })
        { Timeout = Patience };
    }

    public async Task<Delivery> SendAsync(NoticeDevice device, Notice notice, CancellationToken ct)
    {
        // The list may have grown shorter since the browser gave its address.
        if (!_addresses.Allows(device.Endpoint, out var address))
            return Delivery.Refused;
        try
        {
            using var request = Request(device, notice, address);
            using var answer = await _client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, ct);
            return answer.StatusCode switch
            {
                >= HttpStatusCode.OK and < HttpStatusCode.Ambiguous => Delivery.Taken,
                HttpStatusCode.NotFound or HttpStatusCode.Gone => Delivery.Gone,
                HttpStatusCode.TooManyRequests or HttpStatusCode.RequestTimeout or >= HttpStatusCode.InternalServerError => Delivery.Later,
                _ => Delivery.Refused,
            };
        }
        catch (HttpRequestException)
        {
            return Delivery.Later;
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            return Delivery.Later;
        }
        catch (CryptographicException)
        {
            return Delivery.Refused;
        }
    }

    public void Dispose() => _client.Dispose();

    private HttpRequestMessage Request(NoticeDevice device, Notice notice, Uri address)
    {
        var text = JsonSerializer.SerializeToUtf8Bytes(new { title = notice.Title, body = notice.Body, to = notice.To, tag = Topic(notice) });
        var content = new ByteArrayContent(SealedMessage.Seal(text, device.Key, device.Secret));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        content.Headers.ContentEncoding.Add("aes128gcm");
        var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = content };
        request.Headers.TryAddWithoutValidation("Authorization", _keys.AuthorizationFor(address));
        request.Headers.Add("TTL", ((int)notice.Life.TotalSeconds).ToString(System.Globalization.CultureInfo.InvariantCulture));
        request.Headers.Add("Urgency", notice.Urgent ? "high" : "normal");
        request.Headers.Add("Topic", Topic(notice));
        return request;
    }

    /// <summary>At most 32 signs of base64url (RFC 8030 § 5.4): sent again after an answer that was lost, it takes the place of the first.</summary>
    private static string Topic(Notice notice) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(notice.Key)))[..32];

    /// <summary>Looks at where the name leads at the moment of connecting, and connects to that very address.</summary>
    private async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken ct)
    {
        var found = await Dns.GetHostAddressesAsync(context.DnsEndPoint.Host, ct);
        if (found.FirstOrDefault(_addresses.Allows) is not { } address)
            throw new HttpRequestException($"{context.DnsEndPoint.Host} leads to no address on the open network.");
        var socket = new Socket(address.AddressFamily, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(new IPEndPoint(address, context.DnsEndPoint.Port), ct);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
