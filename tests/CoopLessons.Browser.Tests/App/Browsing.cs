using CoopLessons.Web.Tests.App;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;

namespace CoopLessons.Browser.Tests.App;

/// <summary>The web program on a loopback port, with a fresh database and a clock that stands still.</summary>
public sealed class Host(DateTimeOffset now) : WebApplicationFactory<Program>
{
    private readonly TestDatabase _database = new();

    public string Address
    {
        get
        {
            UseKestrel(0);
            StartServer();
            return ClientOptions.BaseAddress.ToString().TrimEnd('/');
        }
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Development");
        builder.UseSetting("Serilog:MinimumLevel:Default", "Warning");
        builder.UseSetting("CoopLessons:TriesPerMinute", "1000000");
        foreach (var (key, value) in _database.Settings())
            builder.UseSetting(key, value);
        builder.ConfigureTestServices(s => s.AddSingleton<TimeProvider>(new FakeTimeProvider(now)));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
            _database.Dispose();
    }
}

/// <summary>A page of headless Chromium, and what may be asked of every screen it shows.</summary>
public sealed class Screen : IAsyncDisposable
{
    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;
    private readonly List<string> _complaints = [];

    private Screen(IPlaywright playwright, IBrowser browser, IPage page) => (_playwright, _browser, Page) = (playwright, browser, page);

    public IPage Page { get; }

    /// <summary>What the browser itself complained of: broken scripts, files refused by the page's policy, other hosts asked.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    public static async Task<Screen> OpenAsync(string address, int width, int height, bool dark = false, bool scripts = true)
    {
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Environment.GetEnvironmentVariable("COOPLESSONS_CHROMIUM") is { Length: > 0 } path ? path : "/usr/bin/chromium",
            Args = Flags,
        });
        var context = await browser.NewContextAsync(new()
        {
            BaseURL = address,
            ViewportSize = new() { Width = width, Height = height },
            HasTouch = width < 600,
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
            JavaScriptEnabled = scripts,
            AcceptDownloads = true,
        });
        context.SetDefaultTimeout(30_000);
        var screen = new Screen(playwright, browser, await context.NewPageAsync());
        screen.Page.Console += (_, message) =>
        {
            // A refused form answers 422, which the browser writes into its console by itself.
            if (message.Type == "error" && !message.Text.Contains("422", StringComparison.Ordinal))
                screen._complaints.Add(message.Text);
        };
        screen.Page.PageError += (_, fault) => screen._complaints.Add(fault);
        screen.Page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
                screen._complaints.Add("asked " + request.Url);
        };
        return screen;
    }

    /// <summary>The browser shows this path, or one below it where it ends in a slash, loaded whole.</summary>
    // The page itself is asked: an event of its loading that came just before somebody listened would be waited for in vain.
    public Task MustArriveAsync(string path) => Page.WaitForFunctionAsync(
        "path => (path.endsWith('/') ? location.pathname.startsWith(path) : location.pathname === path) && document.readyState === 'complete'", path);

    /// <summary>The browser shows another address than this one, loaded whole.</summary>
    public Task MustLeaveAsync(string address) =>
        Page.WaitForFunctionAsync("address => location.pathname + location.search !== address && document.readyState === 'complete'", address);

    /// <summary>What depends on a screen's size or colours; every other rule of axe finds the same in each look.</summary>
    private static readonly List<string> RulesOfLooks = ["color-contrast", "target-size", "scrollable-region-focusable"];

    private const int BarHeight = 200;

    /// <summary>A phone and a laptop by day and by night, and the narrowest phone.</summary>
    private static readonly (int Width, int Height, ColorScheme Scheme)[] Looks =
    [
        (360, 740, ColorScheme.Dark), (1280, 800, ColorScheme.Light), (1280, 800, ColorScheme.Dark), (320, 640, ColorScheme.Light), (360, 740, ColorScheme.Light),
    ];

    /// <summary>The screen has no accessibility fault that can be found by program, and does not scroll sideways.</summary>
    public Task MustBeSoundAsync() => MustBeSoundAsync(null);

    /// <summary>The same in every look, without loading the page anew; it ends as a phone by day.</summary>
    public async Task MustBeSoundInEveryLookAsync()
    {
        await MustBeSoundAsync();
        foreach (var (width, height, scheme) in Looks)
        {
            await Page.SetViewportSizeAsync(width, height);
            await Page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await MustBeSoundAsync(RulesOfLooks);
        }
    }

    private async Task MustBeSoundAsync(List<string>? rules)
    {
        var options = new AxeRunOptions { ResultTypes = [ResultType.Violations] };
        if (rules is not null)
            options.RunOnly = RunOnlyOptions.Rules([.. rules]);
        // As high as the page is long: what lies under a bar that stays in place is reached by scrolling, and is not small.
        var size = Page.ViewportSize!;
        var high = await Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight");
        await Page.SetViewportSizeAsync(size.Width, Math.Max(size.Height, high + BarHeight));
        var found = await Page.RunAxe(options);
        await Page.SetViewportSizeAsync(size.Width, size.Height);
        var look = $"{Page.Url} at {Page.ViewportSize?.Width} px";
        Assert.True(found.Violations.Length == 0, $"{look}: " + string.Join("; ", found.Violations.Select(v => $"{v.Id} ({v.Help}) at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
        var beyond = await Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(beyond <= 0, $"{look} scrolls {beyond} px sideways");
        Assert.Empty(Complaints);
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
    }
}
