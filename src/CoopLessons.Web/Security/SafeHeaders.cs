namespace CoopLessons.Web.Security;

public static class SafeHeaders
{
    private static readonly object InABox = new();
    private static readonly object SecretAddress = new();

    /// <summary>
    /// The answer is a file that somebody brought: opened by itself, it is nobody's page. It runs nothing, fetches nothing
    /// and is of no origin, whatever it holds.
    /// </summary>
    public static void PutInABox(this HttpContext context) => context.Items[InABox] = true;

    /// <summary>The answer stands at a secret address: nowhere that it leads to is told where one came from, and no search keeps it.</summary>
    public static void KeepAddressSecret(this HttpContext context) => context.Items[SecretAddress] = true;

    /// <summary>Nothing from elsewhere runs, frames or watches a page, and pages with a family's data are kept by no cache.</summary>
    public static void UseSafeHeaders(this WebApplication app)
    {
        // Said first, it is done last: what is told above of every page does not hold for a file.
        app.Use(async (context, next) =>
        {
            context.Response.OnStarting(() =>
            {
                if (context.Items.ContainsKey(InABox))
                    context.Response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox; frame-ancestors 'none'";
                if (context.Items.ContainsKey(SecretAddress))
                    (context.Response.Headers["Referrer-Policy"], context.Response.Headers["X-Robots-Tag"]) = ("no-referrer", "noindex, nofollow");
                // It binds documents alone (W3C Permissions Policy), and is longer than many an answer to a script.
                if (context.Response.ContentType?.StartsWith("text/html", StringComparison.Ordinal) != true)
                    context.Response.Headers.Remove("Permissions-Policy");
                return Task.CompletedTask;
            });
            await next();
        });
        app.UseSecurityHeaders(new HeaderPolicyCollection()
            .AddContentTypeOptionsNoSniff()
            .AddFrameOptionsDeny()
            .AddReferrerPolicySameOrigin()
            .AddStrictTransportSecurityMaxAgeIncludeSubDomains(maxAgeInSeconds: 365 * 24 * 60 * 60)
            // By this a phone tells an answer of this program from one of a network that wants to be paid or signed into first.
            .AddCustomHeader("CoopLessons", "here")
            .AddCrossOriginOpenerPolicy(p => p.SameOrigin())
            .AddCrossOriginResourcePolicy(p => p.SameOrigin())
            .AddPermissionsPolicyWithDefaultSecureDirectives()
            .AddContentSecurityPolicy(csp =>
            {
                csp.AddDefaultSrc().None();
                csp.AddScriptSrc().Self();
                csp.AddStyleSrc().Self();
                // A photo that was chosen is shown before it is sent: from the browser's own memory.
                csp.AddImgSrc().Self().Data().Blob();
                csp.AddMediaSrc().Self();
                csp.AddFontSrc().Self();
                csp.AddConnectSrc().Self();
                csp.AddManifestSrc().Self();
                csp.AddFormAction().Self();
                csp.AddBaseUri().None();
                csp.AddObjectSrc().None();
                csp.AddFrameAncestors().None();
            }));
        app.Use(async (context, next) =>
        {
            context.Response.OnStarting(() =>
            {
                if (!context.Response.Headers.ContainsKey("Cache-Control"))
                    context.Response.Headers.CacheControl = "no-store, private";
                return Task.CompletedTask;
            });
            await next();
        });
    }
}
