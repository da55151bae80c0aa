using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Log;

[Collection(SharedServer.Name)]
public sealed class ChangingAnEntry(TestServer server)
{
    [Fact]
    public async Task The_history_says_in_words_what_changed_who_did_it_and_why()
    {
        var (day, id) = await LoggedAsync();
        var helper = await server.HelperAsync(day.Family);
        using var first = await helper.SubmitAsync(await helper.GetAsync($"/log/{id}/change"), new() { ["Input.Length"] = "60", ["Why"] = "The clock was wrong" });
        Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
        using var second = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}/change"), new()
        {
            ["Input.What"] = "Baked two loaves",
            ["Input.Place"] = "Coop",
            ["Input.Who[2].There"] = null,
            ["Input.Who[1].Own"] = "45",
            ["Input.Date"] = "2026-03-11",
            ["Input.Start"] = "10:30",
            ["Input.Note"] = "rye",
            ["Input.Counts[3].Weight"] = "1",
            ["Input.Counts[8].Touched"] = "true",
        });
        Assert.Equal(HttpStatusCode.Redirect, second.StatusCode);
        var page = await day.Guardian.GetAsync($"/log/{id}");
        var steps = page.QuerySelectorAll("ol.rows > li").ToList();
        Assert.Equal(3, steps.Count);
        Assert.Equal("minutes 40 → 60", Assert.Single(steps[1].QuerySelectorAll("li")).TextContent);
        Assert.Contains("by Basil", steps[1].TextContent, StringComparison.Ordinal);
        Assert.Contains("Why: The clock was wrong", steps[1].TextContent, StringComparison.Ordinal);
        Assert.Equal(
            [
                "what “Baked bread” → “Baked two loaves”", "day Thursday 12 March 2026 → Wednesday 11 March 2026", "began at no time → 10:30",
                "Linnet's minutes 60 → 45", "Heron taken out (60 minutes)", "where home → co-op", "counts as Reading 1 → Reading 1, Science 1", "touches none → Art", "note added: “rye”",
            ],
            steps[0].QuerySelectorAll("li").Select(l => l.TextContent));
        Assert.Equal(60, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(45, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(0, (await day.LedgerAsync(day.Heron)).Total.Value);
    }

    [Fact]
    public async Task A_change_over_a_newer_text_is_held_back_and_shows_both()
    {
        var (day, id) = await LoggedAsync();
        var stale = await day.Guardian.GetAsync($"/log/{id}/change");
        using var newer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}/change"), new() { ["Input.Note"] = "The newer note" });
        using var answer = await day.Guardian.SubmitAsync(stale, new() { ["Input.Note"] = "What I typed", ["Input.Length"] = "90" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Equal("What I typed", page.QuerySelector<IHtmlTextAreaElement>("textarea")!.Value);
        Assert.Contains("The newer note", page.QuerySelector(".note.look")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(40, (await day.LedgerAsync(day.Wren)).Total.Value);
        using var once = await day.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, once.StatusCode);
        Assert.Equal(90, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task Sending_a_change_twice_writes_it_once()
    {
        var (day, id) = await LoggedAsync();
        var form = await day.Guardian.GetAsync($"/log/{id}/change");
        using var first = await day.Guardian.SubmitAsync(form, new() { ["Input.Length"] = "60" });
        using var second = await day.Guardian.SubmitAsync(form, new() { ["Input.Length"] = "60" });
        Assert.Equal(first.Headers.Location, second.Headers.Location);
        Assert.Equal(2, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));
    }

    [Fact]
    public async Task A_removed_entry_counts_nowhere_stays_readable_and_can_be_restored()
    {
        var (day, id) = await LoggedAsync();
        using var removed = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), new() { ["why"] = "It was yesterday's" }, "#why");
        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.Equal(0, (await day.LedgerAsync(day.Wren)).Total.Value);
        var page = await day.Guardian.GetAsync($"/log/{id}");
        Assert.Contains("It was yesterday's", page.QuerySelector("ol.rows")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Baked bread", (await day.Guardian.GetAsync("/log")).QuerySelector("details.more ul.rows")!.TextContent, StringComparison.Ordinal);
        using var restored = await day.Guardian.SubmitAsync(page, within: "form[action$='handler=Restore']");
        Assert.Equal(HttpStatusCode.Redirect, restored.StatusCode);
        Assert.Equal(40, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(["Restored", "Removed", "Written"], (await day.Guardian.GetAsync($"/log/{id}")).QuerySelectorAll("ol.rows > li b").Select(b => b.TextContent));
    }

    [Fact]
    public async Task Removing_and_restoring_takes_the_planned_line_with_it()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "Done"));
        var id = (await day.SessionAsync(day.Letters)).EntryId!.Value;
        using var removed = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), within: "#why");
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.Letters)).State);
        using var restored = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), within: "form[action$='handler=Restore']");
        var session = await day.SessionAsync(day.Letters);
        Assert.Equal((SessionState.Done, id), (session.State, session.EntryId));
    }

    [Fact]
    public async Task A_removed_entry_is_not_changed_and_what_was_typed_stays_until_it_is_restored()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "Done"));
        var id = (await day.SessionAsync(day.Letters)).EntryId!.Value;
        var form = await day.Guardian.GetAsync($"/log/{id}/change");
        using var removed = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), within: "#why");
        using var answer = await day.Guardian.SubmitAsync(form, new() { ["Input.Note"] = "Two pages", ["Input.Length"] = "60" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Equal("Two pages", page.QuerySelector<IHtmlTextAreaElement>("textarea")!.Value);
        Assert.Equal("removed", page.QuerySelector(".page-head .tag")!.TextContent);
        Assert.Equal($"/log/{id}", page.QuerySelector(".note.look a")!.GetAttribute("href"));
        Assert.Equal((0, SessionState.Planned), ((await day.LedgerAsync(day.Wren)).Total.Value, (await day.SessionAsync(day.Letters)).State));
        Assert.Equal(2, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));

        using var restored = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), within: "form[action$='handler=Restore']");
        using var held = await day.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Conflict, held.StatusCode);
        using var saved = await day.Guardian.SubmitAsync(await Visitor.ParseAsync(held));
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Equal((60, SessionState.Done), ((await day.LedgerAsync(day.Wren)).Total.Value, (await day.SessionAsync(day.Letters)).State));
    }

    [Fact]
    public async Task Removing_over_a_newer_text_is_held_back()
    {
        var (day, id) = await LoggedAsync();
        var stale = await day.Guardian.GetAsync($"/log/{id}");
        using var newer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}/change"), new() { ["Input.Length"] = "60" });
        using var answer = await day.Guardian.SubmitAsync(stale, within: "#why");
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal(60, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task Bad_input_is_refused_as_in_a_new_entry()
    {
        var (day, id) = await LoggedAsync();
        foreach (var (field, value) in new[] { ("Input.Date", "2026-03-13"), ("Input.OtherLength", "1441"), ("Input.What", ""), ("Why", new string('y', 201)), ("Version", "new") })
        {
            using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}/change"), new() { [field] = value });
            Assert.True(answer.StatusCode == HttpStatusCode.UnprocessableEntity, $"{field} answered {answer.StatusCode}");
        }

        using var longWhy = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), new() { ["why"] = new string('y', 201) }, "#why");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, longWhy.StatusCode);
        using var noVersion = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{id}"), new() { ["version"] = "new" }, "#why");
        Assert.Equal(HttpStatusCode.BadRequest, noVersion.StatusCode);
        Assert.Equal(1, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));
    }

    [Fact]
    public async Task Another_familys_entry_is_not_there()
    {
        var (theirs, id) = await LoggedAsync();
        var (mine, own) = await LoggedAsync();
        foreach (var path in new[] { $"/log/{id}", $"/log/{id}/change", $"/log?learner={theirs.Wren}" })
        {
            using var answer = await mine.Guardian.OpenAsync(path);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        var token = await mine.Guardian.TokenAsync();
        foreach (var handler in new[] { "Remove", "Restore" })
        {
            using var answer = await mine.Guardian.PostAsync($"/log/{id}?handler={handler}", [new("__RequestVerificationToken", token), new("version", "0")]);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        using var changed = await mine.Guardian.SubmitAsync(await mine.Guardian.GetAsync($"/log/{own}/change"), new() { ["Input.Who[0].LearnerId"] = theirs.Wren.ToString() });
        Assert.Equal(HttpStatusCode.NotFound, changed.StatusCode);
        Assert.Equal(40, (await theirs.LedgerAsync(theirs.Wren)).Total.Value);
    }

    private async Task<(PlannedDay Day, Guid Entry)> LoggedAsync()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Baked bread" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return (day, await day.Family.FromDbAsync(db => db.LogEntries.Select(e => e.Id).SingleAsync()));
    }
}
