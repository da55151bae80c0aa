using System.Net;
using System.Net.Sockets;

namespace CoopLessons.Web.Notices;

/// <summary>Which addresses are out on the open network. Ranges of the IANA special-purpose registries (RFC 6890), from memory.</summary>
public static class PublicAddress
{
    private static readonly IPNetwork[] SpecialFour =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24", "192.88.99.0/24",
            "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4",
        }.Select(IPNetwork.Parse),
    ];

    private static readonly IPNetwork GlobalSix = IPNetwork.Parse("2000::/3");

    // Among the global ones: special protocols, documentation, and those that carry an older address inside.
    private static readonly IPNetwork[] SpecialSix = [.. new[] { "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20" }.Select(IPNetwork.Parse)];

    public static bool Is(IPAddress address)
    {
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return plain.AddressFamily switch
        {
            AddressFamily.InterNetwork => !SpecialFour.Any(n => n.Contains(plain)),
            AddressFamily.InterNetworkV6 => GlobalSix.Contains(plain) && !SpecialSix.Any(n => n.Contains(plain)),
            _ => false,
        };
    }
}
