using System.Net;
using Microsoft.AspNetCore.HttpOverrides;

namespace CoopLessons.Web.Hosting;

public static class Forwarding
{
    /// <summary>Believes forwarding headers only from the proxies that the host named.</summary>
    /// <exception cref="SettingUnfitException">A proxy is neither an address nor a network.</exception>
    public static void AddForwarding(this IServiceCollection services, ServerSettings settings)
    {
        var (addresses, networks) = (new List<IPAddress>(), new List<System.Net.IPNetwork>());
        foreach (var proxy in settings.TrustedProxies.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (System.Net.IPNetwork.TryParse(proxy, out var network))
                networks.Add(network);
            else if (IPAddress.TryParse(proxy, out var address))
                addresses.Add(address);
            else
                throw new SettingUnfitException($"CoopLessons__TrustedProxies: “{proxy}” is neither an address nor a network such as 172.31.71.0/28.");
        }

        services.Configure<ForwardedHeadersOptions>(o =>
        {
            o.ForwardedHeaders = addresses.Count + networks.Count == 0
                ? ForwardedHeaders.None
                : ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
            o.KnownProxies.Clear();
            o.KnownIPNetworks.Clear();
            addresses.ForEach(o.KnownProxies.Add);
            networks.ForEach(o.KnownIPNetworks.Add);
        });
    }
}

/// <summary>Refuses plain HTTP from other machines unless the host allowed it by name.</summary>
public sealed class TlsBeyondThisMachine(RequestDelegate next, ServerSettings settings)
{
    public Task InvokeAsync(HttpContext context)
    {
        var plain = !context.Request.IsHttps && !settings.PlainHttpBeyondThisMachine && !context.IsFromThisMachine();
        if (!plain || context.Request.Path.StartsWithSegments("/healthz") || context.Request.Path.StartsWithSegments("/readyz"))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(
            "This server answers other machines only over HTTPS, since children's names and passwords would travel readable.\n" +
            "Put a proxy with TLS before it and name it in CoopLessons__TrustedProxies, or, on a network that you trust,\n" +
            "set CoopLessons__PlainHttpBeyondThisMachine=true.\n");
    }
}

public static class RemoteAddress
{
    /// <summary>
    /// Whether the request comes from the host itself and asks for it by a name of its own; a connection without an
    /// address is one inside this machine. What a proxy here passes on comes from elsewhere, even where the host forgot
    /// to name that proxy, and so does what a page from elsewhere asks for under a name that it bent to this machine.
    /// </summary>
    public static bool IsFromThisMachine(this HttpContext context) =>
        (context.Connection.RemoteIpAddress is not { } address || IPAddress.IsLoopback(address))
        && !context.Request.Headers.ContainsKey(ForwardedHeadersDefaults.XForwardedForHeaderName)
        && (context.Request.Host.Host == "localhost" || (IPAddress.TryParse(context.Request.Host.Host.Trim('[', ']'), out var named) && IPAddress.IsLoopback(named)));
}
