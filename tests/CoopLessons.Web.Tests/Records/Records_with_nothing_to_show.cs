using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class Records_with_nothing_to_show(TestServer server)
{
    [Fact]
    public async Task Ask_for_a_learner_first() => await HoldsOneButtonAsync(await KeptLog.OfAsync(server), "/family/learners/new");

    [Fact]
    public async Task Ask_for_a_school_year_next()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.Family.WithDbAsync(db => db.SchoolYears.ExecuteDeleteAsync());
        await HoldsOneButtonAsync(log, "/family/years/new");
    }

    [Fact]
    public async Task Ask_for_a_first_entry_last() => await HoldsOneButtonAsync(await KeptLog.OfAsync(server, "Linnet"), "/log/new");

    [Fact]
    public async Task Have_no_entries_page_without_a_learner() =>
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await (await KeptLog.OfAsync(server)).Guardian.OpenAsync("/records/entries")).StatusCode);

    private static async Task HoldsOneButtonAsync(KeptLog log, string address)
    {
        var page = await log.Guardian.GetAsync("/records");
        Assert.Equal([address], page.QuerySelectorAll("main .button").Select(b => b.GetAttribute("href")));
        Assert.Null(page.QuerySelector("svg[role=img]"));
    }
}
