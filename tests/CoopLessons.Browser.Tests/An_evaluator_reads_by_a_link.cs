using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>A parent makes a link on a phone; somebody who signs in nowhere opens it on a laptop, until it is withdrawn.</summary>
[Collection(CoopServer.Name)]
public sealed class An_evaluator_reads_by_a_link(CoopServer server)
{
    [Fact]
    public async Task Sees_the_year_and_its_pictures_until_the_family_withdraws_it()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        var address = await GiveAsync(screen);

        await using var other = await Screen.OpenAsync(server.Address, 1280, 800);
        var reader = other.Page;
        await reader.GotoAsync(address);
        await Expect(reader.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Linnet, 2025–26");
        await Expect(reader.GetByRole(AriaRole.Heading, new() { Name = "School days" })).ToBeVisibleAsync();
        // What was not ticked is not there.
        await Expect(reader.GetByRole(AriaRole.Heading, new() { Name = "Reading list" })).ToHaveCountAsync(0);
        var picture = reader.Locator(".pieces img").First;
        await picture.ScrollIntoViewIfNeededAsync();
        await reader.WaitForFunctionAsync("() => document.querySelector('.pieces img').naturalWidth > 0");
        await other.MustBeSoundInEveryLookAsync();
        await picture.ClickAsync();
        await reader.WaitForURLAsync(new Regex(@"/sample/[0-9a-f-]{36}$"));
        // The link opens no other door.
        await reader.GotoAsync("/records");
        await Expect(reader).ToHaveURLAsync(new Regex("/sign-in"));

        await page.GotoAsync(page.Url);
        await page.GetByText("Opened 2 times, last on 22 April 2026").ClickAsync();
        Assert.Equal(["a sample of", "the page"], (await page.Locator("main details .row-main").AllInnerTextsAsync()).Select(t => Regex.Replace(t, @" [\d-]+$", "")).Order());
        await screen.MustBeSoundInEveryLookAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Withdraw it") }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Withdrawn on 22 April 2026.");
        await screen.MustBeSoundInEveryLookAsync();

        Assert.Equal(404, (await reader.GotoAsync(address))!.Status);
        await Expect(reader.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Nothing here");
        await Expect(reader.GetByText("The address is wrong or no longer opens")).ToBeVisibleAsync();
        Assert.DoesNotContain("Linnet", await reader.ContentAsync(), StringComparison.Ordinal);
        Assert.Equal(404, (await reader.GotoAsync(address + "/portfolio.pdf"))!.Status);
    }

    /// <summary>For Linnet and the year at hand, without the reading list; the secret address as the page shows it.</summary>
    private static async Task<string> GiveAsync(Screen screen)
    {
        var page = screen.Page;
        await page.GotoAsync("/records");
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Learner" }).GetByRole(AriaRole.Link, new() { Name = "Linnet" }).TapAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Linnet");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Links for evaluators") }).TapAsync();
        await screen.MustArriveAsync("/records/readers");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the address" }).TapAsync();
        await Expect(page.GetByText("Say for whom it is")).ToBeVisibleAsync();
        await page.GetByLabel("For whom").FillAsync("M. Plover");
        await page.GetByLabel("the reading list").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the address" }).TapAsync();
        var shown = page.GetByLabel("Address to copy");
        await Expect(shown).ToBeVisibleAsync();
        await screen.MustBeSoundInEveryLookAsync();
        return await shown.InputValueAsync();
    }
}
