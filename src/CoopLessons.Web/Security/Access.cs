using System.Security.Claims;
using System.Threading.RateLimiting;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.ApplicationModels;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Security;

/// <summary>
/// Who may open what: one table from folders of pages to policies. A folder that stands in no row is closed to
/// everybody, and a test fails for it.
/// </summary>
public static class Access
{
    public const string Guardian = "guardian";
    public const string Member = "member";
    public const string Person = "person";

    /// <summary>The family's tablet, whether or not a child's list is open on it.</summary>
    public const string Tablet = "tablet";

    /// <summary>The child whose list is open.</summary>
    public const string Learner = "learner";
    public const string Anybody = "anybody";
    private const string Nobody = "nobody";

    /// <summary>How often a stranger may try a secret: sign-in, codes, invitations, first-run word.</summary>
    public const string Brake = "brake";

    public static readonly IReadOnlyList<(string Folder, string Policy)> Table =
    [
        ("/Start", Anybody),
        ("/Account", Anybody),
        ("/Feed", Anybody),
        ("/Mail", Anybody),
        ("/Papers", Anybody),
        ("/Reader", Anybody),
        ("/Person", Person),
        ("/Phone", Anybody),
        ("/Today", Member),
        ("/Log", Member),
        ("/Evidence", Member),
        ("/Week", Guardian),
        ("/Units", Guardian),
        ("/Records", Guardian),
        ("/Coop", Guardian),
        ("/Family", Guardian),
        ("/Law", Guardian),
        ("/Tablet", Tablet),
        ("/Mine", Learner),
    ];

    public static void AddAccess(this IServiceCollection services)
    {
        services.AddHttpContextAccessor();
        services.AddScoped<IAuthorizationHandler, RoleHandler>();
        services.AddScoped<IAuthorizationHandler, TabletHandler>();
        services.AddAuthorizationBuilder()
            .AddPolicy(Guardian, p => p.RequireAuthenticatedUser().AddRequirements(new ActsAs(Role.Guardian)))
            .AddPolicy(Member, p => p.RequireAuthenticatedUser().AddRequirements(new ActsAs(Role.Guardian, Role.Helper)))
            // A tablet is known, too, and is no person.
            .AddPolicy(Person, p => p.RequireAuthenticatedUser().RequireClaim(ClaimTypes.NameIdentifier))
            .AddPolicy(Tablet, p => p.RequireAuthenticatedUser().AddRequirements(new OnTablet()))
            .AddPolicy(Learner, p => p.RequireAuthenticatedUser().AddRequirements(new ActsAs(Role.Learner)))
            .AddPolicy(Nobody, p => p.RequireAssertion(_ => false))
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAssertion(_ => false).Build());
        services.AddRateLimiter(o =>
        {
            o.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            o.OnRejected = (context, _) =>
            {
                context.HttpContext.Response.Headers.RetryAfter = "60";
                return ValueTask.CompletedTask;
            };
            o.AddPolicy(Brake, context => HttpMethods.IsPost(context.Request.Method)
                ? RateLimitPartition.GetFixedWindowLimiter(
                    // Never the empty name, under which nobody is counted.
                    context.Connection.RemoteIpAddress?.ToString() ?? "unknown", _ => new FixedWindowRateLimiterOptions
                    {
                        PermitLimit = context.RequestServices.GetRequiredService<ServerSettings>().TriesPerMinute,
                        Window = TimeSpan.FromMinutes(1),
                    })
                : RateLimitPartition.GetNoLimiter(""));
        });
    }

    public static void Apply(PageConventionCollection pages)
    {
        foreach (var (folder, policy) in Table)
        {
            if (policy == Anybody)
                pages.AllowAnonymousToFolder(folder);
            else
                pages.AuthorizeFolder(folder, policy);
        }
    }

    private sealed record ActsAs(params Role[] Roles) : IAuthorizationRequirement;

    private sealed record OnTablet : IAuthorizationRequirement;

    private sealed class RoleHandler(CurrentFamily current) : AuthorizationHandler<ActsAs>
    {
        protected override Task HandleRequirementAsync(AuthorizationHandlerContext context, ActsAs requirement)
        {
            if (current.Role is { } role && requirement.Roles.Contains(role))
                context.Succeed(requirement);
            return Task.CompletedTask;
        }
    }

    private sealed class TabletHandler(CurrentFamily current) : AuthorizationHandler<OnTablet>
    {
        protected override Task HandleRequirementAsync(AuthorizationHandlerContext context, OnTablet requirement)
        {
            if (current.TabletId is not null)
                context.Succeed(requirement);
            return Task.CompletedTask;
        }
    }
}
