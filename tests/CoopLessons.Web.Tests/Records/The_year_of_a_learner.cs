using System.Globalization;
using AngleSharp.Dom;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class The_year_of_a_learner(TestServer server)
{
    [Fact]
    public async Task Says_the_facts_first()
    {
        var log = await MixedLogAsync();
        var page = await log.Guardian.GetAsync(log.RecordsPath());

        Assert.Equal("Linnet, 2025–26", page.QuerySelector("h1")!.TextContent);
        var facts = page.QuerySelector("dl.facts")!;
        Assert.Equal("4:32", page.QuerySelector("#hours")!.TextContent);
        Assert.Contains("as a decimal 4.53", facts.TextContent, StringComparison.Ordinal);
        // 2 March holds 57 minutes, 5 March 15: only a broad reading counts them.
        Assert.Equal("3", page.QuerySelector("#days")!.TextContent);
        Assert.Equal("5", page.QuerySelector("#days-broad")!.TextContent);
        Assert.Contains("1:00 hours", facts.TextContent, StringComparison.Ordinal);
        Assert.Contains(Family.UsualPolicy, facts.TextContent, StringComparison.Ordinal);
        Assert.Contains("6 entries, fingerprint", facts.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_days_that_differ_is_not_read_broadly()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new DateOnly(2026, 3, 2), 60, [("science", 1)]);
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Equal("1", page.QuerySelector("#days")!.TextContent);
        Assert.Null(page.QuerySelector("#days-broad"));
    }

    [Fact]
    public async Task Has_numbers_that_each_open_entries_adding_up_to_them()
    {
        var log = await MixedLogAsync();
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        var numbers = page.QuerySelectorAll("#hours-table td a, #by-month tbody td:nth-child(2) a, #places-table td a").ToList();

        Assert.True(numbers.Count > 20, $"{numbers.Count} numbers");
        foreach (var number in numbers)
        {
            var entries = await log.Guardian.GetAsync(number.GetAttribute("href")!);
            var said = Clock(number);
            Assert.Equal(said, entries.QuerySelector("#sum")!.TextContent);
            Assert.Equal(KeptLog.MinutesOf(said), entries.QuerySelectorAll("#entries .row-side b").Sum(b => KeptLog.MinutesOf(b.TextContent)));
        }
    }

    [Fact]
    public async Task Has_rows_and_columns_that_add_up()
    {
        var log = await MixedLogAsync();
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        var rows = page.QuerySelectorAll("#hours-table tbody tr, #hours-table tfoot tr").Select(r => r.QuerySelectorAll("td").Select(Cell).ToList()).ToList();

        Assert.All(rows, row => Assert.Equal(row[^1], row.SkipLast(1).Sum()));
        for (var column = 0; column < rows[0].Count; column++)
            Assert.Equal(rows[^1][column], rows.SkipLast(1).Sum(row => row[column]));
        Assert.Equal(272, rows[^1][^1]);
    }

    [Fact]
    public async Task Is_drawn_with_the_minutes_of_its_table()
    {
        var log = await MixedLogAsync();
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        var svg = page.QuerySelector("#bars svg")!;

        Assert.Equal("bars-title bars-desc", svg.GetAttribute("aria-labelledby"));
        Assert.Contains("Linnet, 2025–26", svg.QuerySelector("#bars-title")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("The most is 3:52 in Mar 2026.", svg.QuerySelector("#bars-desc")!.TextContent, StringComparison.Ordinal);
        var pieces = svg.QuerySelectorAll("rect > title").Select(t => KeptLog.MinutesOf(t.TextContent[(t.TextContent.LastIndexOf(' ') + 1)..]));
        Assert.Equal(272, pieces.Sum());
        Assert.Equal(["J", "A", "S", "O", "N", "D", "J", "F", "M", "A", "M", "J"], svg.QuerySelectorAll("text.mid").Select(t => t.TextContent));
        Assert.Equal(svg.QuerySelectorAll("rect").Select(r => r.GetAttribute("class")).Distinct().Count(), page.QuerySelectorAll(".key rect").Length);
    }

    [Fact]
    public async Task Shows_where_it_happened_and_the_days_of_each_subject()
    {
        var log = await MixedLogAsync();
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Equal(["At home 1:52", "At another home –", "At the co-op 1:40", "Elsewhere 1:00", "All places 4:32"],
            page.QuerySelectorAll("#places-table tbody tr, #places-table tfoot tr").Select(r => $"{r.QuerySelector("th")!.TextContent} {Clock(r.QuerySelector("td")!)}"));
        var art = page.QuerySelectorAll("#days-table tbody tr").Single(r => r.QuerySelector("th")!.TextContent == "Art");
        Assert.Equal(["0", "1"], art.QuerySelectorAll("td").Select(Clock));
    }

    [Fact]
    public async Task Asks_about_time_counted_twice_and_very_long_days()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        var day = new DateOnly(2026, 3, 3);
        await log.WriteAsync(day, 60, [("science", 1)], "First", startsAt: 9 * 60);
        await log.WriteAsync(day, 60, [("science", 1)], "Second", startsAt: 9 * 60 + 30);
        await log.WriteAsync(day.AddDays(1), 17 * 60, [("science", 1)], "Watched the stars");
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        var questions = page.QuerySelectorAll("section[aria-labelledby=questions] a").ToList();

        Assert.Equal(["3 March 2026: 9:30–10:00 is counted twice. Is that right?", "4 March 2026 holds 17:00 hours. Is that right?"],
            questions.Select(q => q.QuerySelector(".row-main")!.TextContent));
        var behind = await log.Guardian.GetAsync(questions[0].GetAttribute("href")!);
        Assert.Equal(["First", "Second"], behind.QuerySelectorAll("#entries a bdi").Select(a => a.TextContent));
    }

    [Fact]
    public async Task Is_chosen_by_links_and_left_unsaid_is_the_first_learner_and_the_year_at_hand()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren");
        await log.Family.WithDbAsync(async db =>
        {
            db.SchoolYears.Add(new SchoolYear(Guid.CreateVersion7(), "2026–27", new Core.Calendar.DayRange(new(2026, 7, 1), new(2027, 6, 30)), Core.Calendar.Weekdays.MondayToFriday));
            await db.SaveChangesAsync();
        });
        var page = await log.Guardian.GetAsync("/records");
        Assert.Equal("Linnet, 2025–26", page.QuerySelector("h1")!.TextContent);
        Assert.Equal(["Linnet", "2025–26"], page.QuerySelectorAll(".picks [aria-current]").Select(a => a.TextContent));

        var wren = page.QuerySelectorAll(".picks a").Single(a => a.TextContent == "Wren");
        var hers = await log.Guardian.GetAsync(wren.GetAttribute("href")!);
        var next = hers.QuerySelectorAll(".picks a").Single(a => a.TextContent == "2026–27");
        Assert.Equal("Wren, 2026–27", (await log.Guardian.GetAsync(next.GetAttribute("href")!)).QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task Shows_hostile_names_as_text()
    {
        const string Name = "<script>x</script>\u202E=1+1🌾";
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Subjects.SingleAsync(s => s.Code == "science")).Rename(Name);
            (await db.Learners.SingleAsync()).Describe("<b>L</b>", new(2016, 5, 2), [], "");
            await db.SaveChangesAsync();
        });
        await log.WriteAsync(new DateOnly(2026, 3, 2), 60, [("science", 1)], what: "<img src=x onerror=y>");
        var page = await log.Guardian.GetAsync(log.RecordsPath());

        Assert.Equal("<b>L</b>, 2025–26", page.QuerySelector("h1")!.TextContent);
        Assert.Equal(Name, page.QuerySelector("#hours-table tbody th")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("main script, main img, h1 b"));
        var entries = await log.Guardian.GetAsync(log.EntriesPath());
        Assert.Equal("<img src=x onerror=y>", entries.QuerySelector("#entries a bdi")!.TextContent);
    }

    [Fact]
    public async Task Shows_each_day_on_a_calendar_sheet_with_its_standing()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new DateOnly(2026, 3, 2), 60, [("science", 1)]);
        await log.WriteAsync(new DateOnly(2026, 3, 3), 59, [("science", 1)]);
        await log.Family.WithDbAsync(async db =>
        {
            db.DayMarks.Add(new DayMark(log.Linnet, new(2026, 3, 4), true, "Iris", TestServer.Start.UtcDateTime));
            (await db.SchoolYears.Include(y => y.Breaks).SingleAsync()).AddBreak(Guid.CreateVersion7(), "Spring break", new(new(2026, 3, 16), new(2026, 3, 20)));
            await db.SaveChangesAsync();
        });
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        var march = page.QuerySelector("#days-2026-03")!;

        Assert.Equal(12, page.QuerySelectorAll(".calendar").Length);
        Assert.Equal(365, page.QuerySelectorAll(".calendar td a").Length);
        Assert.Contains("2 school days", march.QuerySelector("caption")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(("is-counted", "counted, 1:00 hours"), Day(march, 2));
        Assert.Equal(("is-under", "under the minimum day, 0:59 hours"), Day(march, 3));
        Assert.Equal(("is-marked", "counted, marked by hand"), Day(march, 4));
        Assert.Equal(("", "nothing logged"), Day(march, 5));
        Assert.Equal(("is-off", "weekend, Saturday"), Day(march, 7));
        Assert.Equal(("is-off", "Spring break"), Day(march, 16));
        Assert.Equal($"/records/day/{log.Linnet}/2026-03-02", Link(march, 2).GetAttribute("href"));
    }

    /// <summary>Minutes over months, places and awkward splits; a touch; a change; a removal; a second learner's own time.</summary>
    private async Task<KeptLog> MixedLogAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren");
        await log.WriteAsync(new(2026, 3, 2), 50, [("science", 3), ("history", 1), ("music", 1), ("health", 1)]);
        await log.WriteAsync(new(2026, 3, 2), 7, [("reading", 1), ("writing", 1), ("mathematics", 1)], who: ["Linnet", "Wren"]);
        await log.WriteAsync(new(2026, 3, 4), 100, [("science", 1), ("art", 0)], place: Place.Coop);
        var changed = await log.WriteAsync(new(2026, 3, 5), 500, [("science", 1)]);
        await log.ChangeAsync(changed, new(2026, 3, 5), 15, [("history", 1)]);
        await log.WriteAsync(new(2025, 9, 1), 40, [("music", 2), ("home-arts", 1)]);
        await log.WriteAsync(new(2026, 3, 6), 60, [("nature", 1)], place: Place.Elsewhere);
        await log.RemoveAsync(await log.WriteAsync(new(2026, 3, 6), 300, [("nature", 1)]));
        await log.WriteAsync(new(2026, 3, 6), 200, [("nature", 1)], who: ["Wren"]);
        await log.WriteAsync(new(2026, 7, 1), 90, [("nature", 1)]);
        await log.Family.WithDbAsync(async db =>
        {
            db.DayMarks.Add(new DayMark(log.Linnet, new(2025, 9, 1), true, "Iris", TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return log;
    }

    private static string Clock(IElement cell) => cell.TextContent.Trim().Split(' ')[0];

    private static int Cell(IElement cell) => Clock(cell) is "–" ? 0 : KeptLog.MinutesOf(Clock(cell));

    private static IElement Link(IElement sheet, int day) =>
        sheet.QuerySelectorAll("td a").Single(a => a.QuerySelector(".day")!.TextContent == day.ToString(CultureInfo.InvariantCulture));

    private static (string Class, string Title) Day(IElement sheet, int day) =>
        Link(sheet, day).ParentElement is { } cell ? (cell.ClassName?.Trim() ?? "", cell.GetAttribute("title")!) : default;
}
