using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Log;

[Collection(SharedServer.Name)]
public sealed class WritingAnEntry(TestServer server)
{
    [Fact]
    public async Task Something_unplanned_is_logged_with_what_the_form_holds_already()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Watched the mill wheel" });
        Assert.Equal("/today/2026-03-12", answer.Headers.Location!.OriginalString);
        foreach (var learner in new[] { day.Wren, day.Linnet, day.Heron })
        {
            var ledger = await day.LedgerAsync(learner);
            Assert.Equal(40, ledger.Total.Value);
            Assert.Equal(40, ledger.In(day.Subjects["reading"]).Value);
        }

        var today = await day.TodayAsync();
        Assert.Contains("“Watched the mill wheel” is logged.", today.QuerySelector("#said")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Watched the mill wheel", today.QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_group_entry_holds_each_childs_own_minutes()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new()
        {
            ["Input.What"] = "Kneading",
            ["Input.Length"] = "60",
            ["Input.Who[1].Own"] = "25",
            ["Input.Who[2].There"] = null,
            ["Input.Counts[3].Weight"] = "2",
            ["Input.Counts[0].Weight"] = "1",
            ["Input.Counts[5].Touched"] = "true",
        });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal((40, 20), ((await day.LedgerAsync(day.Wren)).In(day.Subjects["science"]).Value, (await day.LedgerAsync(day.Wren)).In(day.Subjects["reading"]).Value));
        // 25 minutes by 2 and 1 are 16⅔ and 8⅓: the largest remainder takes the last minute.
        Assert.Equal((17, 8), ((await day.LedgerAsync(day.Linnet)).In(day.Subjects["science"]).Value, (await day.LedgerAsync(day.Linnet)).In(day.Subjects["reading"]).Value));
        Assert.Empty((await day.LedgerAsync(day.Heron)).Entries);
        Assert.Equal(day.Subjects["history"], Assert.Single((await day.LedgerAsync(day.Wren)).Touches).SubjectId);
        var entry = await day.Guardian.GetAsync("/log/" + await OnlyEntryAsync(day));
        var rows = entry.QuerySelectorAll(".figures tbody tr").Select(r => string.Join(" ", r.Children.Select(c => c.TextContent))).ToList();
        Assert.Equal(["Wren 20 40 60", "Linnet 8 17 25"], rows);
    }

    [Fact]
    public async Task Done_with_changes_starts_from_the_plan_and_ticks_the_line_off()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync($"/log/new?session={day.Sourdough}");
        Assert.Equal("Start the sourdough", Value(form, "Input.What"));
        Assert.Equal("15", Value(form, "Input.OtherLength"));
        Assert.Equal("09:00", Value(form, "Input.Start"));
        using var answer = await day.Guardian.SubmitAsync(form, new() { ["Input.OtherLength"] = "35", ["Input.Who[0].There"] = null });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(35, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(0, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.Sourdough)).State);
        var line = (await day.TodayAsync()).QuerySelector(PlannedDay.Line(day.Sourdough))!;
        Assert.Contains("35\u00a0min · Linnet", line.TextContent, StringComparison.Ordinal);
        // 9:00 and 35 minutes: the ninety minutes of rising begin later than planned.
        Assert.Equal("11:05", (await day.TodayAsync()).QuerySelector(".strip-look time")!.TextContent);
    }

    [Fact]
    public async Task A_session_that_somebody_else_logged_is_not_counted_twice()
    {
        var day = await PlannedDay.MakeAsync(server);
        var helper = await server.HelperAsync(day.Family);
        var form = await day.Guardian.GetAsync($"/log/new?session={day.Letters}");
        using var theirs = await helper.SubmitAsync(await helper.GetAsync("/today"), within: PlannedDay.Form(day.Letters, "Done"));
        using var mine = await day.Guardian.SubmitAsync(form, new() { ["Input.Note"] = "She wrote two pages" });
        Assert.Equal(HttpStatusCode.Conflict, mine.StatusCode);
        var page = await Visitor.ParseAsync(mine);
        Assert.Contains("Basil wrote that this was done", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("She wrote two pages", page.QuerySelector<IHtmlTextAreaElement>("textarea")!.Value);
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task A_double_post_writes_one_entry_and_is_answered_alike()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new?date=2026-03-10");
        using var first = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" });
        using var second = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" });
        Assert.Equal("/today/2026-03-10", first.Headers.Location!.OriginalString);
        Assert.Equal(first.Headers.Location, second.Headers.Location);
        Assert.Equal("Fed the hens", Assert.Single((await day.LedgerAsync(day.Wren)).Entries).What);
    }

    [Fact]
    public async Task Posts_that_arrive_together_write_one_row_and_all_succeed()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new");
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" })));
        Assert.All(answers, a => Assert.Equal("/today/2026-03-12", a.Headers.Location?.OriginalString));
        Assert.Equal(1, await day.EntriesAsync());
        Assert.Equal(1, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));
    }

    [Fact]
    public async Task An_id_that_another_family_used_works_as_new()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        var form = await theirs.Guardian.GetAsync("/log/new");
        using var first = await theirs.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Theirs" });
        var mine = await PlannedDay.MakeAsync(server);
        using var second = await mine.Guardian.SubmitAsync(await mine.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Mine", ["EntryId"] = Value(form, "EntryId") });
        Assert.Equal(HttpStatusCode.Redirect, second.StatusCode);
        Assert.Equal("Mine", Assert.Single((await mine.LedgerAsync(mine.Wren)).Entries).What);
        Assert.Equal("Theirs", Assert.Single((await theirs.LedgerAsync(theirs.Wren)).Entries).What);
    }

    [Theory]
    [InlineData("Input.OtherLength", "0", "from 1 to 1440")]
    [InlineData("Input.OtherLength", "1441", "from 1 to 1440")]
    [InlineData("Input.OtherLength", "-5", "from 1 to 1440")]
    [InlineData("Input.OtherLength", "abc", "not understood")]
    [InlineData("Input.OtherLength", "", "Say how long")]
    [InlineData("Input.OtherLength", "30.5", "not understood")]
    [InlineData("Input.Who[0].Own", "0", "from 1 to 1440")]
    [InlineData("Input.Who[0].Own", "1441", "from 1 to 1440")]
    [InlineData("Input.Counts[0].Weight", "101", "from 0 to 100")]
    [InlineData("Input.Counts[0].Weight", "-1", "from 0 to 100")]
    [InlineData("Input.Counts[0].Weight", "", "at least one subject")]
    [InlineData("Input.What", "", "what was done")]
    [InlineData("Input.Date", "", "on which day")]
    [InlineData("Input.Date", "2026-03-13", "still to come")]
    [InlineData("Input.Date", "1999-12-31", "from the year 2000")]
    [InlineData("Input.Date", "soon", "not understood")]
    [InlineData("Input.Start", "25:00", "not understood")]
    [InlineData("Input.Place", "Moon", "not understood")]
    public async Task What_cannot_be_is_refused_beside_its_field_and_nothing_typed_is_lost(string field, string value, string message)
    {
        var day = await PlannedDay.MakeAsync(server);
        var fill = new Dictionary<string, string?> { ["Input.What"] = "Baked bread", ["Input.Note"] = "with seeds", ["Input.Length"] = "other", ["Input.OtherLength"] = "45" };
        fill[field] = value;
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), fill);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Contains(page.QuerySelectorAll(".field-validation-error"), e => e.TextContent.Contains(message, StringComparison.Ordinal));
        Assert.Equal("with seeds", page.QuerySelector<IHtmlTextAreaElement>("textarea")!.Value);
        if (field is not "Input.What")
            Assert.Equal("Baked bread", Value(page, "Input.What"));
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task An_entry_without_a_child_is_refused()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new()
        {
            ["Input.What"] = "Alone",
            ["Input.Who[0].There"] = null,
            ["Input.Who[1].There"] = null,
            ["Input.Who[2].There"] = null,
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Tick at least one child.", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(200, 4000, HttpStatusCode.Redirect)]
    [InlineData(201, 10, HttpStatusCode.UnprocessableEntity)]
    [InlineData(10, 4001, HttpStatusCode.UnprocessableEntity)]
    [InlineData(10_000, 10_000, HttpStatusCode.UnprocessableEntity)]
    public async Task Texts_are_bounded(int what, int note, HttpStatusCode status)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = new string('w', what), ["Input.Note"] = new string('n', note) });
        Assert.Equal(status, answer.StatusCode);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\u202Eright to left\u202C שלום")]
    [InlineData("bread 🍞👩‍🍳")]
    [InlineData("O'Brien \"quoted\"; DROP TABLE LogEntries;--")]
    public async Task Any_text_comes_back_as_it_was_written(string text)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = text, ["Input.Note"] = text });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await day.Guardian.GetAsync("/log/" + await OnlyEntryAsync(day));
        Assert.Equal(text, page.QuerySelector("h1")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("main script"));
    }

    [Fact]
    public async Task Control_signs_are_left_out()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Ba\u001Bked\u0007 bread" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("Baked bread", Assert.Single((await day.LedgerAsync(day.Wren)).Entries).What);
    }

    [Fact]
    public async Task A_form_with_a_NUL_is_not_read_at_all()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Ba\0ked bread" });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task Minutes_that_run_past_midnight_stay_valid()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new?date=2026-03-11"), new() { ["Input.What"] = "Watched the stars", ["Input.Start"] = "23:00", ["Input.Length"] = "90" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(90, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task Another_length_that_was_typed_wins_over_the_chip_that_was_set_before()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Bread", ["Input.OtherLength"] = "55" });
        Assert.Equal(55, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task The_same_words_count_as_they_did_last_time()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var first = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Fed the hens", ["Input.Counts[0].Weight"] = "", ["Input.Counts[4].Weight"] = "3" });
        using var swapped = await day.Guardian.OpenAsync("/log/new?handler=counts&Input.What=Fed%20the%20hens");
        Assert.Equal("3", Value(await Visitor.ParseAsync(swapped), "Input.Counts[4].Weight"));
        using var unknown = await day.Guardian.OpenAsync("/log/new?handler=counts&Input.What=Fed%20the%20cat");
        Assert.Equal(HttpStatusCode.NoContent, unknown.StatusCode);
        var again = await day.Guardian.GetAsync("/log/new?what=Fed%20the%20hens");
        Assert.Equal(("", "3"), (Value(again, "Input.Counts[0].Weight"), Value(again, "Input.Counts[4].Weight")));
    }

    [Fact]
    public async Task A_learner_or_subject_of_another_family_is_not_there()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        var mine = await PlannedDay.MakeAsync(server);
        foreach (var (field, id) in new[] { ("Input.Who[0].LearnerId", theirs.Wren), ("Input.Counts[0].SubjectId", theirs.Subjects["reading"]), ("Session", theirs.Letters) })
        {
            using var answer = await mine.Guardian.SubmitAsync(await mine.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Bread", [field] = id.ToString() });
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        using var opened = await mine.Guardian.OpenAsync($"/log/new?session={theirs.Letters}");
        Assert.Equal(HttpStatusCode.NotFound, opened.StatusCode);
        Assert.Equal(0, await mine.EntriesAsync());
    }

    [Fact]
    public async Task A_helper_logs_but_opens_no_week()
    {
        var day = await PlannedDay.MakeAsync(server);
        var helper = await server.HelperAsync(day.Family);
        using var answer = await helper.SubmitAsync(await helper.GetAsync("/log/new"), new() { ["Input.What"] = "Walked to the mill" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var entry = await helper.GetAsync("/log/" + await OnlyEntryAsync(day));
        Assert.Contains("by Basil", entry.Body!.TextContent, StringComparison.Ordinal);
        using var week = await helper.OpenAsync("/week");
        Assert.Equal(HttpStatusCode.Forbidden, week.StatusCode);
    }

    private static Task<Guid> OnlyEntryAsync(PlannedDay day) => day.Family.FromDbAsync(db => db.LogEntries.Select(e => e.Id).SingleAsync());

    private static string Value(IHtmlDocument page, string name) => page.QuerySelector<IHtmlInputElement>($"input[name='{name}']")!.Value;
}
