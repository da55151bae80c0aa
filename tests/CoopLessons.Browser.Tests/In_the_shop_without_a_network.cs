using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>The list is ticked in the shop while the network is cut, sent when it is back, and put on the shelf at home.</summary>
public sealed class In_the_shop_without_a_network(CoopServer server) : IClassFixture<CoopServer>
{
    /// <summary>What lies open of the items that wait.</summary>
    private const string Open = """
        () => new Promise(resolve => {
          const asked = indexedDB.open('cooplessons');
          asked.onsuccess = () => {
            const all = asked.result.transaction('items').objectStore('items').getAll();
            all.onsuccess = () => { asked.result.close(); resolve(JSON.stringify(all.result)); };
          };
        })
        """;

    private const string List = "/week/shopping/2026-W18";

    [Fact]
    public async Task Every_screen_is_sound()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        await page.GotoAsync(List);
        await screen.MustBeSoundInEveryLookAsync();
        await page.Locator("#basket .parts > summary").First.ClickAsync();
        var good = await page.Locator("#basket .parts a[href^='/week/shelf/']").First.GetAttributeAsync("href");
        var swap = await page.Locator("#basket .parts a[href*='/swap/']").First.GetAttributeAsync("href");
        await screen.MustBeSoundInEveryLookAsync();
        foreach (var path in new[] { good!, swap!, List + "/bought" })
        {
            await page.GotoAsync(path);
            await screen.MustBeSoundInEveryLookAsync();
        }
    }

    [Fact]
    public async Task Ticks_wait_on_the_phone_and_are_sent_when_it_is_back()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        await page.GotoAsync(List);
        var boxes = page.Locator("#basket [data-tick]");
        var waiting = page.Locator("#waiting");
        await Expect(waiting).ToBeHiddenAsync();

        await page.Context.SetOfflineAsync(true);
        await boxes.Nth(0).CheckAsync();
        await Expect(waiting).ToHaveTextAsync("1 tick waits for the network.");
        await boxes.Nth(1).CheckAsync();
        await Expect(waiting).ToHaveTextAsync("2 ticks wait for the network.");
        await page.Context.SetOfflineAsync(false);
        await Expect(waiting).ToBeHiddenAsync();
        await page.ReloadAsync();
        await Expect(boxes.Nth(0)).ToBeCheckedAsync();
        await Expect(boxes.Nth(1)).ToBeCheckedAsync();

        // The server cannot be reached, the page is closed, and opened again later: the tick is still there and is sent then.
        await page.RouteAsync("**/*handler=Ticks", route => route.AbortAsync());
        await boxes.Nth(2).CheckAsync();
        await Expect(waiting).ToHaveTextAsync("1 tick waits for the network.");
        // What is kept names no good: the words of an item are sealed.
        var kept = await page.EvaluateAsync<string>(Open);
        Assert.DoesNotContain((await boxes.Nth(2).Locator("xpath=ancestor::label").InnerTextAsync()).Split('\n')[0].Trim(), kept, StringComparison.Ordinal);
        await page.UnrouteAsync("**/*handler=Ticks");
        await page.GotoAsync("/today");
        await page.GotoAsync(List);
        await Expect(boxes.Nth(2)).ToBeCheckedAsync();
        await Expect(waiting).ToBeHiddenAsync();

        await page.GotoAsync(List + "/bought");
        await Expect(page.Locator("fieldset")).ToHaveCountAsync(3);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put on the shelf" }).ClickAsync();
        await screen.MustArriveAsync(List);
        await Expect(page.Locator("#said")).ToContainTextAsync("3 things are on the shelf");
    }
}
