using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>“Show me health”: a parent stands with a phone before whoever asks. Taps and pages are counted; no time is measured, since it would be the machine's.</summary>
[Collection(CoopServer.Name)]
public sealed class Somebody_asks_for_one_subject(CoopServer server)
{
    [Fact]
    public async Task Two_taps_from_the_records_show_what_there_is_of_it_and_what_there_is_not()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        await screen.CountInputsAsync();
        await page.GotoAsync("/records");
        var child = await page.GetByRole(AriaRole.Heading, new() { Level = 1 }).Locator("bdi").First.InnerTextAsync();
        var pages = 0;
        page.Request += (_, request) => pages += request.IsNavigationRequest ? 1 : 0;
        await screen.BeginCountingAsync();
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Show one subject") }).TapAsync();
        await screen.MustArriveAsync("/records/subject");
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Subject" }).GetByRole(AriaRole.Link, new() { Name = "Health", Exact = true }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync($"Health, {child}");
        Assert.Equal((2, 0), await screen.CountedAsync());
        Assert.Equal(2, pages);

        // What is not there is said first, and seen without scrolling.
        var missing = page.Locator("section[aria-labelledby=missing]").GetByText("No photo, paper or recording shows Health.");
        await Expect(missing).ToBeInViewportAsync();
        var days = await page.Locator(".page-head .sub").InnerTextAsync();
        Assert.Equal("1 July 2025 to 30 June 2026", days);
        await Expect(page.Locator("section[aria-labelledby=here]")).ToContainTextAsync(new Regex(@"\d+ hours( \d+ min)? on \d+ days, from \d+ \w+ 2025 to \d+ \w+ 2026\."));
        Assert.NotEqual(0, await page.Locator("section[aria-labelledby=entries] li").CountAsync());
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "PDF" }).TapAsync());
        Assert.EndsWith(".pdf", download.SuggestedFilename, StringComparison.Ordinal);
        await screen.MustBeSoundInEveryLookAsync();
    }

    [Fact]
    public async Task Other_days_are_asked_for_in_place()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        await page.GotoAsync("/records/subject");
        await page.GetByRole(AriaRole.Link, new() { Name = "Health", Exact = true }).TapAsync();
        await page.GetByText("Another subject, or other days").TapAsync();
        await page.GetByLabel("From", new() { Exact = true }).FillAsync("2026-01-05");
        await page.GetByLabel("To", new() { Exact = true }).FillAsync("2026-01-04");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).TapAsync();
        await Expect(page.Locator("#days-fault")).ToBeVisibleAsync();
        await Expect(page.GetByLabel("From", new() { Exact = true })).ToHaveValueAsync("2026-01-05");
        await page.GetByLabel("To", new() { Exact = true }).FillAsync("2026-01-05");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).TapAsync();
        await Expect(page.Locator(".page-head .sub")).ToHaveTextAsync("5 January 2026 to 5 January 2026");
        await Expect(page.Locator("section[aria-labelledby=missing]")).ToContainTextAsync("No photo, paper or recording shows Health.");
    }
}
