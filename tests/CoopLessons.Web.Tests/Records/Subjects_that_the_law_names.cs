using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

/// <summary>A learner of grade 4 in New York, where health education is asked (8 NYCRR § 100.10(e)(2)(ii)); health was last met on 2 February.</summary>
[Collection(SharedServer.Name)]
public sealed class Subjects_that_the_law_names(TestServer server)
{
    private static readonly string Health = Catalog.Of50AndDc["US-NY"]!.Pathway("home-instruction")!.Subjects.Single(s => s.Id == "health-1-6").Name;
    private readonly Guid _short = Guid.CreateVersion7();

    [Fact]
    public async Task Are_told_when_nothing_came_for_weeks_with_the_shortest_activity_that_would_meet_them()
    {
        var log = await QuietAsync();
        var line = Line(await log.Guardian.GetAsync(log.StandingPath()));
        Assert.Contains("Nothing since 2 February 2026, and nothing is planned. Shortest left in your units: Wash the hands, 20 min, in From Grain to Loaf.", line.Plain(), StringComparison.Ordinal);
        Assert.Contains("8 NYCRR", line.Plain(), StringComparison.Ordinal);
        var place = line.QuerySelector("p a")!.GetAttribute("href")!;
        Assert.Equal($"/week/place/{_short}", place);
        await log.Guardian.GetAsync(place);

        var records = await log.Guardian.GetAsync(log.RecordsPath());
        var quiet = records.QuerySelectorAll("section[aria-labelledby=standing] li").Single(l => l.Plain().StartsWith("Health education: nothing since 2 February", StringComparison.Ordinal));
        Assert.Equal(place, quiet.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public async Task Are_no_longer_told_once_something_is_planned()
    {
        var log = await QuietAsync();
        await log.AddAsync(new PlannedSession(Guid.CreateVersion7(), _short, TestServer.Today.AddDays(4), null, 0, [log.Linnet]));
        var line = Line(await log.Guardian.GetAsync(log.StandingPath()));
        Assert.DoesNotContain("nothing is planned", line.Plain(), StringComparison.Ordinal);
        Assert.Contains("last on 2 February 2026, 1 day", line.Plain(), StringComparison.Ordinal);
        Assert.Equal("0:30 h, 0:20 h planned", line.QuerySelector(".row-side")!.Plain());
        Assert.DoesNotContain("Health education: nothing", (await log.Guardian.GetAsync(log.RecordsPath())).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_still_told_when_the_plan_is_another_childs()
    {
        var log = await QuietAsync();
        await log.AddAsync(new PlannedSession(Guid.CreateVersion7(), _short, TestServer.Today.AddDays(4), null, 0, [log.Learners["Wren"]]));
        Assert.Contains("nothing is planned", Line(await log.Guardian.GetAsync(log.StandingPath())).Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Offer_no_activity_that_the_child_has_done()
    {
        var log = await QuietAsync();
        await log.Family.WithDbAsync(async db =>
        {
            var session = new PlannedSession(Guid.CreateVersion7(), _short, new DateOnly(2026, 3, 9), null, 0, [log.Linnet]);
            db.Add(session);
            await db.SaveChangesAsync();
            var facts = new EntryFacts(session.Date, null, "Wash the hands", Core.Hours.Place.Home, "", [new(log.Linnet, new(20))], [new(log.Subjects["art"], 1)], []);
            db.Add(session.MarkDone(Guid.CreateVersion7(), facts, new Author(log.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        Assert.Contains("Shortest left in your units: Plan a week of lunches, 40 min", Line(await log.Guardian.GetAsync(log.StandingPath())).Plain(), StringComparison.Ordinal);
    }

    private static IElement Line(IHtmlDocument page) =>
        page.QuerySelectorAll("main section.sheet li").Single(l => string.Equals(l.QuerySelector("b")?.Plain(), Health, StringComparison.OrdinalIgnoreCase));

    private async Task<KeptLog> QuietAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren").StandsAsync("US-NY", "home-instruction");
        await log.GradeAsync(4);
        await log.WriteAsync(new(2026, 2, 2), 30, [("health", 1)]);
        var unit = new Unit(Guid.CreateVersion7(), "From Grain to Loaf", "", 4);
        unit.Take(new DateOnly(2026, 3, 9));
        unit.Add(Activity(log, Guid.CreateVersion7(), "lunches", 1, "Plan a week of lunches", 40, "health"));
        unit.Add(Activity(log, _short, "hands", 2, "Wash the hands", 20, "health"));
        unit.Add(Activity(log, Guid.CreateVersion7(), "song", 3, "A harvest song", 5, "music"));
        await log.AddAsync(unit);
        return log;
    }

    private static Activity Activity(KeptLog log, Guid id, string code, int order, string title, int minutes, string subject) => new(
        id, code, new ActivityFacts(1, order, title, ActivityKind.Making, "Do it.", AdultNeed.Beside, minutes, 0, ""),
        ActivityDetails.Empty with { Subjects = [new ActivitySubject(log.Subjects[subject], 1)] });
}
