using CoopLessons.Web.Tests.App;
using Microsoft.Playwright;

namespace CoopLessons.Browser.Tests.App;

/// <summary>A phone with a browser that keeps its files when it is closed.</summary>
public sealed class Phone(string address) : IAsyncDisposable
{
    private readonly string _files = Directory.CreateTempSubdirectory("phone-").FullName;
    private IPlaywright? _playwright;
    private IBrowserContext? _browser;

    public IBrowserContext Browser => _browser ?? throw new InvalidOperationException("The browser is closed.");

    public IPage Page { get; private set; } = null!;

    /// <summary>Opens the browser; it is as it was when it was closed.</summary>
    public async Task OpenAsync()
    {
        _playwright ??= await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchPersistentContextAsync(_files, new()
        {
            ExecutablePath = Screen.Chromium,
            Args = Screen.Flags,
            BaseURL = address,
            ViewportSize = new() { Width = 360, Height = 740 },
            HasTouch = true,
            ReducedMotion = ReducedMotion.Reduce,
        });
        _browser.SetDefaultTimeout(30_000);
        Page = _browser.Pages.Count > 0 ? _browser.Pages[0] : await _browser.NewPageAsync();
    }

    public async Task CloseAsync()
    {
        if (_browser is not null)
            await _browser.CloseAsync();
        _browser = null;
    }

    public async Task SignInAsync(string email)
    {
        if (new Uri(Page.Url).AbsolutePath != "/sign-in")
            await Page.GotoAsync("/sign-in?back=/today");
        await Page.GetByLabel("E-mail").FillAsync(email);
        await Page.GetByLabel("Password", new() { Exact = true }).FillAsync(Household.Password);
        await Page.Locator("input[name='Input.Remember'][type=checkbox]").CheckAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Page.WaitForURLAsync(url => new Uri(url).AbsolutePath != "/sign-in");
    }

    /// <summary>Waits until the frame and its files are on the phone, and this page with those of the coming days.</summary>
    public Task MustKeepAsync(string path) => Page.EvaluateAsync("""
        async path => {
          await navigator.serviceWorker.ready;
          const db = await new Promise(resolve => {
            const asked = indexedDB.open('cooplessons');
            asked.onsuccess = () => resolve(asked.result);
          });
          const kept = () => new Promise(resolve => {
            const found = db.transaction('pages').objectStore('pages').get(path);
            found.onsuccess = () => resolve(found.result);
          });
          while (!await kept()) await new Promise(resolve => setTimeout(resolve, 100));
          db.close();
        }
        """, path);

    /// <summary>How many things the head of the page says are waiting; 0 where it says nothing.</summary>
    public ILocator Pending => Page.Locator("header [data-pending]");

    /// <summary>Logs something by the form, as it is opened from the day.</summary>
    /// <param name="photo">A picture that goes with it.</param>
    public async Task LogAsync(string what, byte[]? photo = null)
    {
        await Page.GotoAsync("/log/new");
        await Page.GetByLabel("What", new() { Exact = true }).FillAsync(what);
        if (photo is not null)
        {
            await Page.Locator("#files").SetInputFilesAsync(new FilePayload { Name = "photo.jpg", MimeType = "image/jpeg", Buffer = photo });
            await Assertions.Expect(Page.Locator(".chosen img")).ToBeVisibleAsync();
        }

        await Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Page.WaitForURLAsync(url => new Uri(url).AbsolutePath.StartsWith("/today", StringComparison.Ordinal));
    }

    public async ValueTask DisposeAsync()
    {
        await CloseAsync();
        _playwright?.Dispose();
        Directory.Delete(_files, recursive: true);
    }
}
