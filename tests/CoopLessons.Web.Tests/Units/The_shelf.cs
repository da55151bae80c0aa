using System.Net;
using CoopLessons.Data.Scenario;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class The_shelf(TestServer server)
{
    [Fact]
    public async Task Says_when_it_is_empty_what_goes_there()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/units");

        Assert.Equal("No units yet", page.Text(".empty h2"));
        Assert.Equal("/units/new", page.QuerySelector(".empty a")!.GetAttribute("href"));
        Assert.NotNull(page.QuerySelector("a[href='/units/take-in']"));
    }

    [Fact]
    public async Task Offers_the_units_that_come_with_the_program()
    {
        var family = await server.FamilyAsync();
        var offered = (await family.Guardian.GetAsync("/units")).Text("[aria-labelledby=offered]");

        foreach (var bundle in ScenarioFiles.Units.Values)
        {
            Assert.Contains(bundle.Title, offered, StringComparison.Ordinal);
            Assert.Contains($"{bundle.Weeks} weeks · {bundle.Activities.Count} activities", offered, StringComparison.Ordinal);
            Assert.Contains(bundle.Summary.Squeezed(), offered, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Takes_an_offered_unit_once_however_often_the_button_is_sent()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/units");
        const string form = "[value=the-night-sky]";
        var first = await family.Guardian.SubmitAsync(page, within: form).RedirectedAsync();
        var second = await family.Guardian.SubmitAsync(page, within: form).RedirectedAsync();

        Assert.Equal(first, second);
        Assert.Equal(1, await family.UnitsAsync());
        Assert.Equal("The Night Sky", (await family.Guardian.GetAsync(first)).Text("h1"));
        Assert.Contains("The Night Sky", (await family.Guardian.GetAsync("/units")).Text("[aria-labelledby=shelf]"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_a_unit_once_when_the_button_is_sent_six_times_in_one_moment()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/units");
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => family.Guardian.SubmitAsync(page, within: "[value=the-night-sky]").RedirectedAsync()));

        Assert.Single(answers.Distinct());
        Assert.Equal(1, await family.UnitsAsync());
    }

    [Theory]
    [InlineData("no-such-unit")]
    [InlineData("../secrets")]
    [InlineData("")]
    public async Task Knows_no_other_units(string name)
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/units");
        await family.Guardian.SubmitAsync(page, new() { ["name"] = name }, "[value=the-night-sky]").AnsweredAsync(HttpStatusCode.NotFound);

        Assert.Equal(0, await family.UnitsAsync());
    }

    [Theory]
    [InlineData("2026-03-02", "week 2 of 4")]
    [InlineData("2026-03-09", "week 1 of 4")]
    [InlineData("2026-02-16", "week 4 of 4")]
    [InlineData("2026-02-09", "ended on Sunday 8 March")]
    [InlineData("2026-03-16", "starts on Monday 16 March")]
    [InlineData("2027-01-04", "starts on Monday 4 January 2027")]
    public async Task Shows_taken_units_first_with_their_running_week(string monday, string words)
    {
        var family = await server.FamilyAsync();
        await family.MillSongsAsync();
        var id = await family.TakeInAsync();
        await family.WithDbAsync(async db =>
        {
            (await db.Units.FindAsync(family.Id, id))!.Take(DateOnly.Parse(monday, System.Globalization.CultureInfo.InvariantCulture));
            await db.SaveChangesAsync();
        });
        var page = await family.Guardian.GetAsync("/units");

        Assert.Contains(words, page.Text("[aria-labelledby=taken]"), StringComparison.Ordinal);
        Assert.Equal(["Taken", "On the shelf", "Units that come with the program", "A unit of your own, or from somebody else"], page.QuerySelectorAll("main h2").Select(h => h.TextContent));
    }

    [Fact]
    public async Task Is_closed_to_helpers()
    {
        var family = await server.FamilyAsync();
        var helper = await server.HelperAsync(family);

        foreach (var path in new[] { "/units", "/units/new", "/units/take-in", "/units/schema.json", $"/units/{await family.TakeInAsync()}" })
        {
            using var answer = await helper.OpenAsync(path);
            Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        }
    }
}
