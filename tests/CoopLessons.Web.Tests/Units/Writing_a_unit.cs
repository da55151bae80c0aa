using System.Net;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Writing_a_unit(TestServer server)
{
    private static Dictionary<string, string?> Written(string title = "Mill and water", string summary = "Wheels, ponds and flour.", string weeks = "3") =>
        new() { ["Input.Title"] = title, ["Input.Summary"] = summary, ["Input.Weeks"] = weeks };

    [Fact]
    public async Task Puts_it_on_the_shelf_once_however_often_it_is_sent()
    {
        var family = await server.FamilyAsync();
        var form = await family.Guardian.GetAsync("/units/new");
        var first = await family.Guardian.SubmitAsync(form, Written()).RedirectedAsync();
        var second = await family.Guardian.SubmitAsync(form, Written("Something else")).RedirectedAsync();
        var page = await family.Guardian.GetAsync(first);

        Assert.Equal(first, second);
        Assert.Equal("Mill and water", page.Text("h1"));
        Assert.Contains("No activities yet", page.Text(".empty"), StringComparison.Ordinal);
        Assert.Equal(1, await family.UnitsAsync());
    }

    [Theory]
    [InlineData("", "About it.", "4", "Input.Title")]
    [InlineData("   ", "About it.", "4", "Input.Title")]
    [InlineData("\u0007\u001B", "About it.", "4", "Input.Title")]
    [InlineData("A title", "", "4", "Input.Summary")]
    [InlineData("A title", "About it.", "", "Input.Weeks")]
    [InlineData("A title", "About it.", "0", "Input.Weeks")]
    [InlineData("A title", "About it.", "13", "Input.Weeks")]
    [InlineData("A title", "About it.", "-1", "Input.Weeks")]
    [InlineData("A title", "About it.", "2.5", "Input.Weeks")]
    [InlineData("A title", "About it.", "99999999999", "Input.Weeks")]
    [InlineData("A title", "About it.", "four", "Input.Weeks")]
    public async Task Asks_again_beside_the_field_and_keeps_what_was_typed(string title, string summary, string weeks, string field)
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/units/new"), Written(title, summary, weeks)).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.NotEqual("", page.Fault(field));
        Assert.Equal(weeks, page.QuerySelector("[name='Input.Weeks']")!.GetAttribute("value") ?? "");
        Assert.Equal(summary, page.QuerySelector("[name='Input.Summary']")!.TextContent.Trim());
        Assert.Equal(0, await family.UnitsAsync());
    }

    [Theory]
    [InlineData(121, 10, "Input.Title")]
    [InlineData(10_000, 10, "Input.Title")]
    [InlineData(10, 2001, "Input.Summary")]
    [InlineData(10, 10_000, "Input.Summary")]
    public async Task Refuses_what_is_too_long_and_keeps_it(int title, int summary, string field)
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/units/new"), Written(new('a', title), new('b', summary))).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.Contains("at most", page.Fault(field), StringComparison.Ordinal);
        Assert.Equal(new string('a', title), page.QuerySelector("[name='Input.Title']")!.GetAttribute("value"));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\u202Eright to left\u202C")]
    [InlineData("🌾 loaf 🍞")]
    [InlineData("'; DROP TABLE \"Units\"; --")]
    [InlineData("{{7*7}} %252e ${x}")]
    public async Task Keeps_hostile_text_as_text(string text)
    {
        var family = await server.FamilyAsync();
        var next = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/units/new"), Written(text, text)).RedirectedAsync();
        var page = await family.Guardian.GetAsync(next);

        Assert.Equal(text, page.QuerySelector("h1")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("main script"));
    }

    [Fact]
    public async Task Turns_a_NUL_away_before_the_form_is_read()
    {
        var family = await server.FamilyAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/units/new"), Written("a\0b")).AnsweredAsync(HttpStatusCode.BadRequest);

        Assert.Equal(0, await family.UnitsAsync());
    }

    [Fact]
    public async Task Changes_it_and_refuses_a_stale_form()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var old = await family.Guardian.GetAsync($"/units/{songs.Id}/edit");
        await family.Guardian.SubmitAsync(old, Written("First")).RedirectedAsync();
        var page = await family.Guardian.SubmitAsync(old, Written("Second", weeks: "5")).AnsweredAsync(HttpStatusCode.Conflict);

        Assert.Equal("Second", page.QuerySelector("[name='Input.Title']")!.GetAttribute("value"));
        Assert.Contains("Somebody changed this", page.Text(".validation-summary-errors"), StringComparison.Ordinal);
        var unit = await family.UnitAsync(songs.Id);
        Assert.Equal(("First", 3), (unit.Title, unit.Weeks));
        // Having been told, the parent may save over it.
        await family.Guardian.SubmitAsync(page).RedirectedAsync();
        unit = await family.UnitAsync(songs.Id);
        Assert.Equal(("Second", 5), (unit.Title, unit.Weeks));
    }

    [Fact]
    public async Task Keeps_as_many_weeks_as_have_activities()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var page = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{songs.Id}/edit"), Written(weeks: "1")).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.Contains("Week 2 has activities", page.Fault("Input.Weeks"), StringComparison.Ordinal);
        Assert.Equal(2, (await family.UnitAsync(songs.Id)).Weeks);
    }

    [Fact]
    public async Task Removes_it_with_what_is_placed_on_days_and_leaves_the_log_its_text()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var wren = await family.LearnerAsync("Wren", new DateOnly(2018, 5, 1));
        var music = await family.SubjectAsync("music");
        var (done, planned, entry) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        await family.WithDbAsync(async db =>
        {
            var sung = new PlannedSession(done, songs.Song, TestServer.Today, null, 1, [wren]);
            var facts = new EntryFacts(TestServer.Today, null, "Sing the mill song", Place.Home, "", [new LearnerTime(wren, new Minutes(20))], [new SubjectWeight(music, 1)], []);
            db.LogEntries.Add(sung.MarkDone(entry, facts, new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            db.PlannedSessions.AddRange(sung, new PlannedSession(planned, songs.Wheel, TestServer.Today.AddDays(1), null, 1, [wren]));
            await db.SaveChangesAsync();
        });
        var asked = await family.Guardian.GetAsync($"/units/{songs.Id}/remove");
        Assert.Contains("placed on days 2 times", asked.Text(".note.loss"), StringComparison.Ordinal);
        Assert.Contains("1 of it is already done. The log keeps its own text", asked.Text(".note.loss"), StringComparison.Ordinal);
        Assert.Equal(1, await family.UnitsAsync());

        await family.Guardian.SubmitAsync(asked).RedirectedAsync();
        Assert.Equal(0, await family.UnitsAsync());
        Assert.Equal(0, await family.FromDbAsync(db => db.Activities.CountAsync()));
        Assert.Equal(0, await family.FromDbAsync(db => db.PlannedSessions.CountAsync()));
        Assert.Equal("Sing the mill song", await family.FromDbAsync(db => db.LogRevisions.Where(r => r.EntryId == entry).Select(r => r.What).SingleAsync()));
        await family.Guardian.SubmitAsync(asked).AnsweredAsync(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Is_not_removed_by_a_stale_page()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var asked = await family.Guardian.GetAsync($"/units/{songs.Id}/remove");
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{songs.Id}/edit"), Written()).RedirectedAsync();
        await family.Guardian.SubmitAsync(asked).AnsweredAsync(HttpStatusCode.Conflict);

        Assert.Equal(3, (await family.UnitAsync(songs.Id)).Activities.Count);
    }
}
