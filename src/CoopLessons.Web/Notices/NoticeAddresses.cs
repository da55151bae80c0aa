using System.Net;
using CoopLessons.Data.Notices;
using CoopLessons.Web.Hosting;

namespace CoopLessons.Web.Notices;

/// <summary>
/// Where notices may be sent. The address comes from a browser, and anybody can pretend to be one: it must be HTTPS, at
/// a push service on the host's list, and never inside the host's own network.
/// </summary>
public sealed class NoticeAddresses(ServerSettings settings)
{
    private readonly string[] _hosts = settings.NoticeHosts.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Whether the address is one to which this server sends.</summary>
    public bool Allows(string endpoint, out Uri address)
    {
        address = null!;
        if (endpoint.Length > NoticeDevice.LongestEndpoint || !Uri.TryCreate(endpoint, UriKind.Absolute, out var read) || read.UserInfo.Length > 0)
            return false;
        address = read;
        if (settings.NoticesToLoopback && read.Scheme is "http" or "https" && IPAddress.TryParse(read.Host, out var here) && IPAddress.IsLoopback(here))
            return settings.NoticesToLoopback;
        return read.Scheme == Uri.UriSchemeHttps && read.IsDefaultPort && read.HostNameType == UriHostNameType.Dns
            && _hosts.Any(h => read.Host.Equals(h, StringComparison.OrdinalIgnoreCase) || read.Host.EndsWith("." + h, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Whether a connection may go to an address, to which a name was found to lead.</summary>
    public bool Allows(IPAddress address) => PublicAddress.Is(address) || (settings.NoticesToLoopback && IPAddress.IsLoopback(address));
}
