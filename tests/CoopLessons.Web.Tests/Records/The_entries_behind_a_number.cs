using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Records;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class The_entries_behind_a_number(TestServer server)
{
    [Fact]
    public async Task Tell_who_when_where_and_what_was_noted()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren");
        var id = await log.WriteAsync(
            new(2026, 3, 2), 50, [("science", 4), ("home-arts", 1)], "Weighed flour", 9 * 60 + 5, Place.AnotherHome, "Twice as heavy when wet.",
            new DateTime(2026, 3, 5, 2, 0, 0, DateTimeKind.Utc), ["Linnet", "Wren"]);
        var page = await log.Guardian.GetAsync(log.EntriesPath($"&subject={log.Subjects["science"]}"));
        var line = page.QuerySelector("#entries li")!;

        Assert.Equal("0:40", page.QuerySelector("#sum")!.TextContent);
        Assert.Equal($"/log/{id}", line.QuerySelector("a")!.GetAttribute("href"));
        Assert.Equal("2 March 2026, 9:05 · Linnet, Wren · at another home", line.QuerySelector("p.quiet")!.TextContent);
        Assert.Contains("Twice as heavy when wet.", line.TextContent, StringComparison.Ordinal);
        // Two in the morning in Greenwich is still the evening of the fourth at the family's home.
        Assert.Contains("written on 4 March 2026 by Iris", line.TextContent, StringComparison.Ordinal);
        Assert.Equal(["0:40", "of 0:50"], line.QuerySelectorAll(".row-side > *").Select(e => e.TextContent));
    }

    [Fact]
    public async Task Do_not_say_when_they_were_written_where_that_was_the_same_day()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2026, 3, 2), 50, [("science", 1)], writtenAt: new DateTime(2026, 3, 3, 3, 0, 0, DateTimeKind.Utc));
        var page = await log.Guardian.GetAsync(log.EntriesPath());
        Assert.DoesNotContain("written on", page.QuerySelector("#entries")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stand_apart_without_minutes_where_the_subject_was_met_in_passing()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2026, 3, 2), 50, [("science", 1)], "With minutes");
        await log.WriteAsync(new(2026, 3, 3), 30, [("music", 1), ("science", 0)], "In passing", place: Place.Coop);
        var page = await log.Guardian.GetAsync(log.EntriesPath($"&subject={log.Subjects["science"]}"));

        Assert.Equal("0:50", page.QuerySelector("#sum")!.TextContent);
        Assert.Equal(["With minutes"], page.QuerySelectorAll("#entries a bdi").Select(a => a.TextContent));
        Assert.Equal(["In passing"], page.QuerySelectorAll("#touched-entries a bdi").Select(a => a.TextContent));
        Assert.Empty(page.QuerySelectorAll("#touched-entries .row-side b"));
        var home = await log.Guardian.GetAsync(log.EntriesPath($"&subject={log.Subjects["science"]}&place=home"));
        Assert.Null(home.QuerySelector("#touched-entries"));
    }

    [Fact]
    public async Task Are_narrowed_by_place_month_and_date()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2026, 2, 2), 10, [("science", 1)]);
        await log.WriteAsync(new(2026, 3, 2), 20, [("science", 1)], place: Place.AnotherHome);
        await log.WriteAsync(new(2026, 3, 3), 40, [("music", 1)], place: Place.AnotherHome);

        Assert.Equal("1:10", await SumAsync(log, ""));
        Assert.Equal("1:00", await SumAsync(log, "&place=another-home"));
        Assert.Equal("1:00", await SumAsync(log, "&month=2026-03"));
        Assert.Equal("0:40", await SumAsync(log, "&date=2026-03-03"));
        Assert.Equal("0:20", await SumAsync(log, $"&month=2026-03&place=another-home&subject={log.Subjects["science"]}"));
        Assert.Equal("0:00", await SumAsync(log, "&place=elsewhere"));
    }

    [Fact]
    public async Task Are_shown_a_month_at_a_time_when_they_are_many()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await WriteManyAsync(log, new(2026, 1, 1), EntriesModel.LongestList);
        var all = await log.Guardian.GetAsync(log.EntriesPath());
        Assert.Equal(EntriesModel.LongestList, all.QuerySelectorAll("#entries li").Length);
        Assert.Null(all.QuerySelector("nav[aria-label=Months]"));

        await log.WriteAsync(new(2026, 3, 2), 30, [("science", 1)], "One more");
        var march = await log.Guardian.GetAsync(log.EntriesPath());
        var sum = KeptLog.MinutesOf(march.QuerySelector("#sum")!.TextContent);
        Assert.Equal(EntriesModel.LongestList * 2 + 30, sum);

        var shown = 0;
        var months = new List<string>();
        for (var page = march; ;)
        {
            months.Add(page.QuerySelector("nav[aria-label=Months] b")!.TextContent);
            shown += page.QuerySelectorAll("#entries .row-side b").Sum(b => KeptLog.MinutesOf(b.TextContent));
            Assert.Equal(sum, KeptLog.MinutesOf(page.QuerySelector("#sum")!.TextContent));
            if (page.QuerySelector("nav[aria-label=Months] > a:first-child") is not { } before)
                break;
            page = await log.Guardian.GetAsync(before.GetAttribute("href")!);
        }

        Assert.Equal(["March 2026", "February 2026", "January 2026"], months);
        Assert.Equal(sum, shown);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await log.Guardian.OpenAsync(log.EntriesPath("&show=2025-08"))).StatusCode);
    }

    private static async Task<string> SumAsync(KeptLog log, string more)
    {
        var page = await log.Guardian.GetAsync(log.EntriesPath(more));
        return page.QuerySelector("#sum")!.TextContent;
    }

    // Two minutes each, four a day.
    private static Task WriteManyAsync(KeptLog log, DateOnly first, int count) => log.Family.WithDbAsync(async db =>
    {
        db.LogEntries.AddRange(Enumerable.Range(0, count).Select(i => LogEntry.Write(
            Guid.CreateVersion7(),
            new EntryFacts(first.AddDays(i / 4), null, $"Piece {i}", Place.Home, "", [new LearnerTime(log.Linnet, new Minutes(2))], [new SubjectWeight(log.Subjects["science"], 1)], []),
            new Author(log.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime)));
        await db.SaveChangesAsync();
    });
}
