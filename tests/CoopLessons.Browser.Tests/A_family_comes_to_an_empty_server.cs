using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>Nobody is here yet, and somebody has the file of a family that was kept elsewhere.</summary>
public sealed class A_family_comes_to_an_empty_server : IAsyncLifetime
{
    private readonly Host _host = new(new(2026, 5, 20, 15, 0, 0, TimeSpan.Zero));
    private Screen _screen = null!;

    public async Task InitializeAsync() => _screen = await Screen.OpenAsync(_host.Address, 360, 740);

    public async Task DisposeAsync()
    {
        await _screen.DisposeAsync();
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task The_first_page_leads_to_a_sign_in_and_to_the_place_for_the_file()
    {
        var page = _screen.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring a family" }).TapAsync();
        await _screen.MustArriveAsync("/first-run/bring");
        await _screen.MustBeSoundInEveryLookAsync();
        await page.GetByLabel("Your name").FillAsync("Iris");
        await page.GetByLabel("E-mail").FillAsync("iris@alder.millrace.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync("seven geese crossing the millpond");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the sign-in" }).ClickAsync();
        await _screen.MustArriveAsync("/person/bring");
        await _screen.MustBeSoundInEveryLookAsync();

        await page.GetByLabel("The family’s file").SetInputFilesAsync(new FilePayload { Name = "family.zip", MimeType = "application/zip", Buffer = "no such file"u8.ToArray() });
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring the family" }).ClickAsync();
        await Expect(page.Locator("#file-fault")).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Bring a family");
        await _screen.MustBeSoundInEveryLookAsync();
    }
}
