using System.Text;
using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>What a family shows and hands in, takes with it and leaves behind, in every state in which a person meets it.</summary>
[Collection(CoopServer.Name)]
public sealed class The_screens_of_proof(CoopServer server)
{
    [Fact]
    public async Task Show_a_portfolio_and_a_term_without_a_fault_that_can_be_found_by_program()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page);
        await FollowAsync(screen, "/records", "main a[href*='/records/portfolio']");
        var portfolio = Here(page);
        await FollowAsync(screen, portfolio, "main a[href*='/samples/']");
        await FollowAsync(screen, portfolio, "main a[href*='/pair?']");
        await page.GotoAsync(portfolio);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Make the full one") }).ClickAsync();
        // Once it is made, the page that waits is loaded anew by itself.
        await Expect(page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Full, made on 22 April") })).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await MustBeSoundAsync(screen);
        await FollowAsync(screen, "/records", "main a[href*='/records/subject']");
        await FollowAsync(screen, "/records", "main a[href*='/records/terms']");
        // A term is finished when it is over.
        await page.GetByLabel("On", new() { Exact = true }).SelectOptionAsync("the first half");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draft it", Exact = true }).Last.ClickAsync();
        await screen.MustArriveAsync("/records/terms/");
        await MustBeSoundAsync(screen);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Finish it") }).ClickAsync();
        await Expect(page.GetByText("It stays as it was sent.")).ToBeVisibleAsync();
        await MustBeSoundAsync(screen);
    }

    [Fact]
    public async Task Tell_of_sealing_to_families_and_to_strangers_without_such_a_fault()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        foreach (var path in new[] { "/papers/check", "/papers/record" })
        {
            await screen.Page.GotoAsync(path);
            await screen.MustBeSoundInEveryLookAsync();
        }

        await server.SignInAsync(screen.Page);
        await screen.Page.GotoAsync("/records/sealing");
        await screen.MustBeSoundInEveryLookAsync();
        await FollowAsync(screen, "/records/sealing", "#years a");
        await Expect(screen.Page.GetByRole(AriaRole.Main)).ToContainTextAsync("It can be sealed on the day after.");
    }

    [Fact]
    public async Task Show_the_way_through_high_school_without_such_a_fault()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        await server.SignInAsync(screen.Page, "Cedar");
        await FollowAsync(screen, "/records", "main a[href$='/courses']");
        var courses = Here(screen.Page);
        await FollowAsync(screen, courses, "main a[href$='/transcript']");
        await FollowAsync(screen, courses, "main .rows a[href*='/courses/']");
        var course = Here(screen.Page);
        foreach (var part in new[] { "/mark", "/description", "/entries", "/terms", "/other/new" })
        {
            await screen.Page.GotoAsync(course + part);
            await MustBeSoundAsync(screen);
        }

        await FollowAsync(screen, "/records", "main a[href$='/tests']");
        await FollowAsync(screen, Here(screen.Page), "main a[href$='/tests/new']");
    }

    [Fact]
    public async Task Take_a_sheet_into_the_log_and_out_again_without_such_a_fault()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page, "Birch");
        await page.GotoAsync("/log/bring");
        await screen.MustBeSoundInEveryLookAsync();
        await page.GetByLabel("The file").SetInputFilesAsync(new FilePayload { Name = "kept-by-hand.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(Sheet) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("What the columns mean");
        await screen.MustBeSoundInEveryLookAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the rows" }).ClickAsync();
        await Expect(page.Locator("#bad")).ToHaveTextAsync("2 rows");
        await Expect(page.Locator("#faults li b")).ToHaveTextAsync(["Line 3", "Line 5"]);
        await screen.MustBeSoundInEveryLookAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take in the good rows" }).ClickAsync();
        await Expect(page.Locator("#taken")).ToHaveTextAsync("3 entries");
        await screen.MustBeSoundInEveryLookAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take them all out again" }).ClickAsync();
        await Expect(page.GetByText("Taken out again on 22 April 2026")).ToBeVisibleAsync();
    }

    /// <summary>Lines 3 and 5 cannot be read: there is no such day, and no such length.</summary>
    private const string Sheet = """
        Date,Activity,Child,Subject,Duration
        2026-03-02,Weighed flour for the neighbours,Robin,Mathematics,0:40
        2026-02-30,Drew the weir,Robin,Art,0:30
        2026-03-03,Read the almanac aloud,Martin,Reading,0:20
        2026-03-04,Sorted seeds,Martin,Science,a while
        2026-03-05,Mended a sieve,Robin,Home arts,0:35
        """;

    [Fact]
    public async Task Put_everything_into_a_file_and_ask_for_the_end_without_such_a_fault()
    {
        await using var screen = await Screen.OpenAsync(server.Address, 360, 740);
        var page = screen.Page;
        await server.SignInAsync(page, "Dogwood");
        await FollowAsync(screen, "/family", "main a[href='/family/out']");
        await page.GetByLabel("Your password").FillAsync(server.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the file" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "The file is made" })).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await screen.MustBeSoundInEveryLookAsync();

        await FollowAsync(screen, "/family", "main a[href='/family/leave']");
        await page.GetByLabel("The family’s name").FillAsync("Dogwood");
        await page.GetByLabel("Your password").FillAsync(server.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete everything in a week" }).ClickAsync();
        var receipt = await page.GetByLabel("Address to copy").InputValueAsync();
        await screen.MustBeSoundInEveryLookAsync();
        await page.GotoAsync(receipt);
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("It is due on 29 April 2026");
        await screen.MustBeSoundInEveryLookAsync();
        await page.GotoAsync("/family/leave");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop it: we stay" }).ClickAsync();
        await Expect(page.Locator("#said")).ToContainTextAsync("Nothing is deleted.");
        await page.GotoAsync(receipt);
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("nothing was deleted");
    }

    private static string Here(IPage page) => new Uri(page.Url).PathAndQuery;

    private static async Task FollowAsync(Screen screen, string from, string link)
    {
        if (Here(screen.Page) != from)
            await screen.Page.GotoAsync(from);
        await screen.Page.Locator(link).First.ClickAsync();
        await screen.MustLeaveAsync(from);
        await MustBeSoundAsync(screen);
    }

    /// <summary>What is folded in is looked at as well.</summary>
    private static async Task MustBeSoundAsync(Screen screen)
    {
        await screen.Page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
        await screen.MustBeSoundInEveryLookAsync();
    }
}
