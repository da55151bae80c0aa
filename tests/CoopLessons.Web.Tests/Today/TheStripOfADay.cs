using System.Net;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Today;

[Collection(PlanningServer.Name)]
public sealed class TheStripOfADay(TestServer server)
{
    [Fact]
    public async Task Lines_stand_by_time_and_those_without_a_time_come_last()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.TodayAsync();
        var shown = page.QuerySelectorAll(".strip > li:not([hidden])").Select(l => l.Id).ToList();
        Assert.Equal(
            [$"line-{day.ReadAloud:N}", $"line-{day.Sourdough:N}", $"wait-{day.Sourdough:N}", $"look-{day.Sourdough:N}", $"line-{day.Letters:N}"],
            shown);
        Assert.Equal("Thursday 12 March", page.QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task A_waiting_time_says_until_when_and_somebody_is_told_to_look()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.TodayAsync();
        Assert.Equal("the starter rises until 10:45", page.QuerySelector(".strip-wait")!.TextContent.Trim());
        Assert.Contains("LOOK: Start the sourdough", page.QuerySelector(".strip-look")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("10:45", page.QuerySelector(".strip-look time")!.TextContent);
    }

    [Fact]
    public async Task What_waits_overnight_asks_for_somebody_on_the_day_on_which_it_ends()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.Sourdough)).Place(TestServer.Today, 23 * 60);
            await db.SaveChangesAsync();
        });
        var today = await day.TodayAsync();
        Assert.Contains("Friday 13 March, 0:45", today.QuerySelector(".strip-wait")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(today.QuerySelectorAll(".strip-look:not([hidden])"));
        var tomorrow = await day.Guardian.GetAsync("/today/2026-03-13");
        Assert.Contains("since Thursday 12 March", tomorrow.QuerySelector(".strip-look")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Waiting_without_a_planned_time_is_counted_from_the_moment_it_was_ticked_off()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.Sourdough)).Place(TestServer.Today, null);
            await db.SaveChangesAsync();
        });
        var page = await day.TodayAsync();
        Assert.Equal("the starter rises: 1\u00a0h\u00a030, then look", page.QuerySelector(".strip-wait")!.TextContent.Trim());
        // Ten in the morning in Chicago.
        using var answer = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.Sourdough, "Done"), htmx: true);
        var swap = await Visitor.ParseAsync(answer);
        Assert.Equal("11:30", swap.QuerySelector(".strip-look time")!.TextContent);
    }

    [Fact]
    public async Task A_line_opens_to_what_each_child_does_and_what_it_needs()
    {
        var day = await PlannedDay.MakeAsync(server);
        var line = (await day.TodayAsync()).QuerySelector(PlannedDay.Line(day.Sourdough))!;
        var parts = line.QuerySelectorAll(".variants section").ToDictionary(s => s.QuerySelector("h3")!.TextContent, s => s.QuerySelector("p")!.TextContent);
        Assert.Equal("Stirs and names what it smells like.", parts["Wren"]);
        Assert.Equal("Weighs the flour and writes it down.", parts["Linnet"]);
        Assert.Contains("100 g for each learner", line.TextContent, StringComparison.Ordinal);
        Assert.Contains("2 for the family", line.TextContent, StringComparison.Ordinal);
        Assert.Contains("Lid rings are small enough to swallow.", line.TextContent, StringComparison.Ordinal);
        Assert.Contains("hands", line.QuerySelectorAll(".tag").Select(t => t.TextContent));
    }

    [Fact]
    public async Task A_level_that_is_set_chooses_the_work_before_the_age_does()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var wren = await db.Learners.Include(l => l.Levels).SingleAsync(l => l.Id == day.Wren);
            wren.SetLevel(day.Subjects["science"], new CoopLessons.Core.Families.Level(4));
            await db.SaveChangesAsync();
        });
        var line = (await day.TodayAsync()).QuerySelector(PlannedDay.Line(day.Sourdough))!;
        Assert.Equal(2, line.QuerySelectorAll(".variants p").Count(p => p.TextContent == "Weighs the flour and writes it down."));
    }

    [Fact]
    public async Task A_hazard_and_an_allergen_are_named_where_they_meet_a_child_who_is_there()
    {
        var day = await PlannedDay.MakeAsync(server);
        // Heron, who is two, takes no part yet, and is in the house all the same.
        Assert.Contains("wheat for Heron", (await day.TodayAsync()).QuerySelectorAll($"{PlannedDay.Line(day.Sourdough)} .tag.look").Select(t => t.TextContent));
        await day.Family.WithDbAsync(async db =>
        {
            var session = await db.PlannedSessions.SingleAsync(s => s.Id == day.Sourdough);
            db.PlannedSessions.Remove(session);
            var heron = await db.Learners.SingleAsync(l => l.Id == day.Heron);
            heron.Describe(heron.Name, heron.BirthDate, heron.Allergies, "strawberries");
            db.PlannedSessions.Add(new PlannedSession(Guid.CreateVersion7(), session.ActivityId!.Value, TestServer.Today, null, 0, [day.Heron]));
            await db.SaveChangesAsync();
        });
        var page = await day.TodayAsync();
        var words = page.QuerySelectorAll(".tag.look").Select(t => t.TextContent).ToList();
        Assert.Contains("small parts for Heron, who is 2", words);
        Assert.Contains("wheat for Heron", words);
        var notes = page.QuerySelectorAll(".strip-more .note.look").Select(n => n.TextContent).ToList();
        Assert.Contains(notes, n => n.Contains("small", StringComparison.Ordinal) && n.Contains("Heron", StringComparison.Ordinal));
        Assert.Contains(notes, n => n.Contains("You wrote of Heron: strawberries", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_empty_day_says_so_and_holds_the_one_button()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.Guardian.GetAsync("/today/2026-03-14");
        Assert.Contains("Nothing is planned", page.QuerySelector(".empty h2")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Log something", Assert.Single(page.QuerySelectorAll("main .button.primary")).TextContent);
    }

    [Fact]
    public async Task The_standing_of_each_child_is_the_arithmetic_of_year_and_week()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.TodayAsync();
        using var done = await day.Guardian.SubmitAsync(page, within: PlannedDay.Form(day.ReadAloud, "Done"));
        Assert.Equal(HttpStatusCode.Redirect, done.StatusCode);
        var lines = (await day.TodayAsync()).QuerySelectorAll("#standing .standing a").Select(s => s.TextContent).ToList();
        Assert.Equal(["Wren: 0:30 this year, 0:30 this week", "Linnet: 0:30 this year, 0:30 this week", "Heron: 0:30 this year, 0:30 this week"], lines);
    }

    [Fact]
    public async Task A_helper_sees_names_first_and_no_records()
    {
        var day = await PlannedDay.MakeAsync(server);
        var helper = await server.HelperAsync(day.Family);
        var page = await helper.GetAsync("/today");
        Assert.Equal("Wren and Linnet: Start the sourdough", page.QuerySelector($"{PlannedDay.Line(day.Sourdough)} .strip-title")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("#standing .standing"));
        Assert.DoesNotContain(page.QuerySelectorAll("a[href]").Select(a => a.GetAttribute("href")!), h => h.StartsWith("/records", StringComparison.Ordinal) || h.StartsWith("/week", StringComparison.Ordinal) || h.StartsWith("/units", StringComparison.Ordinal));
        using var week = await helper.OpenAsync("/week");
        Assert.Equal(HttpStatusCode.Forbidden, week.StatusCode);
    }

    [Theory]
    [InlineData("/today/2026-02-30")]
    [InlineData("/today/yesterday")]
    [InlineData("/today/1899-12-31")]
    [InlineData("/today/2201-01-01")]
    [InlineData("/today/2026-3-1")]
    public async Task An_address_that_is_no_day_is_answered_with_404(string path)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task The_first_and_the_last_day_open()
    {
        var family = await server.FamilyAsync();
        await family.Guardian.GetAsync("/today/1900-01-01");
        await family.Guardian.GetAsync("/today/2200-12-31");
    }

    [Fact]
    public async Task Titles_that_look_like_markup_stay_text()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var wren = await db.Learners.SingleAsync(l => l.Id == day.Wren);
            wren.Describe("<script>alert(1)</script>", wren.BirthDate, [], "");
            await db.SaveChangesAsync();
        });
        var page = await day.TodayAsync();
        Assert.DoesNotContain(page.QuerySelectorAll("main script"), _ => true);
        Assert.Contains("<script>alert(1)</script>", page.QuerySelector(PlannedDay.Line(day.Sourdough))!.TextContent, StringComparison.Ordinal);
    }
}
