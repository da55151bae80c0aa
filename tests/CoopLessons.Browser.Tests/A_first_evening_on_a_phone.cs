using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>
/// The whole path at 360×740: sign up, family, learners, take a unit, place, Today, done for two children, Records, PDF.
/// Every screen on the way is looked at for faults of accessibility, sideways scrolling and complaints of the browser.
/// </summary>
public sealed class A_first_evening_on_a_phone : IAsyncLifetime
{
    /// <summary>
    /// A Thursday in term time, far enough ahead that a browser, which goes by the machine's own clock, keeps the cookies
    /// that the program dates by this one.
    /// </summary>
    private static readonly DateTimeOffset Evening = new(2099, 3, 12, 23, 40, 0, TimeSpan.Zero);

    private readonly Host _host = new(Evening);
    private Screen _screen = null!;

    private IPage Page => _screen.Page;

    public async Task InitializeAsync() => _screen = await Screen.OpenAsync(_host.Address, 360, 740);

    public async Task DisposeAsync()
    {
        await _screen.DisposeAsync();
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task Leads_from_an_empty_server_to_a_report_in_hand()
    {
        await SignUpAsync();
        await AddAsync("Linnet", "2089-05-04");
        await AddAsync("Wren", "2092-09-30");
        await TakeAUnitAsync();
        var title = await PlaceAsync();
        await DoneInTwoTapsAsync(title);
        await TheRecordsShowItAsync();
        await TheReportComesDownAsync();
    }

    private async Task SignUpAsync()
    {
        await Page.GotoAsync("/");
        await Expect(Page).ToHaveURLAsync(new Regex("/first-run$"));
        await _screen.MustBeSoundAsync();
        var found = Page.Locator("form").Filter(new() { HasText = "Found the family" });
        await found.GetByLabel("Your name").FillAsync("Iris");
        await found.GetByLabel("E-mail").FillAsync("iris@alder.millrace.example");
        await found.GetByLabel("Password", new() { Exact = true }).FillAsync("seven geese crossing the millpond");
        await found.GetByLabel("Name of the family").FillAsync("Alder");
        await found.GetByRole(AriaRole.Button, new() { Name = "Found the family" }).ClickAsync();
        await Expect(Page).ToHaveURLAsync(new Regex("/family$"));
        await _screen.MustBeSoundAsync();
    }

    private async Task AddAsync(string name, string born)
    {
        await Page.GetByRole(AriaRole.Link, new() { Name = "Add a child" }).ClickAsync();
        await _screen.MustArriveAsync("/family/learners/new");
        await Page.GetByLabel("First name or nickname").FillAsync(name);
        await Page.GetByLabel("Birth date").FillAsync(born);
        await _screen.MustBeSoundAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Add the child" }).ClickAsync();
        await _screen.MustArriveAsync("/family");
        await Expect(Page.GetByRole(AriaRole.Main)).ToContainTextAsync(name);
    }

    private async Task TakeAUnitAsync()
    {
        await GoAsync("Units");
        await _screen.MustBeSoundAsync();
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = For("Take onto our shelf", "From Grain to Loaf") }).ClickAsync();
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("From Grain to Loaf");
        await _screen.MustBeSoundAsync();
        await Page.GetByLabel("Monday of week 1").FillAsync("2099-03-09");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Take this unit" }).ClickAsync();
        await Expect(Page.GetByRole(AriaRole.Main)).ToContainTextAsync("week 1 of 4");
        await _screen.MustBeSoundAsync();
    }

    private async Task<string> PlaceAsync()
    {
        await GoAsync("Week");
        await _screen.MustBeSoundAsync();
        await Page.Locator("a[href*='/week/place/']").First.ClickAsync();
        await _screen.MustArriveAsync("/week/place/");
        var title = await Page.GetByRole(AriaRole.Heading, new() { Level = 1 }).InnerTextAsync();
        await Page.GetByLabel("Day", new() { Exact = true }).FillAsync("2099-03-12");
        await Page.GetByLabel("Begins at, if it matters").FillAsync("09:00");
        await Expect(Page.GetByLabel("Linnet")).ToBeCheckedAsync();
        await Expect(Page.GetByLabel("Wren")).ToBeCheckedAsync();
        await _screen.MustBeSoundAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Place", Exact = true }).ClickAsync();
        await Expect(Page.GetByRole(AriaRole.Main)).ToContainTextAsync(title);
        return title;
    }

    private async Task DoneInTwoTapsAsync(string title)
    {
        await GoAsync("Today");
        await _screen.MustBeSoundAsync();
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = For("Done", title) }).TapAsync();
        await Expect(Page.Locator(".strip-line.is-done")).ToContainTextAsync("done");
        await Expect(Page.Locator("#heard")).ToContainTextAsync("is done");
        await _screen.MustBeSoundAsync();
    }

    private async Task TheRecordsShowItAsync()
    {
        var minutes = await Page.Locator(".strip-line.is-done .strip-who").First.InnerTextAsync();
        await GoAsync("Records");
        await Expect(Page.Locator("#hours-table")).ToBeVisibleAsync();
        await _screen.MustBeSoundAsync();
        var total = await Page.Locator("#hours-table tfoot td").Last.InnerTextAsync();
        var planned = int.Parse(Regex.Match(minutes, @"\d+").Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.StartsWith(new Core.Hours.Minutes(planned).Clock, total, StringComparison.Ordinal);
        await Page.Locator("#hours-table tfoot a").Last.ClickAsync();
        await _screen.MustArriveAsync("/records/entries");
        await _screen.MustBeSoundAsync();
        await Page.GoBackAsync();
        await _screen.MustArriveAsync("/records");
    }

    private async Task TheReportComesDownAsync()
    {
        var coming = Page.WaitForDownloadAsync();
        await Page.GetByRole(AriaRole.Link, new() { Name = "PDF, to hand in or print" }).ClickAsync();
        var file = await coming;
        Assert.EndsWith(".pdf", file.SuggestedFilename, StringComparison.Ordinal);
        var bytes = await File.ReadAllBytesAsync(await file.PathAsync());
        Assert.True(bytes.AsSpan().StartsWith("%PDF-"u8));
    }

    // The part that only a screen reader hears stands apart, and a browser may set a space before it.
    private static Regex For(string button, string what) => new($@"^\s*{Regex.Escape(button)}\s*:\s*{Regex.Escape(what)}\s*$");

    /// <summary>One tap on a place in the bar.</summary>
    private async Task GoAsync(string place)
    {
        await Page.Locator("nav.places").GetByRole(AriaRole.Link, new() { Name = place, Exact = true }).TapAsync();
        await _screen.MustArriveAsync($"/{place.ToLowerInvariant()}");
    }

}
