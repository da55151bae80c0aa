using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Another_family_s_units(TestServer server)
{
    private static string[] Paths(Guid unit, Guid activity) =>
    [
        $"/units/{unit}", $"/units/{unit}/edit", $"/units/{unit}/remove", $"/units/{unit}/bundle.json", $"/units/{unit}/activities/new",
        $"/units/{unit}/activities/{activity}", $"/units/{unit}/activities/{activity}/edit", $"/units/{unit}/activities/{activity}/remove",
    ];

    private static string[] Posts(Guid unit, Guid activity) =>
    [
        $"/units/{unit}?handler=Take", $"/units/{unit}?handler=Shelve", $"/units/{unit}?handler=Choose", $"/units/{unit}?handler=BringBack",
        $"/units/{unit}?handler=LeaveOut", $"/units/{unit}?handler=PutBack", $"/units/{unit}/edit", $"/units/{unit}/remove",
        $"/units/{unit}/activities/new", $"/units/{unit}/activities/new?handler=Rows",
        $"/units/{unit}/activities/{activity}/edit", $"/units/{unit}/activities/{activity}/edit?handler=Rows", $"/units/{unit}/activities/{activity}/remove",
    ];

    private static async Task<List<KeyValuePair<string, string>>> FieldsAsync(TestFamily family, MillSongs songs, Guid subject) =>
    [
        new("__RequestVerificationToken", await family.Guardian.TokenAsync("/units")),
        new("Take.Monday", "2026-03-16"), new("Take.Version", "0"), new("Version", "0"), new("Input.Version", "0"),
        new("shown", subject.ToString()), new("subject", subject.ToString()), new("activity", songs.Song.ToString()),
        new("Input.Id", Guid.CreateVersion7().ToString()), new("Input.Title", "Taken over"), new("Input.Summary", "By others."), new("Input.Weeks", "12"),
        new("Input.Week", "1"), new("Input.Kind", "Making"), new("Input.Does", "Nothing."), new("Input.AdultNeed", "Alone"), new("Input.HandsOnMinutes", "5"),
        new("more", "Supplies"),
    ];

    [Fact]
    public async Task Are_found_by_no_page()
    {
        var (alder, birch) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var songs = await alder.MillSongsAsync();
        foreach (var path in Paths(songs.Id, songs.Song))
        {
            using var own = await alder.Guardian.OpenAsync(path);
            Assert.True(own.StatusCode == HttpStatusCode.OK, path);
            using var answer = await birch.Guardian.OpenAsync(path);
            Assert.True(answer.StatusCode == HttpStatusCode.NotFound, path);
            Assert.DoesNotContain("mill", await answer.Content.ReadAsStringAsync(), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task Are_changed_by_no_form()
    {
        var (alder, birch) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var songs = await alder.MillSongsAsync();
        var before = await alder.UnitAsync(songs.Id);
        var fields = await FieldsAsync(birch, songs, await alder.SubjectAsync("music"));
        foreach (var path in Posts(songs.Id, songs.Song))
        {
            using var answer = await birch.Guardian.PostAsync(path, fields);
            Assert.True(answer.StatusCode == HttpStatusCode.NotFound, $"{path} {answer.StatusCode}");
        }

        var after = await alder.UnitAsync(songs.Id);
        Assert.Equal((before.Version, before.Title, before.StartsOn, 3, 0), (after.Version, after.Title, after.StartsOn, after.Activities.Count, after.LeftOut.Count));
        Assert.Equal(before.Activities.Select(a => (a.Id, a.Version)).Order(), after.Activities.Select(a => (a.Id, a.Version)).Order());
    }

    [Fact]
    public async Task Lend_no_activity_to_one_s_own_unit()
    {
        var (alder, birch) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var (songs, own) = (await alder.MillSongsAsync(), await birch.MillSongsAsync());
        var fields = await FieldsAsync(birch, songs, await birch.SubjectAsync("music"));
        foreach (var path in Paths(own.Id, songs.Song).Where(p => p.Contains(songs.Song.ToString(), StringComparison.Ordinal)))
        {
            using var answer = await birch.Guardian.OpenAsync(path);
            Assert.True(answer.StatusCode == HttpStatusCode.NotFound, path);
        }

        foreach (var path in Posts(own.Id, songs.Song).Where(p => p.Contains(songs.Song.ToString(), StringComparison.Ordinal) || p.EndsWith("LeaveOut", StringComparison.Ordinal) || p.EndsWith("PutBack", StringComparison.Ordinal)))
        {
            using var answer = await birch.Guardian.PostAsync(path, fields);
            Assert.True(answer.StatusCode == HttpStatusCode.NotFound, path);
        }
    }

    [Theory]
    [InlineData("/units/00000000-0000-0000-0000-000000000000")]
    [InlineData("/units/nonsense")]
    [InlineData("/units/nonsense/edit")]
    [InlineData("/units/1/activities/2")]
    [InlineData("/units/..%2f..%2fsecrets/bundle.json")]
    public async Task Are_not_reached_by_made_up_addresses(string path)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync(path);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Are_hidden_from_strangers()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        foreach (var path in Paths(songs.Id, songs.Song).Append("/units").Append("/units/new").Append("/units/take-in"))
        {
            using var answer = await server.Visitor().OpenAsync(path);
            Assert.True(answer.StatusCode == HttpStatusCode.Redirect, path);
            Assert.StartsWith("/sign-in", answer.Headers.Location!.IsAbsoluteUri ? answer.Headers.Location.PathAndQuery : answer.Headers.Location.OriginalString, StringComparison.Ordinal);
        }
    }
}
