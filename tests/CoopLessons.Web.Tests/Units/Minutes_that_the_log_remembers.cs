using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Units;

/// <summary>Wren made three things that were planned for 25 minutes each; they took 30, 35 and 60.</summary>
[Collection(PlanningServer.Name)]
public sealed class Minutes_that_the_log_remembers(TestServer server)
{
    private sealed record Workshop(TestFamily Family, Guid Unit, Guid Mill, Guid Wren)
    {
        public string Page => $"/units/{Unit}/activities/{Mill}";

        public Task<IHtmlDocument> OpenAsync() => Family.Guardian.GetAsync(Page);

        public Task<Activity> MillAsync() => Family.FromDbAsync(db => db.Activities.AsNoTracking().SingleAsync(a => a.Id == Mill));
    }

    private async Task<Workshop> WorkshopAsync(params int[] logged)
    {
        var family = await server.FamilyAsync();
        var shop = new Workshop(family, Guid.CreateVersion7(), Guid.CreateVersion7(), await family.LearnerAsync("Wren", new DateOnly(2019, 5, 2)));
        var art = await family.SubjectAsync("art");
        await family.WithDbAsync(async db =>
        {
            var unit = new Unit(shop.Unit, "Mills", "", 1);
            unit.Add(new Activity(shop.Mill, "mill", new ActivityFacts(1, 1, "Build a mill", ActivityKind.Making, "Build.", AdultNeed.Beside, 25, 0, ""), UnitSamples.Counting((art, 1))));
            var earlier = new Activity(Guid.CreateVersion7(), "boat", new ActivityFacts(1, 2, "Fold a boat", ActivityKind.Making, "Fold.", AdultNeed.Beside, 25, 0, ""), UnitSamples.Counting((art, 1)));
            unit.Add(earlier);
            db.Add(unit);
            foreach (var minutes in logged)
            {
                var session = new PlannedSession(Guid.CreateVersion7(), earlier.Id, TestServer.Today, null, 0, [shop.Wren]);
                db.Add(session);
                db.Add(session.MarkDone(
                    Guid.CreateVersion7(), new EntryFacts(TestServer.Today, null, "Folded", Place.Home, "", [new LearnerTime(shop.Wren, new Minutes(minutes))], [new SubjectWeight(art, 1)], []),
                    new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            }

            await db.SaveChangesAsync();
        });
        return shop;
    }

    [Fact]
    public async Task Are_offered_for_another_activity_of_the_same_kind()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        Assert.Contains("Making takes Wren about 1.4 times as planned (3 times done): 35 min instead of 25.", (await shop.OpenAsync()).Text("#minutes"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_taken_by_one_tap_and_offered_no_more()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        Assert.Equal(shop.Page, await shop.Family.Guardian.SubmitAsync(await shop.OpenAsync(), within: "#minutes").RedirectedAsync());
        Assert.Equal((35, 25), ((await shop.MillAsync()).HandsOnMinutes, (await shop.MillAsync()).WrittenMinutes));

        var page = await shop.OpenAsync();
        Assert.Contains("is planned for 35 min from now on", page.Text("#said"), StringComparison.Ordinal);
        Assert.DoesNotContain("times as planned", page.Text("main"), StringComparison.Ordinal);
        Assert.Contains("Its 35 min come from your log; 25 min were written.", page.Text("#minutes"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_given_back_by_one_tap()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        await shop.Family.Guardian.SubmitAsync(await shop.OpenAsync(), within: "#minutes").RedirectedAsync();
        await shop.Family.Guardian.SubmitAsync(await shop.OpenAsync(), within: "#minutes").RedirectedAsync();
        Assert.Equal((25, 25), ((await shop.MillAsync()).HandsOnMinutes, (await shop.MillAsync()).WrittenMinutes));
    }

    [Fact]
    public async Task Are_forgotten_where_somebody_writes_others()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        await shop.Family.Guardian.SubmitAsync(await shop.OpenAsync(), within: "#minutes").RedirectedAsync();
        var form = await shop.Family.Guardian.GetAsync($"{shop.Page}/edit");
        await shop.Family.Guardian.SubmitAsync(form, new() { ["Input.Title"] = "Build a windmill" }).RedirectedAsync();
        Assert.Equal((35, 25), ((await shop.MillAsync()).HandsOnMinutes, (await shop.MillAsync()).WrittenMinutes));

        form = await shop.Family.Guardian.GetAsync($"{shop.Page}/edit");
        await shop.Family.Guardian.SubmitAsync(form, new() { ["Input.HandsOnMinutes"] = "40" }).RedirectedAsync();
        Assert.Equal((40, 40), ((await shop.MillAsync()).HandsOnMinutes, (await shop.MillAsync()).WrittenMinutes));
    }

    [Fact]
    public async Task Are_not_offered_after_fewer_than_three_times_nor_where_it_took_as_long_as_planned()
    {
        Assert.Null((await (await WorkshopAsync(60, 60)).OpenAsync()).QuerySelector("#minutes"));
        Assert.Null((await (await WorkshopAsync(25, 25, 60)).OpenAsync()).QuerySelector("#minutes"));
    }

    [Fact]
    public async Task Leave_out_an_entry_that_was_removed()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        await shop.Family.WithDbAsync(async db =>
        {
            var id = await db.PlannedSessions.Select(s => s.EntryId!.Value).FirstAsync();
            var (entry, newest) = (await db.EntryAsync(id, default))!.Value;
            entry.Remove(newest, new Author(shop.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime, "");
            await db.SaveChangesAsync();
        });
        Assert.Null((await shop.OpenAsync()).QuerySelector("#minutes"));
    }

    [Fact]
    public async Task Can_be_taken_where_the_activity_is_given_a_day()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        var page = await shop.Family.Guardian.GetAsync($"/week/place/{shop.Mill}");
        Assert.Contains("35 min instead of 25.", page.Text("#minutes"), StringComparison.Ordinal);
        Assert.Equal($"/week/place/{shop.Mill}", await shop.Family.Guardian.SubmitAsync(page, within: "#minutes").RedirectedAsync());
        Assert.Equal(35, (await shop.MillAsync()).HandsOnMinutes);
    }

    [Theory]
    [InlineData("/units/{0}/activities/{1}")]
    [InlineData("/week/place/{1}")]
    public async Task Are_not_taken_where_the_log_offers_others_or_somebody_changed_the_activity_first(string path)
    {
        var shop = await WorkshopAsync(30, 35, 60);
        var page = await shop.Family.Guardian.GetAsync(string.Format(System.Globalization.CultureInfo.InvariantCulture, path, shop.Unit, shop.Mill));
        var other = await shop.Family.Guardian.SubmitAsync(page, new() { ["minutes"] = "240" }, "#minutes").AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Contains("The log says otherwise by now", other.Text("main"), StringComparison.Ordinal);
        var stale = await shop.Family.Guardian.SubmitAsync(page, new() { ["version"] = "77" }, "#minutes").AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Contains("Somebody changed this", stale.Text("main"), StringComparison.Ordinal);
        await shop.Family.Guardian.SubmitAsync(page, new() { ["minutes"] = "many" }, "#minutes").AnsweredAsync(HttpStatusCode.BadRequest);
        Assert.Equal(25, (await shop.MillAsync()).HandsOnMinutes);
    }

    [Fact]
    public async Task Are_taken_once_by_a_second_sending()
    {
        var shop = await WorkshopAsync(30, 35, 60);
        var page = await shop.OpenAsync();
        await shop.Family.Guardian.SubmitAsync(page, within: "#minutes").RedirectedAsync();
        await shop.Family.Guardian.SubmitAsync(page, within: "#minutes").RedirectedAsync();
        Assert.Equal(35, (await shop.MillAsync()).HandsOnMinutes);
    }
}
