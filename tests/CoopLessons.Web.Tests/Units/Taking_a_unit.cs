using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Taking_a_unit(TestServer server)
{
    private const string Form = "[name='Take.Monday']";

    [Fact]
    public async Task Suggests_next_Monday()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync($"/units/{await family.TakeInAsync()}");

        Assert.Equal("2026-03-16", page.QuerySelector(Form)!.GetAttribute("value"));
    }

    [Fact]
    public async Task Begins_on_the_Monday_that_was_named()
    {
        var family = await server.FamilyAsync();
        var id = await family.TakeInAsync();
        var next = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{id}"), new() { ["Take.Monday"] = "2026-04-06" }, Form).RedirectedAsync();

        Assert.Equal(new DateOnly(2026, 4, 6), (await family.UnitAsync(id)).StartsOn);
        Assert.Equal("Week 1 begins on Monday 6 April.", (await family.Guardian.GetAsync(next)).Text("#said"));
    }

    [Theory]
    [InlineData("2026-04-09", "2026-04-06")]
    [InlineData("2026-04-12", "2026-04-06")]
    [InlineData("2026-04-13", "2026-04-13")]
    [InlineData("2026-01-01", "2025-12-29")]
    public async Task Moves_another_day_to_its_Monday_and_says_so(string day, string monday)
    {
        var family = await server.FamilyAsync();
        var id = await family.TakeInAsync();
        var next = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{id}"), new() { ["Take.Monday"] = day }, Form).RedirectedAsync();
        var said = (await family.Guardian.GetAsync(next)).Text("#said");

        Assert.Equal(monday, (await family.UnitAsync(id)).StartsOn!.Value.ToString("O"));
        Assert.Equal(day != monday, said.Contains("a unit’s weeks begin on Mondays", StringComparison.Ordinal) || said.Contains("a unit's weeks begin on Mondays", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData("soon")]
    [InlineData("2026-02-30")]
    [InlineData("1899-12-31")]
    [InlineData("2201-01-01")]
    [InlineData("9999-12-31")]
    [InlineData("=1+1")]
    public async Task Asks_again_for_a_date_that_does_not_do(string day)
    {
        var family = await server.FamilyAsync();
        var id = await family.TakeInAsync();
        var page = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{id}"), new() { ["Take.Monday"] = day }, Form).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.NotEqual("", page.Fault("Take.Monday"));
        Assert.Equal(day, page.QuerySelector(Form)!.GetAttribute("value") ?? "");
        Assert.Null((await family.UnitAsync(id)).StartsOn);
    }

    [Fact]
    public async Task Is_refused_where_somebody_took_it_first()
    {
        var family = await server.FamilyAsync();
        var id = await family.TakeInAsync();
        var old = await family.Guardian.GetAsync($"/units/{id}");
        await family.Guardian.SubmitAsync(old, new() { ["Take.Monday"] = "2026-04-06" }, Form).RedirectedAsync();
        var page = await family.Guardian.SubmitAsync(old, new() { ["Take.Monday"] = "2026-05-04" }, Form).AnsweredAsync(HttpStatusCode.Conflict);

        Assert.Contains("Somebody changed this", page.Text(".validation-summary-errors"), StringComparison.Ordinal);
        Assert.Equal("2026-05-04", page.QuerySelector(Form)!.GetAttribute("value"));
        Assert.Equal(new DateOnly(2026, 4, 6), (await family.UnitAsync(id)).StartsOn);
        // Having been told, the parent may save over it.
        await family.Guardian.SubmitAsync(page, within: Form).RedirectedAsync();
        Assert.Equal(new DateOnly(2026, 5, 4), (await family.UnitAsync(id)).StartsOn);
    }

    [Fact]
    public async Task Is_taken_back_to_the_shelf()
    {
        var family = await server.FamilyAsync();
        var id = await family.TakeInAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{id}"), within: Form).RedirectedAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{id}"), within: "form[action*='Shelve']").RedirectedAsync();

        Assert.False((await family.UnitAsync(id)).IsTaken);
    }

    [Fact]
    public async Task Gives_each_week_its_date()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{songs.Id}"), within: Form).RedirectedAsync();
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");

        Assert.Equal("Week 2, from Monday 23 March", page.Text("#week-2-head"));
        Assert.Contains("the last week ends on Sunday 29 March", page.Text("[aria-labelledby=take]"), StringComparison.Ordinal);
    }
}
