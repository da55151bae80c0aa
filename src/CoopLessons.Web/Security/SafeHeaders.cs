namespace CoopLessons.Web.Security;

public static class SafeHeaders
{
    /// <summary>Nothing from elsewhere runs, frames or watches a page, and pages with a family's data are kept by no cache.</summary>
    public static void UseSafeHeaders(this WebApplication app)
    {
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
                csp.AddImgSrc().Self().Data();
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
