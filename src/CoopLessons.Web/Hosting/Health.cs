using CoopLessons.Data;
using CoopLessons.Data.Databases;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace CoopLessons.Web.Hosting;

/// <summary>Ready when the database answers and is at this program's version.</summary>
public sealed class DatabaseReady(AppDb db) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            return await Upkeep.IsReadyAsync(db, cancellationToken) ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy();
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            return HealthCheckResult.Unhealthy(exception: fault);
        }
    }
}

public static class HealthAddresses
{
    /// <summary>One word each, without details: strangers may ask.</summary>
    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks("/healthz", new HealthCheckOptions { Predicate = _ => false, ResponseWriter = OneWord }).AllowAnonymous();
        app.MapHealthChecks("/readyz", new HealthCheckOptions { Predicate = c => c.Tags.Contains("ready"), ResponseWriter = OneWord }).AllowAnonymous();
    }

    private static Task OneWord(HttpContext context, HealthReport report) =>
        context.Response.WriteAsync(report.Status == HealthStatus.Healthy ? "yes" : "no");
}
