using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>Every place with a year behind it, on a phone and on a laptop, by day and by night, with and without scripts.</summary>
[Collection(CoopServer.Name)]
public sealed class The_screens_of_a_full_year(CoopServer server)
{
    [Fact]
    public async Task Have_no_fault_that_can_be_found_by_program()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        await server.SignInAsync(screen.Page);
        foreach (var path in new[] { "/today", "/week", "/units", "/records", "/family", "/log", "/log/new", "/week/ready", "/week/ahead", "/week/fridge/2026-W17", "/week/packet/2026-W17", "/week/packet/prices", "/week/shopping/2026-W17", "/week/shelf", "/week/costs", "/week/books", "/week/books/trip", "/records/reading", "/records/marks", "/family/subjects", "/family/people", "/family/counting", "/family/years/new", "/units/new", "/units/take-in", "/person", "/person/authenticator" })
        {
            await screen.Page.GotoAsync(path);
            await screen.MustBeSoundInEveryLookAsync();
        }

        foreach (var (from, link) in new[] { ("/units", ".row-link[href*='/units/']"), ("/log", "main a[href^='/log/0']"), ("/family", ".row-link[href*='/family/learners/']"), ("/family", ".row-link[href*='/family/years/']"), ("/records", "#hours-table a"), ("/records", "main a[href$='/courses']"), ("/records", "main a[href$='/tests']") })
        {
            await screen.Page.GotoAsync(from);
            await screen.Page.Locator(link).First.ClickAsync();
            await screen.MustLeaveAsync(from);
            await screen.MustBeSoundInEveryLookAsync();
        }
    }

    [Fact]
    public async Task Show_the_law_without_such_a_fault()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        await server.SignInAsync(screen.Page);
        foreach (var path in new[] { "/records/papers", "/records/calendar", "/family/law", "/family/law/own/new", "/law", "/law/us-ny" })
        {
            await screen.Page.GotoAsync(path);
            await screen.MustBeSoundInEveryLookAsync();
        }

        foreach (var (from, link) in new[] { ("/records", "main a[href*='/records/standing']"), ("/records", "main a[href*='/records/what-if']"), ("/family/law", "main a[href$='/choose']"), ("/family/law", "main a[href*='/spans/']"), ("/family/law", "main a[href$='/events']"), ("/family/law", "main a[href*='/law/subjects/']") })
        {
            await screen.Page.GotoAsync(from);
            await screen.Page.Locator(link).First.ClickAsync();
            await screen.MustLeaveAsync(from);
            // What is folded in is looked at as well.
            await screen.Page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
            await screen.MustBeSoundInEveryLookAsync();
        }
    }

    [Fact]
    public async Task Draw_the_way_to_a_figure_with_its_numbers_in_a_table()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 1280, 800);
        await server.SignInAsync(screen.Page);
        await screen.Page.GotoAsync("/records");
        await screen.Page.Locator("main a[href*='/records/standing']").First.ClickAsync();
        await screen.Page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
        var chart = screen.Page.GetByRole(AriaRole.Img).First;
        await Expect(chart).ToBeVisibleAsync();
        // The description's total so far is a row of the table.
        var soFar = System.Text.RegularExpressions.Regex.Match(await chart.Locator("desc").TextContentAsync() ?? "", @"So far ([0-9:,]+) hours").Groups[1].Value;
        Assert.NotEqual("", soFar);
        await Expect(screen.Page.GetByRole(AriaRole.Cell, new() { Name = soFar, Exact = true }).First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Work_without_scripts()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740, scripts: false);
        await server.SignInAsync(screen.Page);
        await screen.Page.GotoAsync("/log/new");
        await screen.Page.GetByLabel("What", new() { Exact = true }).FillAsync("Sang on the way to the mill");
        await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await screen.Page.GotoAsync("/log");
        await Expect(screen.Page.GetByRole(AriaRole.Main)).ToContainTextAsync("Sang on the way to the mill");
    }

    [Fact]
    public async Task Are_walked_with_the_keyboard_alone()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 1280, 800);
        await server.SignInAsync(screen.Page);
        await screen.Page.GotoAsync("/today");
        await screen.Page.Keyboard.PressAsync("Tab");
        await Expect(screen.Page.Locator(":focus")).ToHaveTextAsync("Skip to the page");
        await screen.Page.Keyboard.PressAsync("Enter");
        for (var i = 0; i < 80 && await screen.Page.EvaluateAsync<string>("() => document.activeElement.textContent.trim()") != "Log something else"; i++)
            await screen.Page.Keyboard.PressAsync("Tab");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.MustArriveAsync("/log/new");
        // The field that everybody comes for has the focus at once; what stands before it is reached backwards.
        await Expect(screen.Page.Locator(":focus")).ToHaveAttributeAsync("id", "Input_What");
        for (var i = 0; i < 30 && await screen.Page.EvaluateAsync<string>("() => document.activeElement.textContent.trim()") != "Skip to the page"; i++)
            await screen.Page.Keyboard.PressAsync("Shift+Tab");
        await Expect(screen.Page.Locator(":focus")).ToHaveTextAsync("Skip to the page");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.Keyboard.PressAsync("Tab");
        for (var i = 0; i < 60 && await screen.Page.Locator(":focus").GetAttributeAsync("id") != "Input_What"; i++)
            await screen.Page.Keyboard.PressAsync("Tab");
        await screen.Page.Keyboard.TypeAsync("Counted the geese");
        for (var i = 0; i < 80 && await screen.Page.EvaluateAsync<string>("() => document.activeElement.textContent.trim()") != "Save"; i++)
            await screen.Page.Keyboard.PressAsync("Tab");
        await screen.Page.Keyboard.PressAsync("Enter");
        await Expect(screen.Page.GetByRole(AriaRole.Main)).ToContainTextAsync("Counted the geese");
    }
}
