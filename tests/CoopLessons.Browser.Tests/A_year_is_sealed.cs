using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>A family logs a day in May, seals the year in July, checks a paper of it and corrects the day late.</summary>
public sealed class A_year_is_sealed : IAsyncLifetime
{
    private static readonly DateTimeOffset May = new(2026, 5, 20, 15, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset July = new(2026, 7, 14, 15, 0, 0, TimeSpan.Zero);
    private const string Groups = @"(?:[0-9a-f]{4}\W){15}[0-9a-f]{4}";

    private readonly Host _host = new(May);
    private Screen _screen = null!;
    private string _year = "";

    private IPage Page => _screen.Page;

    public async Task InitializeAsync() => _screen = await Screen.OpenAsync(_host.Address, 360, 740);

    public async Task DisposeAsync()
    {
        await _screen.DisposeAsync();
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task And_shows_from_then_on_what_was_sealed_and_what_was_corrected()
    {
        var family = await _host.HouseholdAsync();
        await _screen.SignInAsync(family.Iris, Household.Password);
        await Page.GotoAsync("/log/new");
        await Page.GetByLabel("What", new() { Exact = true }).FillAsync("Measured the mill race");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await _screen.MustArriveAsync("/today/");
        await _screen.LeaveAsync();
        _host.Clock.SetUtcNow(July);
        await _screen.SignInAsync(family.Iris, Household.Password);

        var mark = await SealAsync();
        var paper = await PaperAsync();
        await MustBeKnownAsync(paper, mark);
        var amended = await CorrectLateAsync();
        Assert.NotEqual(mark, amended);
        await Page.GotoAsync("/papers/check");
        await CheckAsync(paper);
        await Expect(Page.Locator("#answer")).ToContainTextAsync("1 amendment came since, the last on 14 July 2026");
    }

    /// <summary>The fingerprint that the page shows of the first child.</summary>
    private async Task<string> SealAsync()
    {
        await Page.GotoAsync("/records");
        await Page.GetByRole(AriaRole.Link, new() { Name = "This year is over and can be sealed" }).TapAsync();
        await _screen.MustArriveAsync("/records/sealing/");
        _year = new Uri(Page.Url).AbsolutePath;
        await Expect(Page.GetByText("teaching days have nothing in the log: 23 in July 2025, 21 in August 2025")).ToBeVisibleAsync();
        await _screen.MustBeSoundInEveryLookAsync();
        var seal = Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Seal 2025") });
        await seal.ClickAsync();
        await Expect(Page.Locator("#sure-fault")).ToContainTextAsync("Tick the box first");
        await Page.GetByLabel("I know that a sealing is not taken back").CheckAsync();
        await seal.ClickAsync();
        await Expect(Page.Locator("[data-holds]")).ToHaveCountAsync(2);
        await Expect(Page.GetByText("Sealed on 14 July 2026 by Iris")).ToBeVisibleAsync();
        await _screen.MustBeSoundInEveryLookAsync();
        var shown = await Page.Locator("section[data-learner] code").First.InnerTextAsync();
        Assert.Matches($"^{Groups}$", shown);
        return shown;
    }

    private async Task<byte[]> PaperAsync()
    {
        await Page.GotoAsync("/records");
        await Expect(Page.Locator("#seal")).ToContainTextAsync("sealed on 14 July 2026");
        var download = await Page.RunAndWaitForDownloadAsync(() => Page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^PDF") }).First.ClickAsync());
        return await File.ReadAllBytesAsync((await download.PathAsync())!);
    }

    private async Task CheckAsync(byte[] paper)
    {
        await Page.Locator("#file").SetInputFilesAsync(new FilePayload { Name = "paper.pdf", MimeType = "application/pdf", Buffer = paper });
        await Page.GetByRole(AriaRole.Button, new() { Name = "Check" }).ClickAsync();
    }

    private async Task MustBeKnownAsync(byte[] paper, string mark)
    {
        await Page.GotoAsync("/records/sealing");
        await Page.GetByRole(AriaRole.Link, new() { Name = "Is a paper unchanged?" }).TapAsync();
        await _screen.MustArriveAsync("/papers/check");
        await CheckAsync(paper);
        await Expect(Page.Locator("#answer")).ToContainTextAsync("This file is, byte for byte, as it was given out on 14 July 2026.");
        await _screen.MustBeSoundInEveryLookAsync();
        var changed = (byte[])paper.Clone();
        changed[^30] ^= 1;
        await CheckAsync(changed);
        await Expect(Page.Locator("#answer")).ToContainTextAsync("Not known here");
        await _screen.MustBeSoundInEveryLookAsync();
        await Page.GetByLabel("Fingerprint").FillAsync(mark);
        await Page.GetByRole(AriaRole.Button, new() { Name = "Check" }).ClickAsync();
        await Expect(Page.Locator("#answer")).ToContainTextAsync("This is the fingerprint of a school year as it was sealed on 14 July 2026.");
    }

    /// <summary>The fingerprint that the page shows of the first child afterwards.</summary>
    private async Task<string> CorrectLateAsync()
    {
        await Page.GotoAsync("/records");
        await Page.Locator("#hours").TapAsync();
        await Page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Measured the mill race") }).TapAsync();
        await Page.GetByRole(AriaRole.Link, new() { Name = "Change", Exact = true }).TapAsync();
        await Page.Locator("label:has(#length-90)").TapAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("This year is sealed");
        await _screen.MustBeSoundInEveryLookAsync();
        await Page.GetByLabel("Why is it corrected late?").FillAsync("The kitchen clock stood still.");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Save as a late correction" }).ClickAsync();
        await _screen.MustArriveAsync("/log/");
        await Page.GotoAsync(_year);
        var child = Page.Locator("section[data-learner]").First;
        await Expect(child).ToContainTextAsync("The log still says what was sealed and amended.");
        await Expect(child).ToContainTextAsync("Why: The kitchen clock stood still.");
        await Expect(child.Locator("dt")).ToHaveTextAsync(["Fingerprint", "As sealed"]);
        await _screen.MustBeSoundInEveryLookAsync();
        return await child.Locator("code").First.InnerTextAsync();
    }
}
