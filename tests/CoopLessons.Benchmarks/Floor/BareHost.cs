using CoopLessons.Web.Commands;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Floor;

/// <summary>
/// The least server that does the same kind of work: one Razor page with a form and twenty items, which saves one row
/// when it is sent. No sign-in, no families, no layout.
/// </summary>
public sealed class BareHost : IAsyncDisposable
{
    private readonly WebApplication _app;

    private BareHost(WebApplication app) => _app = app;

    public Uri Address => new(_app.Urls.Single());

    public static async Task<BareHost> StartAsync(Action<DbContextOptionsBuilder> database)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = typeof(BareHost).Assembly.GetName().Name, EnvironmentName = Environments.Production });
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddDbContext<BareDb>(database);
        var program = typeof(CommandTable).Assembly.GetName().Name;
        builder.Services.AddRazorPages().ConfigureApplicationPartManager(parts =>
        {
            foreach (var part in parts.ApplicationParts.Where(p => p.Name == program).ToList())
                parts.ApplicationParts.Remove(part);
        });
        var app = builder.Build();
        app.MapRazorPages();
        await using (var scope = app.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<BareDb>().MakeAsync();
        await app.StartAsync();
        return new BareHost(app);
    }

    public async Task<int> CountAsync()
    {
        await using var scope = _app.Services.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<BareDb>().Rows.CountAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }
}
