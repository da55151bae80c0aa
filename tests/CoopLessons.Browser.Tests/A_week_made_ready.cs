using CoopLessons.Browser.Tests.App;
using CoopLessons.Data.Scenario;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>Sunday night on a phone: what the week needs, a file brought, the packet taken home and printed, and the sheet for the fridge.</summary>
public sealed class A_week_made_ready(CoopServer server) : IClassFixture<CoopServer>
{
    private const string Packet = "/week/packet/2026-W18";

    [Fact]
    public async Task From_the_first_look_to_the_printed_packet()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        await page.GotoAsync("/week/2026-W18");
        await page.GetByRole(AriaRole.Link, new() { Name = "Getting ready" }).ClickAsync();
        await screen.MustArriveAsync("/week/ready/2026-W18");
        await Expect(page.Locator("#print")).ToContainTextAsync("Bring");
        await page.GetByRole(AriaRole.Link, new() { Name = "The packet" }).ClickAsync();
        await screen.MustArriveAsync(Packet);

        // A file that is none is refused beside the field; a sheet is taken.
        await page.Locator("section[aria-labelledby=missing] a[href$='/prints']").First.ClickAsync();
        await screen.MustArriveAsync("/units/");
        await BringAsync(page, "list.pdf", "flour, salt"u8.ToArray());
        await Expect(page.Locator("main .fault:not(:empty)").First).ToBeVisibleAsync();
        await screen.MustBeSoundInEveryLookAsync();
        await BringAsync(page, "sheet.pdf", ScenarioFiles.Bytes("scenario/printables/gluten-test.pdf"));
        await Expect(page.GetByText("sheet.pdf").First).ToBeVisibleAsync();
        await screen.MustBeSoundInEveryLookAsync();

        await page.GotoAsync(Packet);
        await Expect(page.Locator("#sheets")).ToContainTextAsync("sheets");
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Download the packet" }).ClickAsync());
        await using (var file = await download.CreateReadStreamAsync())
        {
            var head = new byte[5];
            await file.ReadExactlyAsync(head);
            Assert.Equal("%PDF-"u8.ToArray(), head);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "It is printed" }).ClickAsync();
        await Expect(page.GetByText("Nothing changed since.")).ToBeVisibleAsync();
        await screen.MustBeSoundInEveryLookAsync();
        await page.GotoAsync("/week/ready/2026-W18");
        await Expect(page.Locator("#print li").Filter(new() { HasText = "Print the packet" })).ToContainTextAsync("done");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sheet for the fridge" }).ClickAsync();
        await screen.MustArriveAsync("/week/fridge/2026-W18");
        await Expect(page.Locator(".boxes > li").First).ToBeVisibleAsync();
    }

    private static async Task BringAsync(IPage page, string name, byte[] bytes)
    {
        var form = page.Locator("section[id^='print-']").First.Locator("form:has(input[type=file])");
        await form.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/pdf", Buffer = bytes });
        await form.GetByRole(AriaRole.Button, new() { Name = "Bring the file" }).ClickAsync();
    }
}
