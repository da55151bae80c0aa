using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class Learners_and_their_pathways_on_the_records_pages(TestServer server)
{
    [Fact]
    public async Task Without_a_pathway_there_is_a_way_to_choose_one()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        foreach (var path in new[] { log.StandingPath(), log.RecordsPath() })
        {
            var page = await log.Guardian.GetAsync(path);
            var choose = page.QuerySelectorAll("main a.button").Single(a => a.Plain() == "Choose a pathway");
            await log.Guardian.GetAsync(choose.GetAttribute("href")!);
            Assert.Empty(page.QuerySelectorAll("main .standing"));
        }
    }

    [Fact]
    public async Task In_a_move_each_pathway_has_a_section_and_every_id_is_there_once()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-MO", "home-school");
        await log.StandAsync("US-GA", "home-study", new(2026, 5, 1), SpanReason.Moves);
        await log.FillWeekdaysAsync(new(2025, 9, 1), new(2026, 3, 11), d => 180 + d.DayNumber / 7 % 3 * 60);
        var page = await log.Guardian.GetAsync(log.StandingPath());
        var sections = page.QuerySelectorAll("main section.sheet");

        Assert.Equal(["Missouri · Home school", "Georgia · Home study program"], sections.Select(s => s.QuerySelector("h2")!.Plain()));
        Assert.Contains("this pathway ended on 30 April 2026", sections[0].Plain(), StringComparison.Ordinal);
        Assert.Contains("the family moved to Georgia on 1 May 2026", sections[1].Plain(), StringComparison.Ordinal);
        Assert.All(page.QuerySelectorAll("[id]").GroupBy(e => e.Id), ids => Assert.True(ids.Count() == 1, $"{ids.Key} is there {ids.Count()} times"));
        Assert.All(page.QuerySelectorAll("svg[aria-labelledby]").SelectMany(s => s.GetAttribute("aria-labelledby")!.Split(' ')), id => Assert.NotNull(page.GetElementById(id)));
    }

    [Theory]
    [InlineData("2026-05-01", "Missouri · Home school, with another pathway later in this year")]
    [InlineData("2026-02-01", "Georgia · Home study program, with another pathway earlier in this year")]
    public async Task In_a_move_the_records_show_the_pathway_of_today_and_say_on_which_side_the_other_lies(string moved, string said)
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-MO", "home-school");
        await log.StandAsync("US-GA", "home-study", DateOnly.Parse(moved, null), SpanReason.Moves);
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Equal(said, page.QuerySelector("section[aria-labelledby=standing] > .quiet")!.Plain());
    }

    [Fact]
    public async Task A_pathway_that_is_gone_is_told_on_both_pages()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-ZZ", "gone");
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        foreach (var path in new[] { log.StandingPath(), log.RecordsPath() })
        {
            Assert.Contains(
                "The pathway chosen from 1 July 2025 on (US-ZZ, gone) is no longer in this program. Choose again.",
                (await log.Guardian.GetAsync(path)).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Before_the_first_entry_what_is_due_is_there_already()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-NY", "home-instruction");
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Contains("Next paper: notice of intention to instruct at home1 July 2025 overdue", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        var papers = page.QuerySelectorAll("main a").Select(a => a.GetAttribute("href")!).Single(h => h.StartsWith("/records/papers", StringComparison.Ordinal));
        await log.Guardian.GetAsync(papers);
    }

    [Fact]
    public async Task Who_is_set_aside_keeps_every_page()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren").StandsAsync("US-NY", "home-instruction");
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Learners.SingleAsync(l => l.Name == "Linnet")).PutAside();
            await db.SaveChangesAsync();
        });
        var records = await log.Guardian.GetAsync(log.RecordsPath());
        foreach (var link in records.QuerySelectorAll("section[aria-labelledby=standing] a").Select(a => a.GetAttribute("href")!).Distinct())
            await log.Guardian.GetAsync(link);
        Assert.DoesNotContain("Linnet", (await log.Guardian.GetAsync("/records/papers")).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Under_the_day_there_is_a_line_by_law_or_by_hours_and_none_for_a_helper()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren").StandsAsync("US-MO", "home-school");
        await log.WriteAsync(new(2026, 3, 9), 90, [("art", 1)], who: ["Linnet", "Wren"]);
        var lines = (await log.Guardian.GetAsync("/today")).Texts("#standing .standing");
        Assert.Equal(2, lines.Count);
        Assert.Equal("Linnet: 1:30 of 1,000 hours, behind, 1:30 this week", lines[0]);
        Assert.Equal("Wren: 1:30 this year, 1:30 this week", lines[1]);
        var helper = await server.HelperAsync(log.Family);
        Assert.Empty((await helper.GetAsync("/today")).Texts("#standing .standing"));
    }

    [Fact]
    public async Task Are_closed_to_helpers_and_strangers()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-MO", "home-school");
        var helper = await server.HelperAsync(log.Family);
        foreach (var path in new[] { log.StandingPath(), log.WhatIfPath(), "/records/papers", "/records/calendar" })
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await helper.OpenAsync(path)).StatusCode);
            Assert.Equal(HttpStatusCode.Redirect, (await server.Visitor().OpenAsync(path)).StatusCode);
        }

        var fields = new Dictionary<string, string> { ["__RequestVerificationToken"] = await helper.TokenAsync() };
        foreach (var path in new[] { "/records/calendar?handler=Make", "/records/calendar?handler=End", $"/records/papers?handler=Done&learner={log.Linnet}&year={log.YearId}" })
            Assert.Equal(HttpStatusCode.Forbidden, (await helper.PostAsync(path, fields)).StatusCode);
    }

    [Fact]
    public async Task Of_another_family_are_not_there()
    {
        var theirs = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-NY", "home-instruction");
        var mine = await KeptLog.OfAsync(server, "Wren");
        var (wren, token) = (mine.Learners["Wren"], await mine.Guardian.TokenAsync());
        foreach (var page in new[] { "standing", "what-if", "papers" })
        {
            foreach (var query in new[] { $"learner={theirs.Linnet}", $"year={theirs.YearId}", $"learner={theirs.Linnet}&year={mine.YearId}", $"learner={wren}&year={theirs.YearId}", "learner=linnet", "year=2025" })
            {
                var answer = await mine.Guardian.OpenAsync($"/records/{page}?{query}");
                Assert.True(answer.StatusCode == HttpStatusCode.NotFound, $"{page}?{query} answered {answer.StatusCode}");
                Assert.DoesNotContain("New York", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            }
        }

        foreach (var handler in new[] { "Done", "Open", "Tell" })
        {
            var answer = await mine.Guardian.PostAsync(
                $"/records/papers?handler={handler}&learner={theirs.Linnet}&year={mine.YearId}",
                new Dictionary<string, string> { ["__RequestVerificationToken"] = token, ["Input.Key"] = "US-NY/home-instruction/notice/1" });
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Show_hostile_names_as_text()
    {
        const string Name = "<b>L</b>\u202E=1+1🌾";
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-NY", "home-instruction");
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Learners.SingleAsync()).Describe(Name, new(2016, 5, 2), [], "");
            await db.SaveChangesAsync();
        });
        foreach (var path in new[] { log.StandingPath(), log.RecordsPath(), log.WhatIfPath("&Input.Under=US-MO/home-school"), "/records/papers", "/today" })
        {
            var page = await log.Guardian.GetAsync(path);
            Assert.Contains(Name, page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
            Assert.Empty(page.QuerySelectorAll("main b b, main script, bdi b"));
        }
    }

    [Fact]
    public async Task In_a_family_of_another_time_zone_stand_on_its_own_day()
    {
        var family = await server.FamilyAsync("Birch", "Pacific/Auckland");
        // 15:00 UTC on 12 March is 4:00 on 13 March there.
        await family.WithDbAsync(async db =>
        {
            db.Add(new Learner(Guid.CreateVersion7(), "Wren", new(2016, 5, 2), 0));
            await db.SaveChangesAsync();
        });
        foreach (var path in new[] { "/records/standing", "/records/papers" })
            Assert.Contains("on 13 March 2026", (await family.Guardian.GetAsync(path)).QuerySelector(".sub")!.Plain(), StringComparison.Ordinal);
    }
}
