using CoopLessons.Browser.Tests.App;
using CoopLessons.Data.Log;
using CoopLessons.Web.Tests.Evidence;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>
/// What is done on a phone without a network is on the server once, whatever happens on the way. The network is a real one
/// of this machine, with a wire in it that can be cut.
/// </summary>
public sealed class Days_without_a_network : IAsyncLifetime
{
    /// <summary>A Thursday, ten in the morning in the Central zone, far enough ahead that the browser keeps the cookies.</summary>
    private static readonly DateTimeOffset Morning = new(2099, 3, 12, 15, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Day = new(2099, 3, 12);

    private Host _host = null!;
    private Wire _wire = null!;
    private Household _home = null!;
    private Phone _phone = null!;

    private IPage Page => _phone.Page;

    public Task InitializeAsync() => Task.CompletedTask;

    private async Task BeginAsync(DateTimeOffset? at = null)
    {
        _host = new Host(at ?? Morning);
        _wire = new Wire(_host.Address);
        _home = await _host.HouseholdAsync();
        _phone = new Phone(_wire.Address);
        await _phone.OpenAsync();
    }

    public async Task DisposeAsync()
    {
        await _phone.DisposeAsync();
        _wire.Dispose();
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task Three_things_survive_a_closed_browser_and_are_on_the_server_once()
    {
        await BeginAsync();
        await _home.PlanAsync("Wash out the gluten", Day);
        await ComeInAsync();
        _wire.Cut();
        await Page.GotoAsync("/today");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Done" }).ClickAsync();
        await Expect(Page.Locator(".waits-here")).ToContainTextAsync("done, waiting");
        await _phone.LogAsync("Fed the ducks", SamplePhotos.Photo());
        await _phone.LogAsync("Read under the table", SamplePhotos.Turned(6));
        await Expect(_phone.Pending).ToHaveTextAsync("5 waiting");

        await _phone.CloseAsync();
        await _phone.OpenAsync();
        await Page.GotoAsync("/today");
        await Expect(_phone.Pending).ToHaveTextAsync("5 waiting");
        await Expect(Page.Locator(".waits-here")).ToContainTextAsync("done, waiting");
        await Expect(Page.Locator("[data-also]")).ToContainTextAsync("Fed the ducks");
        await Expect(Page.Locator("[data-also]")).ToContainTextAsync("Read under the table");
        await Expect(Page.Locator("[data-also]")).ToContainTextAsync("1 photo");
        Assert.Empty(await _home.StandingAsync());

        _wire.Mend();
        // The page is made before its tick is there, and shows it once it is.
        await Page.GotoAsync("/today");
        await Expect(Page.Locator(".strip-line.is-done")).ToContainTextAsync("Wash out the gluten", new() { Timeout = 20_000 });
        await SentAsync();
        Assert.Equal(["Fed the ducks", "Read under the table", "Wash out the gluten"], (await _home.StandingAsync()).Select(r => r.What));
        Assert.All(await _home.StandingAsync(), r => Assert.Equal(Day, r.Date));
        var entries = (await _home.StandingAsync()).ToDictionary(r => r.EntryId, r => r.What);
        var pieces = await _home.FromDbAsync(db => db.Pieces.ToListAsync());
        Assert.Equal(["Fed the ducks", "Read under the table"], pieces.Select(p => entries[p.EntryId!.Value]).Order());
    }

    [Fact]
    public async Task An_answer_that_is_lost_after_the_server_saved_leaves_one_entry()
    {
        await BeginAsync();
        await ComeInAsync();
        _wire.LoseTheAnswerTo("POST /log/new");
        await _phone.LogAsync("Counted the sheaves");
        Assert.Equal(1, _wire.Lost);
        await SentAsync();
        var entry = Assert.Single(await _home.StandingAsync());
        Assert.Equal(("Counted the sheaves", 1), (entry.What, entry.Number));
    }

    [Fact]
    public async Task A_page_of_the_guest_network_is_never_taken_for_the_servers_word()
    {
        await BeginAsync();
        await ComeInAsync();
        await Page.GotoAsync("/log/new");
        _wire.Cut();
        _wire.Mend();
        _wire.AnswerForTheServer();
        // The page asks what such a thing counts as; what comes back is not put into the form.
        await Page.GetByLabel("What", new() { Exact = true }).FillAsync("Sang the rounds");
        await Page.RunAndWaitForResponseAsync(() => Page.Keyboard.PressAsync("Tab"), answer => answer.Url.Contains("handler=counts", StringComparison.Ordinal));
        await Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Page.WaitForURLAsync("**/today");
        await Expect(_phone.Pending).ToHaveTextAsync("1 waiting");
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("12 March");
        Assert.Empty(await _home.StandingAsync());
        _wire.Mend();
        await SentAsync();
        Assert.Single(await _home.StandingAsync());
    }

    [Fact]
    public async Task A_sign_in_that_ended_is_asked_for_again_and_then_everything_is_sent()
    {
        await BeginAsync();
        await ComeInAsync();
        _wire.Cut();
        await _phone.LogAsync("Pressed leaves");
        await Page.Context.ClearCookiesAsync();
        _wire.Mend();
        await Page.GotoAsync("/phone");
        await Page.GetByRole(AriaRole.Link, new() { Name = "Sign in" }).ClickAsync();
        await Expect(Page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/sign-in"));
        Assert.Empty(await _home.StandingAsync());

        // Somebody else of the family on the same phone sends nothing of hers.
        await _phone.SignInAsync(_home.Basil);
        await Page.GotoAsync("/today");
        await Expect(_phone.Pending).ToBeHiddenAsync();
        await Page.GotoAsync("/phone");
        await Expect(Page.GetByText("1 thing of somebody else")).ToBeVisibleAsync();
        Assert.Empty(await _home.StandingAsync());

        await Page.Context.ClearCookiesAsync();
        await Page.GotoAsync("/sign-in?back=/today");
        await _phone.SignInAsync(_home.Iris);
        await SentAsync();
        Assert.Equal("Iris", Assert.Single(await _home.StandingAsync()).AuthorName);
    }

    [Fact]
    public async Task What_the_server_refuses_stays_with_its_reason_and_can_be_mended()
    {
        await BeginAsync();
        await ComeInAsync();
        _wire.Cut();
        await Page.GotoAsync("/log/new");
        await Page.GetByLabel("What", new() { Exact = true }).FillAsync("Visited the mill");
        await Page.GetByLabel("When").FillAsync("2099-03-20");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Page.WaitForURLAsync("**/today");
        await _phone.LogAsync("Fed the ducks");
        _wire.Mend();
        await Page.GotoAsync("/phone");
        await Expect(_phone.Pending).ToHaveTextAsync("1 needs you");
        await Expect(Page.Locator("#main li")).ToHaveCountAsync(1);
        await Expect(Page.GetByText("That day is still to come")).ToBeVisibleAsync();
        Assert.Equal("Fed the ducks", Assert.Single(await _home.StandingAsync()).What);

        await Page.GetByRole(AriaRole.Link, new() { Name = "Mend it" }).ClickAsync();
        await Expect(Page.GetByLabel("What", new() { Exact = true })).ToHaveValueAsync("Visited the mill");
        await Expect(Page.GetByText("That day is still to come")).ToBeVisibleAsync();
        await Page.GetByLabel("When").FillAsync("2099-03-11");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await SentAsync();
        Assert.Equal(new DateOnly(2099, 3, 11), (await _home.StandingAsync()).Single(r => r.What == "Visited the mill").Date);
    }

    [Fact]
    public async Task A_phone_whose_clock_is_two_hours_ahead_logs_on_the_familys_day()
    {
        // 22:40 in the family's zone; the phone believes that it is past midnight.
        await BeginAsync(Morning + TimeSpan.FromHours(12.5) + TimeSpan.FromMinutes(10));
        await Page.Clock.InstallAsync(new() { TimeDate = _host.Clock.GetUtcNow().UtcDateTime.AddHours(2) });
        await ComeInAsync();
        _wire.Cut();
        await Page.GotoAsync("/today");
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Thursday");
        await _phone.LogAsync("Looked at the stars");
        _wire.Mend();
        await SentAsync();
        Assert.Equal(Day, Assert.Single(await _home.StandingAsync()).Date);
    }

    [Fact]
    public async Task The_night_to_summer_time_moves_no_day()
    {
        // Clocks in the Central zone go forward on the second Sunday in March: 15 U.S.C. 260a(a). In 2099 that is the 8th.
        await BeginAsync(new(2099, 3, 8, 4, 0, 0, TimeSpan.Zero));
        await Page.Clock.InstallAsync(new() { TimeDate = _host.Clock.GetUtcNow().UtcDateTime });
        await ComeInAsync();
        _wire.Cut();
        await Page.GotoAsync("/today");
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Saturday 7 March");
        await _phone.LogAsync("Late, on Saturday");
        // Seven hours on: 5 in the morning, or 6 by the new time.
        await Page.Clock.FastForwardAsync(7 * 3_600_000);
        _host.Clock.Advance(TimeSpan.FromHours(7));
        await Page.GotoAsync("/today");
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Sunday 8 March");
        await _phone.LogAsync("Early, on Sunday");
        await Page.GotoAsync("/phone");
        await Expect(Page.GetByText("Kept Saturday 7 March, 22:0")).ToBeVisibleAsync();
        await Expect(Page.GetByText("Kept Sunday 8 March, 6:0")).ToBeVisibleAsync();
        _wire.Mend();
        await SentAsync();
        Assert.Equal([("Early, on Sunday", new DateOnly(2099, 3, 8)), ("Late, on Saturday", new DateOnly(2099, 3, 7))], (await _home.StandingAsync()).Select(r => (r.What, r.Date)));
    }

    [Fact]
    public async Task Two_phones_that_change_one_entry_keep_both_and_the_parents_are_asked()
    {
        await BeginAsync();
        await ComeInAsync();
        await _phone.LogAsync("Baked bread");
        await SentAsync();
        var entry = Assert.Single(await _home.StandingAsync()).EntryId;
        await using var other = new Phone(_wire.Address);
        await other.OpenAsync();
        await other.SignInAsync(_home.Basil);
        foreach (var phone in new[] { _phone, other })
        {
            await phone.Page.GotoAsync("/today");
            await phone.MustKeepAsync($"/log/{entry}/change");
        }

        _wire.Cut();
        await ChangeAsync(_phone, entry, minutes: "60", what: "Baked bread");
        await ChangeAsync(other, entry, minutes: "90", what: "Baked two loaves");
        _wire.Mend();
        await SentAsync(_phone);
        await SentAsync(other);

        var history = await _home.FromDbAsync(db => db.HistoryAsync(entry, default));
        Assert.Equal([("Iris", false), ("Iris", false), ("Basil", true)], history.Select(r => (r.AuthorName, r.Aside)));
        Assert.Equal([40, 60, 90], history.Select(r => r.Times[0].Minutes));

        await Page.GotoAsync("/today");
        await Page.GetByRole(AriaRole.Link, new() { Name = "See both and say which holds" }).ClickAsync();
        await Expect(Page.GetByRole(AriaRole.Main)).ToContainTextAsync("minutes 60 → 90");
        await Page.GetByRole(AriaRole.Button, new() { Name = "Take this one" }).ClickAsync();
        await Page.WaitForURLAsync($"**/log/{entry}");
        var holds = Assert.Single(await _home.StandingAsync());
        Assert.Equal(("Baked two loaves", 90), (holds.What, holds.Times[0].Minutes));
        await Page.GotoAsync("/today");
        await Expect(Page.GetByText("was written twice")).ToHaveCountAsync(0);
    }

    private static async Task ChangeAsync(Phone phone, Guid entry, string minutes, string what)
    {
        await phone.Page.GotoAsync($"/log/{entry}/change");
        await phone.Page.GetByLabel("What", new() { Exact = true }).FillAsync(what);
        await phone.Page.GetByText(minutes, new() { Exact = true }).ClickAsync();
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await phone.Page.WaitForURLAsync("**/today");
        await Expect(phone.Pending).ToHaveTextAsync("1 waiting");
    }

    private async Task ComeInAsync()
    {
        await _phone.SignInAsync(_home.Iris);
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
        await _phone.MustKeepAsync("/log/new");
    }

    private Task SentAsync() => SentAsync(_phone);

    /// <summary>Opens a page, as somebody does who is back, and nothing waits any more, of nobody.</summary>
    private static async Task SentAsync(Phone phone)
    {
        await phone.Page.GotoAsync("/phone");
        await Expect(phone.Page.Locator("main:has-text('Nothing waits'):not(:has-text('of somebody else'))")).ToBeVisibleAsync(new() { Timeout = 20_000 });
    }
}
