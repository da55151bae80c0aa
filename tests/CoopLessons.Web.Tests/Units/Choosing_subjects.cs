using System.Net;
using System.Text.Json;
using CoopLessons.Data.Scenario;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Choosing_subjects(TestServer server)
{
    private static KeyValuePair<string, string> Taken(Guid id) => new("taken", id.ToString());

    private static async Task<(TestFamily Family, MillSongs Songs)> WithoutMusicAsync(TestServer server)
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");
        await family.Guardian.SubmitAsync(page, new() { ["taken"] = null }, "#choose-button",
            more: [Taken(await family.SubjectAsync("art")), Taken(await family.SubjectAsync("science")), Taken(await family.SubjectAsync("history"))]).RedirectedAsync();
        return (family, songs);
    }

    [Fact]
    public async Task Takes_an_activity_of_that_subject_alone_out_of_the_plan()
    {
        var (family, songs) = await WithoutMusicAsync(server);
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");

        Assert.DoesNotContain(songs.Song, (await family.UnitAsync(songs.Id)).InPlan().Select(a => a.Id));
        Assert.Contains("left out", page.Text($"#a-{songs.Song}"), StringComparison.Ordinal);
        Assert.Contains("Left out with Music", page.Text($"#a-{songs.Song}"), StringComparison.Ordinal);
        Assert.Null(page.QuerySelector($"#a-{songs.Song} a[href='/week/place/{songs.Song}']"));
    }

    [Fact]
    public async Task Keeps_a_mixed_activity_with_the_subject_as_a_touch()
    {
        var (family, songs) = await WithoutMusicAsync(server);
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");

        Assert.Contains(songs.Picture, (await family.UnitAsync(songs.Id)).InPlan().Select(a => a.Id));
        Assert.Contains("Art; touches Music, History", page.Text($"#a-{songs.Picture}"), StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"#a-{songs.Picture} a[href='/week/place/{songs.Picture}']"));
    }

    [Fact]
    public async Task Changes_the_figures()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var before = await family.Guardian.GetAsync($"/units/{songs.Id}");
        var after = await family.Guardian.SubmitAsync(before, new() { ["taken"] = null }, "#choose-button", htmx: true,
            more: [Taken(await family.SubjectAsync("art"))]).AnsweredAsync(HttpStatusCode.OK);

        Assert.Equal("Taken: 4 of 4 subjects", before.Text("#grid-head"));
        Assert.Equal("hands-on, about 50 min 40 min", before.Text(".grid-unit tfoot"));
        Assert.Equal("Taken: 1 of 4 subjects", after.Text("#grid-head"));
        Assert.Equal("hands-on, about 30 min 0 min", after.Text(".grid-unit tfoot"));
        Assert.Null(after.QuerySelector("h1"));
        Assert.StartsWith("Taken: 1 of 4 subjects, 1 activity;", after.QuerySelector("#plan")!.GetAttribute("data-announce"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_taken_back_subject_by_subject()
    {
        var (family, songs) = await WithoutMusicAsync(server);
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");
        var music = await family.SubjectAsync("music");
        await family.Guardian.SubmitAsync(page, within: $"[name=subject][value='{music}']").RedirectedAsync();

        Assert.Empty((await family.UnitAsync(songs.Id)).LeftOut);
        Assert.Equal(3, (await family.UnitAsync(songs.Id)).InPlan().Count());
    }

    [Fact]
    public async Task Leaves_alone_what_the_form_did_not_show()
    {
        var (family, songs) = await WithoutMusicAsync(server);
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");
        await family.Guardian.SubmitAsync(page, new() { ["taken"] = null, ["shown"] = (await family.SubjectAsync("art")).ToString() }, "#choose-button").RedirectedAsync();
        var leftOut = (await family.UnitAsync(songs.Id)).LeftOut;

        Assert.Equal(2, leftOut.Count);
        Assert.Contains(await family.SubjectAsync("art"), leftOut);
        Assert.Contains(await family.SubjectAsync("music"), leftOut);
    }

    [Fact]
    public async Task Knows_only_the_unit_s_own_subjects()
    {
        var family = await server.FamilyAsync();
        var other = await server.FamilyAsync("Birch");
        var songs = await family.MillSongsAsync();
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");
        foreach (var id in new[] { await other.SubjectAsync("art"), await family.SubjectAsync("geography"), Guid.CreateVersion7() })
        {
            await family.Guardian.SubmitAsync(page, within: "#choose-button", more: [Taken(id)]).AnsweredAsync(HttpStatusCode.NotFound);
            await family.Guardian.SubmitAsync(page, new() { ["shown"] = id.ToString() }, "#choose-button").AnsweredAsync(HttpStatusCode.NotFound);
        }

        Assert.Empty((await family.UnitAsync(songs.Id)).LeftOut);
    }

    [Fact]
    public async Task Leaves_out_one_activity_and_puts_it_back()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var path = $"/units/{songs.Id}";
        var next = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), within: $"#choose-{songs.Wheel}").RedirectedAsync();
        Assert.EndsWith($"#a-{songs.Wheel}", next, StringComparison.Ordinal);
        Assert.DoesNotContain(songs.Wheel, (await family.UnitAsync(songs.Id)).InPlan().Select(a => a.Id));

        var page = await family.Guardian.GetAsync(path);
        Assert.Contains("left out", page.Text($"#a-{songs.Wheel}"), StringComparison.Ordinal);
        var back = await family.Guardian.SubmitAsync(page, within: $"#choose-{songs.Wheel}", htmx: true).AnsweredAsync(HttpStatusCode.OK);
        Assert.Contains("Leave out", back.Text($"#choose-{songs.Wheel}"), StringComparison.Ordinal);
        Assert.Contains(songs.Wheel, (await family.UnitAsync(songs.Id)).InPlan().Select(a => a.Id));
    }

    [Fact]
    public async Task Adds_up_the_hands_on_minutes_that_the_file_itself_gives()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync($"/units/{await family.TakeInAsync()}");
        using var file = JsonDocument.Parse(ScenarioFiles.Bytes($"scenario/units/{UnitSamples.Loaf}.json"));
        var activities = file.RootElement.GetProperty("activities").EnumerateArray().ToList();

        for (var week = 1; week <= 4; week++)
        {
            var minutes = activities.Where(a => a.GetProperty("week").GetInt32() == week).Sum(a => a.GetProperty("handsOnMinutes").GetInt32());
            Assert.Contains($"About {minutes / 60} h{(minutes % 60 == 0 ? "" : $" {minutes % 60:00}")} hands-on", page.Text($"#week-{week} > .quiet"), StringComparison.Ordinal);
            var science = activities.Count(a => a.GetProperty("week").GetInt32() == week && a.GetProperty("subjects").EnumerateArray().Any(s => s.GetProperty("code").GetString() == "science"));
            var row = page.QuerySelectorAll(".grid-unit tbody tr").Single(r => r.QuerySelector("th")!.TextContent == "Science");
            Assert.Equal(science == 0 ? "–" : $"{science}", row.QuerySelectorAll("td")[week - 1].TextContent);
        }
    }

    [Fact]
    public async Task Joins_the_supplies_of_a_week_by_name_and_measure()
    {
        var family = await server.FamilyAsync();
        foreach (var name in new[] { "Wren", "Linnet", "Heron" })
            await family.LearnerAsync(name, new DateOnly(2016, 1, 1));
        var songs = await family.MillSongsAsync();
        await family.WithDbAsync(async db =>
        {
            var wheel = (await db.Activities.FindAsync(family.Id, songs.Wheel))!;
            wheel.Describe(new(1, 3, wheel.Title, wheel.Kind, wheel.Does, wheel.AdultNeed, 40, 0, ""), wheel.Details);
            await db.SaveChangesAsync();
        });
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");
        var supplies = page.QuerySelectorAll("#week-1 details li").Select(l => l.Text("span"));

        // Two sheets for each of three, one for every two of three: six and two.
        Assert.Equal(["Drawing paper (for 2 activities) 8 sheet", "Poster paint 100 ml"], supplies);
        Assert.Contains("for 3 learners", page.Text("#week-1 details"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_how_long_each_takes_and_what_is_waited_for()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");

        Assert.Contains("drawing · 30 min, then 45 min while the paint dries · alone", page.Text($"#a-{songs.Picture}"), StringComparison.Ordinal);
        Assert.Contains("experiment · 40 min · an adult's hands on", page.Text($"#a-{songs.Wheel}").Replace('’', '\''), StringComparison.Ordinal);
    }
}
