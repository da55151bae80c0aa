using System.Text.RegularExpressions;
using CoopLessons.Browser.Tests.App;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace CoopLessons.Browser.Tests;

/// <summary>
/// The Alders prepare “Where Water Goes” for all. Five families take it up on their phones: one drops art, one halves the
/// reading, one moves things of week 3, one rewrites an activity, one changes nothing. The Alders publish twice more.
/// </summary>
public sealed class One_unit_in_five_families : IAsyncLifetime
{
    private static readonly DateTimeOffset Evening = new(2099, 3, 12, 23, 40, 0, TimeSpan.Zero);
    private static readonly string[] Takers = ["Birch", "Cedar", "Dogwood", "Elder", "Fir"];

    private readonly Host _host = new(Evening);
    private readonly Dictionary<string, Household> _families = [];
    private readonly Dictionary<string, Guid> _units = [];
    private Screen _screen = null!;
    private string _coop = "", _there = "";

    private IPage Page => _screen.Page;

    public async Task InitializeAsync() => _screen = await Screen.OpenAsync(_host.Address, 360, 740);

    public async Task DisposeAsync()
    {
        await _screen.DisposeAsync();
        await _host.DisposeAsync();
    }

    [Fact]
    public async Task Keeps_what_each_changed_while_two_revisions_come_in()
    {
        _families["Alder"] = await _host.HouseholdAsync();
        foreach (var name in Takers)
            _families[name] = await _host.HouseholdAsync(name, "Rue", "Reed");
        await SharedByTheAuthorAsync();
        foreach (var name in Takers)
            await TakenUpAsync(name, await LinkAsync(name));
        await ChangeAsync("Cedar", "w2-06-the-river-bank", ("HandsOnMinutes", "20"));
        await ChangeAsync("Dogwood", "w3-01-sand-filter", ("Week", "4"));
        await ChangeAsync("Elder", "w1-02-bag-on-the-window", ("Does", "Hang a jar in the window instead."));

        await ChangeAsync("Alder", "w2-06-the-river-bank", ("HandsOnMinutes", "55"));
        await ChangeAsync("Alder", "w1-02-bag-on-the-window", ("Does", "Seal the bag and tape it up in the sun."));
        await ChangeAsync("Alder", "w4-04-floods", ("HandsOnMinutes", "75"));
        await PublishAsync("Longer by the river bank.", 2);
        foreach (var name in Takers)
            await BringInAsync(name, asked: name is "Cedar" or "Elder" ? 1 : 0);
        await MustHaveAsync("Birch", ("w4-04-floods", 75), ("w2-06-the-river-bank", 55));
        await MustHaveAsync("Cedar", ("w4-04-floods", 75), ("w2-06-the-river-bank", 20));

        await ChangeAsync("Alder", "w2-06-the-river-bank", ("HandsOnMinutes", "50"));
        await ChangeAsync("Alder", "w3-02-aqueduct", ("HandsOnMinutes", "70"));
        await PublishAsync("The river bank as it went with us.", 3);
        await BringInAsync("Birch", 0);
        await BringInAsync("Cedar", 1, "theirs");
        await BringInAsync("Dogwood", 0);
        await BringInAsync("Elder", 1, "my own words", "Bag or jar, where the sun comes in.");
        await BringInAsync("Fir", 0);
        await MustHaveAsync("Birch", ("w3-02-aqueduct", 70), ("w2-06-the-river-bank", 50));
        await MustHaveAsync("Cedar", ("w3-02-aqueduct", 70), ("w2-06-the-river-bank", 50));
        Assert.Equal(4, (await UnitAsync("Dogwood")).Activities.Single(a => a.Code == "w3-01-sand-filter").Week);
        Assert.Equal("Bag or jar, where the sun comes in.", (await UnitAsync("Elder")).Activities.Single(a => a.Code == "w1-02-bag-on-the-window").Does);
        await LeftOutIsArtAsync();

        await SignInAsync("Alder");
        await Page.GotoAsync(_there);
        foreach (var name in Takers)
            await Expect(Page.GetByText($"{name}: revision 3, the newest")).ToBeVisibleAsync();
        await _screen.MustBeSoundInEveryLookAsync();
    }

    private async Task SharedByTheAuthorAsync()
    {
        await SignInAsync("Alder");
        await Page.GotoAsync("/coop/found");
        await Page.Locator("input[name='Input.Name']").FillAsync("Millrace");
        await Page.Locator("main form button").First.ClickAsync();
        await Expect(Page).ToHaveURLAsync(new Regex("/coop/[0-9a-f-]{36}$"));
        _coop = new Uri(Page.Url).AbsolutePath;
        await Page.GotoAsync("/units");
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Take onto our shelf.*Where Water Goes") }).ClickAsync();
        await Expect(Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Where Water Goes");
        _units["Alder"] = Guid.Parse(new Uri(Page.Url).Segments[^1]);
        await PublishAsync("", 1);
    }

    private async Task PublishAsync(string note, int number)
    {
        await SignInAsync("Alder");
        await Page.GotoAsync($"/units/{_units["Alder"]}/share");
        await Page.Locator("textarea[name=note]").FillAsync(note);
        await _screen.MustBeSoundAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = number == 1 ? "Publish for all" : $"Publish revision {number}" }).ClickAsync();
        await _screen.MustArriveAsync(_there = $"{_coop}/units/{_units["Alder"]}");
        await Expect(Page.GetByText($"Revision {number}", new() { Exact = true })).ToBeVisibleAsync();
    }

    private async Task<string> LinkAsync(string name)
    {
        await SignInAsync("Alder");
        await Page.GotoAsync(_coop + "/families");
        await Page.Locator("#invite-name").FillAsync(name);
        await Page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        return new Uri(await Page.Locator("#link").InputValueAsync()).AbsolutePath;
    }

    private async Task TakenUpAsync(string name, string link)
    {
        await SignInAsync(name);
        await Page.GotoAsync(link);
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Join") }).ClickAsync();
        await _screen.MustArriveAsync(_coop);
        await Page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("Shared units") }).ClickAsync();
        await Page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("Where Water Goes") }).ClickAsync();
        await _screen.MustArriveAsync(_there);
        if (name == "Birch")
        {
            await _screen.MustBeSoundInEveryLookAsync();
            await Page.GetByRole(AriaRole.Checkbox, new() { Name = "Art", Exact = true }).UncheckAsync();
        }

        await Page.GetByRole(AriaRole.Button, new() { Name = "Take it up" }).ClickAsync();
        await Expect(Page).ToHaveURLAsync(new Regex("/units/[0-9a-f-]{36}$"));
        _units[name] = Guid.Parse(new Uri(Page.Url).Segments[^1]);
    }

    private async Task ChangeAsync(string name, string code, (string Field, string Value) to)
    {
        await SignInAsync(name);
        var activity = (await UnitAsync(name)).Activities.Single(a => a.Code == code);
        await Page.GotoAsync($"/units/{_units[name]}/activities/{activity.Id}/edit");
        await Page.Locator($"[name='Input.{to.Field}']").FillAsync(to.Value);
        await SaveAsync(activity);
    }

    private async Task SaveAsync(Activity activity)
    {
        var here = new Uri(Page.Url).PathAndQuery;
        await Page.Locator("form:has([name='Input.Does'])").GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await _screen.MustLeaveAsync(here);
        Assert.DoesNotContain($"{activity.Id}/edit", Page.Url, StringComparison.Ordinal);
    }

    private async Task BringInAsync(string name, int asked, string? choice = null, string? words = null)
    {
        await SignInAsync(name);
        await Page.GotoAsync($"/units/{_units[name]}");
        await Page.GetByRole(AriaRole.Link, new() { Name = "See what is new" }).ClickAsync();
        await _screen.MustArriveAsync($"/units/{_units[name]}/newer");
        await Expect(Page.Locator(".collided")).ToHaveCountAsync(asked);
        if (asked > 0)
            await _screen.MustBeSoundAsync();
        if (words is not null)
        {
            await Page.Locator("summary", new() { HasText = "My own words" }).ClickAsync();
            await Page.Locator("#own-0").FillAsync(words);
        }

        if (choice is not null)
            await Page.GetByRole(AriaRole.Radio, new() { Name = choice, Exact = true }).CheckAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Bring it in" }).ClickAsync();
        await _screen.MustLeaveAsync($"/units/{_units[name]}/newer");
        await Expect(Page.Locator("#said")).ToContainTextAsync(choice is null && asked > 0 ? "1 thing is left for later" : "Nothing is left to decide");
    }

    private async Task MustHaveAsync(string name, params (string Code, int Minutes)[] expected)
    {
        var unit = await UnitAsync(name);
        Assert.Equal(expected, expected.Select(e => (e.Code, unit.Activities.Single(a => a.Code == e.Code).HandsOnMinutes)));
    }

    private async Task LeftOutIsArtAsync()
    {
        var left = (await UnitAsync("Birch")).LeftOut;
        Assert.Equal(["Art"], await _families["Birch"].FromDbAsync(db => db.Subjects.Where(s => left.Contains(s.Id)).Select(s => s.Name).ToListAsync()));
    }

    private Task<Unit> UnitAsync(string name) =>
        _families[name].FromDbAsync(db => db.Units.Include(u => u.Subjects).Include(u => u.Activities).SingleAsync(u => u.Id == _units[name]));

    private async Task SignInAsync(string name)
    {
        await _screen.LeaveAsync();
        await _screen.SignInAsync(_families[name].Iris, Household.Password);
    }
}
