using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class What_happened_to_a_child(TestServer server)
{
    [Fact]
    public async Task Is_told_once_however_often_it_is_sent_and_taken_back()
    {
        var (family, path) = await FamilyAsync();
        var page = await family.Guardian.GetAsync(path);
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Input.What"] = "FormReceived", ["Input.On"] = "2025-09-02" }, "#tell")));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        var told = Assert.Single(await EventsAsync(family));
        Assert.Equal((LegalEvent.FormReceived, new DateOnly(2025, 9, 2)), (told.Event, told.On));
        page = await family.Guardian.GetAsync(path);
        Assert.Contains("the office’s form came", page.Body!.TextContent, StringComparison.Ordinal);
        await family.Guardian.SubmitAsync(page, within: "input[name=eventId]");
        Assert.Empty(await EventsAsync(family));
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.SubmitAsync(page, within: "input[name=eventId]")).StatusCode);
    }

    [Theory]
    [InlineData("Input.What", "")]
    [InlineData("Input.What", "Snow")]
    [InlineData("Input.What", "99")]
    [InlineData("Input.What", "YearStart")]
    [InlineData("Input.On", "")]
    [InlineData("Input.On", "1989-12-31")]
    [InlineData("Input.On", "<script>")]
    public async Task Is_refused_where_it_cannot_be(string field, string value)
    {
        var (family, path) = await FamilyAsync();
        var fill = new Dictionary<string, string?> { ["Input.What"] = "Withdrawal", ["Input.On"] = "2025-09-02" };
        fill[field] = value;
        await (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), fill, "#tell")).IsRefusedAsync();
        Assert.Empty(await EventsAsync(family));
    }

    [Fact]
    public async Task Is_not_written_down_twice_for_one_day()
    {
        var (family, path) = await FamilyAsync();
        for (var i = 0; i < 2; i++)
        {
            var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { ["Input.What"] = "Move", ["Input.On"] = "2025-09-02" }, "#tell");
            Assert.Equal(i == 0 ? HttpStatusCode.Redirect : HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        }

        Assert.Single(await EventsAsync(family));
    }

    [Fact]
    public async Task To_a_brother_is_not_taken_back_from_here()
    {
        var (family, path) = await FamilyAsync();
        var brother = await family.LearnerAsync("Rook");
        var told = new RecordedLegalEvent(Guid.CreateVersion7(), brother, LegalEvent.End, new DateOnly(2026, 1, 5));
        await family.WithDbAsync(async db =>
        {
            db.Add(told);
            await db.SaveChangesAsync();
        });
        var token = await family.Guardian.TokenAsync(path);
        var answer = await family.Guardian.PostAsync(path + "?handler=Remove", [new("eventId", told.Id.ToString()), new("__RequestVerificationToken", token)]);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Single(await EventsAsync(family));
    }

    private async Task<(TestFamily Family, string Path)> FamilyAsync()
    {
        var family = await server.FamilyAsync();
        return (family, $"/family/law/{await family.LearnerAsync()}/events");
    }

    private static Task<List<RecordedLegalEvent>> EventsAsync(TestFamily family) => family.FromDbAsync(db => db.LegalEvents.AsNoTracking().ToListAsync());
}
