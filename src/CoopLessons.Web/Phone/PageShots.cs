using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.Features;

namespace CoopLessons.Web.Phone;

/// <summary>
/// Pages of this server as they would be sent to somebody, to be kept on a phone: asked for in this process, by the same
/// way as any request, with that person's cookies. What is bound to a moment is left out of them: tokens against forged
/// forms, and ids that a page mints for what is sent from it.
/// </summary>
public sealed partial class PageShots(IServiceScopeFactory scopes, IHttpContextFactory contexts)
{
    private static readonly object Kept = new();

    /// <summary>Everything behind the place where this was put into the program.</summary>
    private RequestDelegate? _rest;

    /// <summary>Whether the page that is written now is to be kept.</summary>
    public static bool IsKept(HttpContext context) => context.Items.ContainsKey(Kept);

    /// <summary>Pages are asked for from this place on.</summary>
    public RequestDelegate From(RequestDelegate rest) => _rest = rest;

    /// <summary>The page, or null where it is not there for this person.</summary>
    /// <param name="path">With a slash at its beginning; without a query.</param>
    public Task<string?> OfAsync(HttpContext asked, string path)
    {
        var (request, aborted) = (asked.Request, asked.RequestAborted);
        var (scheme, host, cookies, address) = (request.Scheme, request.Host, request.Headers.Cookie, asked.Connection.RemoteIpAddress);
        // The context that is at hand everywhere in a request is this request's own; the other one must not take its place.
        using (ExecutionContext.SuppressFlow())
        {
            return Task.Run(async () =>
            {
                await using var scope = scopes.CreateAsyncScope();
                using var body = new MemoryStream();
                var features = new FeatureCollection();
                features.Set<IHttpRequestFeature>(new HttpRequestFeature { Method = HttpMethods.Get, Scheme = scheme, Path = path, Protocol = "HTTP/1.1" });
                features.Set<IHttpResponseFeature>(new HttpResponseFeature());
                features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(body));
                features.Set<IHttpRequestLifetimeFeature>(new HttpRequestLifetimeFeature { RequestAborted = aborted });
                // Nothing is sent with it, so that no limit can be passed.
                features.Set<IHttpMaxRequestBodySizeFeature>(new NoBody());
                features.Set<IServiceProvidersFeature>(new Services(scope.ServiceProvider));
                var context = contexts.Create(features);
                try
                {
                    context.RequestServices = scope.ServiceProvider;
                    context.Request.Host = host;
                    context.Request.Headers.Cookie = cookies;
                    context.Connection.RemoteIpAddress = address;
                    context.Items[Kept] = true;
                    await _rest!(context);
                    await context.Response.CompleteAsync();
                    return context.Response.StatusCode == StatusCodes.Status200OK ? Timeless(Encoding.UTF8.GetString(body.GetBuffer(), 0, (int)body.Length)) : null;
                }
                finally
                {
                    contexts.Dispose(context);
                }
            }, aborted);
        }
    }

    private static string Timeless(string page) =>
        Minted().Replace(Token().Replace(page, ""), input => Value().Replace(input.Value, "value=\"\""));

    [GeneratedRegex("<input name=\"__RequestVerificationToken\"[^>]*>", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Token();

    [GeneratedRegex("<input\\b[^>]*\\bdata-mint\\b[^>]*>", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Minted();

    [GeneratedRegex("\\bvalue=\"[^\"]*\"", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Value();

    private sealed class NoBody : IHttpMaxRequestBodySizeFeature
    {
        public bool IsReadOnly => false;
        public long? MaxRequestBodySize { get; set; } = 0;
    }

    private sealed class Services(IServiceProvider provider) : IServiceProvidersFeature
    {
        public IServiceProvider RequestServices { get; set; } = provider;
    }
}
