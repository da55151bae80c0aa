using System.Text.RegularExpressions;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.People;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;

namespace CoopLessons.Browser.Tests.App;

/// <summary>The web program on a loopback port, with a fresh database and a clock that stands still.</summary>
public sealed class Host(DateTimeOffset now) : WebApplicationFactory<Program>
{
    private readonly TestDatabase _database = new();

    public FakeTimeProvider Clock { get; } = new(now);

    public string Address
    {
        get
        {
            UseKestrel(0);
            StartServer();
            return ClientOptions.BaseAddress.ToString().TrimEnd('/');
        }
    }

    /// <summary>A family in the Central zone with two guardians, Iris and Basil, and two children.</summary>
    public Task<Household> HouseholdAsync() => HouseholdAsync("Alder", "Iris", "Basil");

    /// <summary>The same under other names; addresses are of the family’s own.</summary>
    public async Task<Household> HouseholdAsync(string family, string one, string other)
    {
        await using var scope = Services.CreateAsyncScope();
        var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        Person Named(string name) => Person.Named(name, $"{name}@{family}.millrace.example".ToLowerInvariant());
        var (first, second) = (Named(one), Named(other));
        foreach (var person in new[] { first, second })
            Assert.True((await people.CreateAsync(person, Household.Password)).Succeeded);
        var (id, at) = (Guid.CreateVersion7(), Clock.GetUtcNow().UtcDateTime);
        NewFamily.Found(db, id, family, "America/Chicago", first.Id, first.Name, DateOnly.FromDateTime(at), at);
        db.Memberships.Add(new Membership(second.Id, second.Name, Role.Guardian, at));
        db.Learners.AddRange(new Learner(Guid.CreateVersion7(), "Linnet", new(at.Year - 9, 5, 4), 0), new Learner(Guid.CreateVersion7(), "Wren", new(at.Year - 6, 9, 30), 1));
        await db.SaveChangesAsync();
        return new Household(this, id, first.Email!, second.Email!);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Development");
        builder.UseSetting("Serilog:MinimumLevel:Default", "Warning");
        builder.UseSetting("CoopLessons:TriesPerMinute", "1000000");
        foreach (var (key, value) in _database.Settings())
            builder.UseSetting(key, value);
        builder.ConfigureTestServices(s => s.AddSingleton<TimeProvider>(Clock));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
            _database.Dispose();
    }
}

/// <summary>A family on a server, and what is written of it there.</summary>
public sealed record Household(Host Host, Guid Id, string Iris, string Basil)
{
    public const string Password = "mill wheel under seven stars";

    public async Task<T> FromDbAsync<T>(Func<AppDb, Task<T>> read)
    {
        await using var scope = Host.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(Id);
        return await read(scope.ServiceProvider.GetRequiredService<AppDb>());
    }

    /// <summary>Something of half an hour is planned for both children.</summary>
    public Task PlanAsync(string title, DateOnly day) => FromDbAsync(async db =>
    {
        var subject = await db.Subjects.OrderBy(s => s.Order).FirstAsync();
        var unit = new Unit(Guid.CreateVersion7(), "From Grain to Loaf", "", 1);
        unit.Take(day.AddDays(-3));
        unit.Add(new Activity(
            Guid.CreateVersion7(), "one", new(1, 1, title, ActivityKind.Making, "Do it.", AdultNeed.Beside, 30, 0, ""), ActivityDetails.Empty with { Subjects = [new(subject.Id, 1)] }));
        db.Units.Add(unit);
        db.PlannedSessions.Add(new PlannedSession(Guid.CreateVersion7(), unit.Activities[0].Id, day, 9 * 60, 0, await db.Learners.Select(l => l.Id).ToListAsync()));
        return await db.SaveChangesAsync();
    });

    /// <summary>What stands in the log, by its words.</summary>
    public Task<List<LogRevision>> StandingAsync() => FromDbAsync(db => db.Standing().OrderBy(r => r.What).ToListAsync());
}

/// <summary>A page of headless Chromium, and what may be asked of every screen it shows.</summary>
public sealed class Screen : IAsyncDisposable
{
    public static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    public static string Chromium => Environment.GetEnvironmentVariable("COOPLESSONS_CHROMIUM") is { Length: > 0 } path ? path : "/usr/bin/chromium";

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
            ExecutablePath = Chromium,
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
            // A refused form answers 422, or 409 where the year is sealed, which the browser writes into its console by itself.
            if (message.Type == "error" && !message.Text.Contains("422", StringComparison.Ordinal) && !message.Text.Contains("409", StringComparison.Ordinal))
                screen._complaints.Add($"{message.Text} ({message.Location})");
        };
        screen.Page.PageError += (_, fault) => screen._complaints.Add(fault);
        screen.Page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
                screen._complaints.Add("asked " + request.Url);
        };
        return screen;
    }

    /// <summary>Leaves the page and whoever was signed in, before the clock or the person changes.</summary>
    // What a page still asks for in the background would be asked at another time or as somebody else, and refused.
    public async Task LeaveAsync()
    {
        await Page.GotoAsync("about:blank");
        await Page.Context.ClearCookiesAsync();
    }

    public Task SignInAsync(string email, string password) => SignInAsync(Page, email, password);

    public static async Task SignInAsync(IPage page, string email, string password)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("E-mail").FillAsync(email);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await Assertions.Expect(page).Not.ToHaveURLAsync(new Regex("/sign-in"));
        await page.WaitForLoadStateAsync();
    }

    /// <summary>The browser shows this path, or one below it where it ends in a slash, loaded whole.</summary>
    // The page itself is asked: an event of its loading that came just before somebody listened would be waited for in vain.
    public Task MustArriveAsync(string path) => Page.WaitForFunctionAsync(
        "path => (path.endsWith('/') ? location.pathname.startsWith(path) : location.pathname === path) && document.readyState === 'complete'", path);

    /// <summary>The browser shows another address than this one, loaded whole.</summary>
    public Task MustLeaveAsync(string address) =>
        Page.WaitForFunctionAsync("address => location.pathname + location.search !== address && document.readyState === 'complete'", address);

    /// <summary>From the next page on, listeners count what a hand does: real taps and keystrokes.</summary>
    public Task CountInputsAsync() => Page.Context.AddInitScriptAsync(
        """
        const count = name => sessionStorage.setItem(name, Number(sessionStorage.getItem(name)) + 1);
        addEventListener('pointerdown', e => { if (e.isTrusted) count('taps'); }, true);
        addEventListener('keydown', e => { if (e.isTrusted) count('keys'); }, true);
        """);

    public Task BeginCountingAsync() => Page.EvaluateAsync("() => { sessionStorage.setItem('taps', 0); sessionStorage.setItem('keys', 0); }");

    /// <summary>Since the counting was begun.</summary>
    public async Task<(int Taps, int Keys)> CountedAsync() =>
        (await Page.EvaluateAsync<int>("() => Number(sessionStorage.getItem('taps'))"), await Page.EvaluateAsync<int>("() => Number(sessionStorage.getItem('keys'))"));

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
        // As high as the page is long: what lies under a bar that stays in place is reached by scrolling, and is not small.
        var size = Page.ViewportSize!;
        var high = await Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight");
        await Page.SetViewportSizeAsync(size.Width, Math.Max(size.Height, high + BarHeight));
        var faults = rules is null ? await FaultsAsync() : await FaultsOfLookAsync(rules);
        await Page.SetViewportSizeAsync(size.Width, size.Height);
        var look = $"{Page.Url} at {size.Width} px";
        Assert.True(faults.Count == 0, $"{look}: {string.Join("; ", faults)}");
        var beyond = await Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(beyond <= 0, $"{look} scrolls {beyond} px sideways");
        Assert.True(Complaints.Count == 0, $"{look}: {string.Join("; ", Complaints)}");
    }

    private async Task<IReadOnlyList<string>> FaultsAsync()
    {
        var found = await Page.RunAxe(new AxeRunOptions { ResultTypes = [ResultType.Violations] });
        return [.. found.Violations.Select(v => $"{v.Id} ({v.Help}) at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")];
    }

    // axe is in the page since it was asked for everything: a few rules need no second page, as a whole run opens one.
    private async Task<IReadOnlyList<string>> FaultsOfLookAsync(List<string> rules) => await Page.EvaluateAsync<string[]>(
        """
        async rules => (await axe.run(document, { runOnly: { type: 'rule', values: rules }, resultTypes: ['violations'] }))
          .violations.map(v => `${v.id} (${v.help}) at ${v.nodes.slice(0, 3).map(n => n.html).join(', ')}`)
        """,
        rules);

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
    }
}
