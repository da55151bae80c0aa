using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>Sunday night: the week is laid out and taken, a day falls through, and everything is undone again; on a phone and on a laptop.</summary>
public sealed class A_week_laid_out(CoopServer server) : IClassFixture<CoopServer>
{
    [Theory]
    [InlineData(360, 740, false)]
    [InlineData(1280, 800, true)]
    public async Task Is_taken_upset_mended_and_undone(int width, int height, bool dark)
    {
        await using var screen = await Screen.OpenAsync(server.Address, width, height, dark);
        var page = screen.Page;
        await server.SignInAsync(page);
        await page.GotoAsync("/week");
        await page.GetByRole(AriaRole.Link, new() { Name = "Week after" }).ClickAsync();
        await screen.MustLeaveAsync("/week");
        await screen.MustBeSoundAsync();
        var before = await PlanAsync(page);

        await page.GetByRole(AriaRole.Link, new() { Name = "Lay out this week" }).ClickAsync();
        await screen.MustArriveAsync("/week/layout/");
        await screen.MustBeSoundAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Lay (out this week|it out once more)$") }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take this week" })).ToBeVisibleAsync(new() { Timeout = 90_000 });
        await screen.MustBeSoundAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take this week" }).ClickAsync();
        await Expect(page.Locator(".undo")).ToContainTextAsync("laid out");
        await screen.MustBeSoundAsync();
        Assert.NotEqual(before, await PlanAsync(page));

        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Falls through") }).First.ClickAsync();
        await screen.MustArriveAsync("/week/ways/");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^(Show three ways on|Look once more)$") }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Take this") })).ToHaveCountAsync(3, new() { Timeout = 90_000 });
        await screen.MustBeSoundAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Let it go$") }).ClickAsync();
        await Expect(page.Locator(".undo")).ToContainTextAsync("let go");
        await page.Locator(".undo").GetByRole(AriaRole.Button).ClickAsync();
        await Expect(page.Locator("#said")).ToContainTextAsync("is undone");

        await page.GetByRole(AriaRole.Link, new() { Name = "Steps and undo" }).ClickAsync();
        await screen.MustArriveAsync("/week/steps");
        await screen.MustBeSoundAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("laid out$") }).First.ClickAsync();
        await Expect(page.Locator("#said")).ToContainTextAsync("is undone");
        await page.GotoAsync("/week");
        await page.GetByRole(AriaRole.Link, new() { Name = "Week after" }).ClickAsync();
        await screen.MustLeaveAsync("/week");
        Assert.Equal(before, await PlanAsync(page));
    }

    /// <summary>The days of the week with what is planned on them, as they are read.</summary>
    private static async Task<string> PlanAsync(IPage page) => string.Join("\n", await page.Locator(".week .rows > li").AllInnerTextsAsync());
}
