using CoopLessons.Browser.Tests.App;
using CoopLessons.Web.Tests.Evidence;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>The program is killed while a phone sends, and started anew on the same data: everything is there once.</summary>
public sealed class A_server_killed_in_the_middle : IAsyncLifetime
{
    private readonly OwnProgram _program = new();
    private Wire _wire = null!;
    private Phone _phone = null!;

    private IPage Page => _phone.Page;

    public async Task InitializeAsync()
    {
        await _program.StartAsync();
        _wire = new Wire(_program.Address);
        _phone = new Phone(_wire.Address);
        await _phone.OpenAsync();
        await FoundAsync();
    }

    public async Task DisposeAsync()
    {
        await _phone.DisposeAsync();
        _wire.Dispose();
        await _program.DisposeAsync();
    }

    [Theory]
    [InlineData("POST /log/new")]
    [InlineData("POST /evidence/parts/")]
    public async Task What_was_on_its_way_is_sent_again_and_kept_once(string killedIn)
    {
        _wire.BreakIn(killedIn, _program.Kill);
        await _phone.LogAsync("Fed the ducks", SamplePhotos.Photo());
        await Expect(_phone.Pending).ToContainTextAsync("waiting");
        await _program.StartAsync();
        _wire.LeadTo(_program.Address);
        await Page.GotoAsync("/phone");
        await Expect(Page.GetByText("Nothing waits")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Page.GotoAsync("/log");
        await Expect(Page.GetByRole(AriaRole.Main).GetByText("Fed the ducks")).ToHaveCountAsync(1);
        await Page.GetByRole(AriaRole.Main).GetByText("Fed the ducks").ClickAsync();
        await Page.WaitForURLAsync("**/log/*-*");
        await Expect(Page.Locator("img[src^='/evidence/']")).ToHaveCountAsync(1);
    }

    private async Task FoundAsync()
    {
        await Page.GotoAsync("/first-run");
        var found = Page.Locator("form").Filter(new() { HasText = "Found the family" });
        await found.GetByLabel("Your name").FillAsync("Iris");
        await found.GetByLabel("E-mail").FillAsync("iris@alder.millrace.example");
        await found.GetByLabel("Password", new() { Exact = true }).FillAsync(Household.Password);
        await found.GetByLabel("Name of the family").FillAsync("Alder");
        await found.GetByRole(AriaRole.Button, new() { Name = "Found the family" }).ClickAsync();
        await Page.WaitForURLAsync("**/family");
        await Page.GotoAsync("/family/learners/new");
        await Page.GetByLabel("First name or nickname").FillAsync("Linnet");
        await Page.GetByLabel("Birth date").FillAsync("2017-05-04");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Add the child" }).ClickAsync();
        await Page.WaitForURLAsync("**/family");
        await Page.GotoAsync("/today");
        await _phone.MustKeepAsync("/log/new");
    }
}
