using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Changing_an_activity(TestServer server)
{
    [Fact]
    public async Task Opens_a_written_activity_as_it_is_and_saves_it_unchanged()
    {
        var family = await server.FamilyAsync();
        var id = await family.TakeInAsync();
        var before = await family.UnitAsync(id);
        foreach (var activity in before.Activities.Take(12))
            await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/units/{id}/activities/{activity.Id}/edit")).RedirectedAsync();
        var (own, after) = (await family.Guardian.OpenAsync($"/units/{id}/bundle.json"), await family.UnitAsync(id));

        Assert.Equal(before.Activities.Select(a => a.Code).Order(), after.Activities.Select(a => a.Code).Order());
        Assert.Equal(await Bundles.FreshAsync(server), await own.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Refuses_a_stale_change()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var old = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Wheel}/edit");
        await family.Guardian.SubmitAsync(old, new() { ["Input.Title"] = "First" }).RedirectedAsync();
        var page = await family.Guardian.SubmitAsync(old, new() { ["Input.Title"] = "Second" }).AnsweredAsync(HttpStatusCode.Conflict);

        Assert.Equal("Second", page.QuerySelector("[name='Input.Title']")!.GetAttribute("value"));
        Assert.Contains("Somebody changed this", page.Text(".validation-summary-errors"), StringComparison.Ordinal);
        Assert.Equal("First", (await family.UnitAsync(songs.Id)).Activities.Single(a => a.Id == songs.Wheel).Title);
        // Having been told, the parent may save over it.
        await family.Guardian.SubmitAsync(page).RedirectedAsync();
        Assert.Equal("Second", (await family.UnitAsync(songs.Id)).Activities.Single(a => a.Id == songs.Wheel).Title);
    }

    [Fact]
    public async Task Says_what_comes_first_and_refuses_a_circle()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var picture = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Picture}/edit");
        await family.Guardian.SubmitAsync(picture, new() { ["Input.After"] = "sing" }).RedirectedAsync();
        Assert.Contains("Comes after Sing the mill song", (await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Picture}")).Text("main"), StringComparison.Ordinal);

        var song = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Song}/edit");
        var refused = await family.Guardian.SubmitAsync(song, new() { ["Input.After"] = "picture" }).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Contains("One of these comes after this activity itself.", refused.Text("main"), StringComparison.Ordinal);
        Assert.True(refused.QuerySelector("[name='Input.After'][value='picture']")!.HasAttribute("checked"));
        await family.Guardian.SubmitAsync(song, new() { ["Input.After"] = "grow" }).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Empty((await family.UnitAsync(songs.Id)).Activities.Single(a => a.Id == songs.Song).Details.After);
    }

    [Fact]
    public async Task Is_removed_after_being_asked_once_more()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var asked = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Wheel}/remove");
        Assert.Equal(3, (await family.UnitAsync(songs.Id)).Activities.Count);
        var next = await family.Guardian.SubmitAsync(asked).RedirectedAsync();

        Assert.EndsWith("#week-2", next, StringComparison.Ordinal);
        Assert.DoesNotContain(songs.Wheel, (await family.UnitAsync(songs.Id)).Activities.Select(a => a.Id));
        await family.Guardian.SubmitAsync(asked).AnsweredAsync(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Keeps_what_is_waited_for_while_nothing_is()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var form = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Picture}/edit");
        await family.Guardian.SubmitAsync(form, new() { ["Input.WaitingMinutes"] = "0" }).RedirectedAsync();
        var picture = (await family.UnitAsync(songs.Id)).Activities.Single(a => a.Id == songs.Picture);

        Assert.Equal((0, "the paint dries"), (picture.WaitingMinutes, picture.WaitingFor));
        Assert.Contains("drawing · 30 min · alone", (await family.Guardian.GetAsync($"/units/{songs.Id}")).Text($"#a-{songs.Picture}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Adds_a_new_subject_to_the_unit()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var health = await family.SubjectAsync("health");
        var form = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/{songs.Wheel}/edit");
        await family.Guardian.SubmitAsync(form, new() { [form.SubjectField(health, "Weight")] = "1" }).RedirectedAsync();

        Assert.Contains(health, (await family.UnitAsync(songs.Id)).Subjects.Select(s => s.SubjectId));
        Assert.Equal("Taken: 5 of 5 subjects", (await family.Guardian.GetAsync($"/units/{songs.Id}")).Text("#grid-head"));
    }
}
