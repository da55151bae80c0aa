using CoopLessons.Browser.Tests.App;
using CoopLessons.Data.Files;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Travel;
using Microsoft.Extensions.DependencyInjection;
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

        await BringAsync("no such file"u8.ToArray());
        await Expect(page.Locator("#file-fault")).ToContainTextAsync("This file is no family’s file");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Bring a family");
        await _screen.MustBeSoundInEveryLookAsync();

        // Something long stands before it in the line, so that the waiting is seen.
        var (line, before) = (_host.Services.GetRequiredService<LayoutLine>(), new TaskCompletionSource<object>());
        line.Ask(Guid.CreateVersion7(), "before", (_, _) => before.Task);
        await BringAsync(await FamilyFileAsync());
        await Expect(page.GetByText("The server is busy with something else; this is begun next.")).ToBeVisibleAsync();
        await _screen.MustBeSoundInEveryLookAsync();
        before.SetResult(new object());
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "The Dogwood family is here" })).ToBeVisibleAsync();
        await _screen.MustBeSoundInEveryLookAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "To the family" }).TapAsync();
        await _screen.MustArriveAsync("/family");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Dogwood");
    }

    private async Task BringAsync(byte[] file)
    {
        await _screen.Page.GetByLabel("The family’s file").SetInputFilesAsync(new FilePayload { Name = "family.zip", MimeType = "application/zip", Buffer = file });
        await _screen.Page.GetByRole(AriaRole.Button, new() { Name = "Bring the family" }).ClickAsync();
    }

    /// <summary>Of a family on another server.</summary>
    private static async Task<byte[]> FamilyFileAsync()
    {
        await using var other = new Host(new(2026, 5, 20, 15, 0, 0, TimeSpan.Zero));
        var family = await other.HouseholdAsync("Dogwood", "Laurel", "Basil");
        using var file = new MemoryStream();
        await family.FromDbAsync(async db =>
        {
            await OutWork.WriteAsync(db, other.Services.GetRequiredService<FileShelf>(), file, other.Clock, _ => { }, default);
            return file.Length;
        });
        return file.ToArray();
    }
}
