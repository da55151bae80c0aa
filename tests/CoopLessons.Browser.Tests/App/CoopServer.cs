using CoopLessons.Data.Scenario;
using CoopLessons.Web.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace CoopLessons.Browser.Tests.App;

/// <summary>A server with the invented co-op in it, loaded once for all classes that mostly look at it.</summary>
public sealed class CoopServer : IAsyncLifetime
{
    public const string Name = "The co-op in April";

    /// <summary>Late in the co-op's first year, on a day on which it teaches.</summary>
    private static readonly DateTimeOffset Morning = new(2026, 4, 22, 15, 0, 0, TimeSpan.Zero);

    private readonly Host _host = new(Morning);

    public string Address { get; private set; } = "";
    public MillraceLoaded Coop { get; private set; } = null!;

    /// <summary>Of everybody in the co-op.</summary>
    public string Password { get; private set; } = "";

    public async Task InitializeAsync()
    {
        Address = _host.Address;
        (Coop, Password) = await _host.Services.GetRequiredService<DemoCoop>().LoadAsync(default);
    }

    /// <summary>As the guardian who founded the family.</summary>
    public Task SignInAsync(IPage page, string family = "Alder") => Screen.SignInAsync(page, Coop[family].Guardian.Email, Password);

    public async Task DisposeAsync() => await _host.DisposeAsync();
}

[CollectionDefinition(CoopServer.Name)]
public sealed class CoopInApril : ICollectionFixture<CoopServer>;
