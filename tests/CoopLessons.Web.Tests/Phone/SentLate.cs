using System.Net;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Prepare;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Phone;

/// <summary>Forms that a phone kept come by the same path as any other, and are answered so that a script can tell.</summary>
[Collection(SharedServer.Name)]
public sealed class SentLate(TestServer server)
{
    private static readonly DateTimeOffset Evening = TestServer.Start.AddHours(-16);

    [Fact]
    public async Task A_tick_is_saved_once_however_often_it_comes_and_says_when_it_was_made()
    {
        var day = await PlannedDay.MakeAsync(server);
        var entry = Guid.NewGuid();
        var fields = await DoneAsync(day.Guardian, day.ReadAloud, entry);
        for (var i = 0; i < 3; i++)
        {
            var word = await day.Guardian.SendAsync("/today/2026-03-12?handler=Done", fields, entry, Evening, day.Family.Id);
            Assert.Equal((200, true, entry), (word.Status, word.Answer!.Saved, word.Answer.Item));
            Assert.Equal(entry.ToString(), Assert.Single(word.Headers.GetValues("Kept-Item")));
            Assert.Equal("here", Assert.Single(word.Headers.GetValues("CoopLessons")));
        }

        var revision = Assert.Single(await day.Family.FromDbAsync(db => db.HistoryAsync(entry, default)));
        Assert.Equal((Evening.UtcDateTime, entry), (revision.OnPhoneAt, revision.SentAs));
        Assert.InRange(revision.WrittenAt, TestServer.Start.UtcDateTime, TestServer.Start.UtcDateTime.AddMinutes(1));
        var page = await day.Guardian.GetAsync($"/log/{entry}");
        Assert.Contains("Wednesday 11 March, 18:00, by Iris Alder; it reached the server on Thursday 12 March, 10:", Words(page.QuerySelector("ol.rows > li")!.TextContent), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fifty_sendings_in_the_same_moment_leave_one_entry()
    {
        var day = await PlannedDay.MakeAsync(server);
        var entry = Guid.NewGuid();
        var fields = await DoneAsync(day.Guardian, day.ReadAloud, entry);
        var words = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => day.Guardian.SendAsync("/today/2026-03-12?handler=Done", fields, entry)));
        Assert.All(words, w => Assert.True(w.Answer?.Saved, $"{w.Status}"));
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task What_is_refused_comes_back_with_the_sentence_and_the_field_it_belongs_to()
    {
        var day = await PlannedDay.MakeAsync(server);
        var fields = await LogAsync(day, "Baked bread", ("Input.Date", "2026-03-20"));
        var word = await day.Guardian.SendAsync("/log/new", fields, Guid.NewGuid());
        Assert.Equal((422, false), (word.Status, word.Answer!.Saved));
        var fault = Assert.Single(word.Answer.Faults!);
        Assert.Equal("Input.Date", fault.Field);
        Assert.StartsWith("That day is still to come", fault.Says, StringComparison.Ordinal);
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task What_belongs_to_something_that_is_gone_is_refused_in_words()
    {
        var day = await PlannedDay.MakeAsync(server);
        var word = await day.Guardian.SendAsync("/today/2026-03-12?handler=Done", await DoneAsync(day.Guardian, Guid.NewGuid(), Guid.NewGuid()), Guid.NewGuid());
        Assert.Equal((404, "What this belongs to is not there any more."), (word.Status, Assert.Single(word.Answer!.Faults!).Says));
    }

    [Fact]
    public async Task A_token_that_is_too_old_asks_for_a_new_one_and_loses_nothing()
    {
        var day = await PlannedDay.MakeAsync(server);
        var fields = (await DoneAsync(day.Guardian, day.ReadAloud, Guid.NewGuid())).Where(f => f.Key != "__RequestVerificationToken");
        var word = await day.Guardian.SendAsync("/today/2026-03-12?handler=Done", fields, Guid.NewGuid());
        Assert.Equal((400, false, true), (word.Status, word.Answer!.Saved, word.Answer.StaleToken));
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task A_tick_of_the_shopping_list_is_answered_like_any_form()
    {
        var family = await BakingFamily.MakeAsync(server);
        var id = Guid.NewGuid();
        KeyValuePair<string, string>[] fields = [new("on", family.Flour.ToString()), new("__RequestVerificationToken", (await family.Guardian.HereAsync()).GetProperty("token").GetString()!)];
        for (var i = 0; i < 2; i++)
        {
            var word = await family.Guardian.SendAsync(BakingFamily.List + "?handler=Ticks", fields, id);
            Assert.Equal((200, true, id), (word.Status, word.Answer!.Saved, word.Answer.Item));
        }

        Assert.Equal([family.Flour], await family.TicksAsync());
    }

    [Fact]
    public async Task Without_a_sign_in_the_answer_says_so_and_is_no_page()
    {
        var stranger = server.Visitor();
        using var here = await stranger.OpenAsync("/phone/here");
        using var pages = await stranger.OpenAsync("/phone/pages");
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized), (here.StatusCode, pages.StatusCode));
        Assert.Equal("{\"signIn\":true}", await here.Content.ReadAsStringAsync());
        var word = await stranger.SendAsync("/log/new", [], Guid.NewGuid());
        Assert.Equal(401, word.Status);
    }

    [Fact]
    public async Task What_was_done_for_one_family_is_not_written_for_another()
    {
        var day = await PlannedDay.MakeAsync(server);
        var word = await day.Guardian.SendAsync("/log/new", await LogAsync(day, "Baked bread"), Guid.NewGuid(), family: Guid.NewGuid());
        Assert.Equal(421, word.Status);
        Assert.Null(word.Answer);
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task The_next_page_says_what_was_sent_at_once_and_nothing_of_a_late_sending()
    {
        var day = await PlannedDay.MakeAsync(server);
        var word = await day.Guardian.SendAsync("/log/new", await LogAsync(day, "Baked bread"), Guid.NewGuid());
        Assert.Equal("/today/2026-03-12", word.Answer!.At);
        Assert.Equal("“Baked bread” is logged.", (await day.TodayAsync()).GetElementById("said")!.TextContent.Trim());
        var late = await day.Guardian.SendAsync("/log/new", await LogAsync(day, "Fed the hens"), Guid.NewGuid(), Evening);
        Assert.True(late.Answer!.Saved);
        Assert.Equal("", (await day.TodayAsync()).GetElementById("said")!.TextContent.Trim());
    }

    [Fact]
    public async Task Fields_that_only_one_phone_changed_are_put_together()
    {
        var (day, entry) = await LoggedAsync();
        var from = await day.Guardian.GetAsync($"/log/{entry}/change");
        using var first = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{entry}/change"), new() { ["Input.Length"] = "60" });
        var word = await day.Guardian.SendAsync($"/log/{entry}/change", Form(from, ("Input.Note", "Rye this time")), Guid.NewGuid(), Evening);
        Assert.True(word.Answer!.Saved);
        var holds = Assert.Single(await day.Family.FromDbAsync(db => db.Standing().ToListAsync()));
        Assert.Equal((3, "Rye this time", false), (holds.Number, holds.Note, holds.Aside));
        Assert.Equal([60, 60, 60], holds.Times.Select(t => t.Minutes));
    }

    [Fact]
    public async Task A_change_sent_twice_is_one_writing_even_after_another_came_between()
    {
        var (day, entry) = await LoggedAsync();
        var from = await day.Guardian.GetAsync($"/log/{entry}/change");
        var id = Guid.NewGuid();
        var fields = Form(from, ("Input.Length", "90"));
        Assert.True((await day.Guardian.SendAsync($"/log/{entry}/change", fields, id)).Answer!.Saved);
        using var between = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{entry}/change"), new() { ["Input.Length"] = "30" });
        Assert.True((await day.Guardian.SendAsync($"/log/{entry}/change", fields, id)).Answer!.Saved);
        var history = await day.Family.FromDbAsync(db => db.HistoryAsync(entry, default));
        Assert.Equal([40, 90, 30], history.Select(r => r.Times[0].Minutes));
    }

    [Fact]
    public async Task The_same_field_changed_otherwise_keeps_both_and_counts_the_first_until_a_guardian_says()
    {
        var (day, entry) = await CollidedAsync();
        Assert.Equal(60, (await day.LedgerAsync(day.Wren)).Total.Value);
        var today = await day.TodayAsync();
        Assert.Contains("“Baked bread” was written twice", today.Body!.TextContent, StringComparison.Ordinal);
        var page = await day.Guardian.GetAsync($"/log/{entry}/versions");
        Assert.Contains("minutes 60 → 90", page.Body!.TextContent, StringComparison.Ordinal);

        using var answer = await day.Guardian.SubmitAsync(page, within: "input[name=take][value=true]");
        Assert.Equal($"/log/{entry}", answer.Headers.Location!.OriginalString);
        Assert.Equal(90, (await day.LedgerAsync(day.Wren)).Total.Value);
        var history = await day.Family.FromDbAsync(db => db.HistoryAsync(entry, default));
        Assert.Equal([(1, false, null), (2, false, null), (3, true, null), (4, false, 3)], history.Select(r => (r.Number, r.Aside, r.Answers)));
        Assert.DoesNotContain("was written twice", (await day.TodayAsync()).Body!.TextContent, StringComparison.Ordinal);
        using var again = await day.Guardian.OpenAsync($"/log/{entry}/versions");
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
    }

    [Fact]
    public async Task Keeping_what_holds_answers_as_well_and_a_second_press_answers_nothing()
    {
        var (day, entry) = await CollidedAsync();
        var page = await day.Guardian.GetAsync($"/log/{entry}/versions");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await day.Guardian.SubmitAsync(page, within: "input[name=take][value=false]");
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        Assert.Equal(60, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(4, (await day.Family.FromDbAsync(db => db.HistoryAsync(entry, default))).Count);
    }

    [Fact]
    public async Task Only_a_guardian_says_which_holds()
    {
        var (day, entry) = await CollidedAsync();
        var helper = await server.HelperAsync(day.Family);
        using var page = await helper.OpenAsync($"/log/{entry}/versions");
        Assert.Equal(HttpStatusCode.Forbidden, page.StatusCode);
        using var post = await helper.PostAsync($"/log/{entry}/versions", [new("number", "3"), new("take", "true"), new("version", "3"), new("__RequestVerificationToken", await helper.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, post.StatusCode);
    }

    [Fact]
    public async Task A_change_of_what_was_removed_meanwhile_is_kept_and_asked_about()
    {
        var (day, entry) = await LoggedAsync();
        var from = await day.Guardian.GetAsync($"/log/{entry}/change");
        using var removed = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{entry}"), within: "input[name=why]");
        Assert.True((await day.Guardian.SendAsync($"/log/{entry}/change", Form(from, ("Input.Length", "90")), Guid.NewGuid())).Answer!.Saved);
        Assert.Equal(0, (await day.LedgerAsync(day.Wren)).Total.Value);
        var page = await day.Guardian.GetAsync($"/log/{entry}/versions");
        using var answer = await day.Guardian.SubmitAsync(page, within: "input[name=take][value=true]");
        Assert.Equal(90, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task Two_phones_that_did_the_same_session_make_one_entry_and_ask_where_they_differ()
    {
        var day = await PlannedDay.MakeAsync(server);
        var fields = await LogAsync(day, "Read aloud: chapter 7", ("Session", day.ReadAloud.ToString()));
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        var word = await day.Guardian.SendAsync("/log/new", fields, Guid.NewGuid(), Evening);
        Assert.True(word.Answer!.Saved, string.Join(" ", word.Answer.Faults?.Select(f => f.Says) ?? []));
        Assert.Equal(1, await day.EntriesAsync());
        var aside = Assert.Single(await day.Family.FromDbAsync(db => db.Unanswered().ToListAsync()));
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.ReadAloud)).State);
        Assert.Equal((await day.SessionAsync(day.ReadAloud)).EntryId, aside.EntryId);
    }

    private async Task<(PlannedDay Day, Guid Entry)> CollidedAsync()
    {
        var (day, entry) = await LoggedAsync();
        var from = await day.Guardian.GetAsync($"/log/{entry}/change");
        using var first = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{entry}/change"), new() { ["Input.Length"] = "60" });
        Assert.True((await day.Guardian.SendAsync($"/log/{entry}/change", Form(from, ("Input.Length", "90")), Guid.NewGuid(), Evening)).Answer!.Saved);
        return (day, entry);
    }

    private async Task<(PlannedDay Day, Guid Entry)> LoggedAsync()
    {
        var day = await PlannedDay.MakeAsync(server);
        var entry = Guid.NewGuid();
        Assert.True((await day.Guardian.SendAsync("/log/new", await LogAsync(day, "Baked bread", ("EntryId", entry.ToString())), entry)).Answer!.Saved);
        return (day, entry);
    }

    private static async Task<IReadOnlyList<KeyValuePair<string, string>>> DoneAsync(Visitor visitor, Guid session, Guid entry) =>
    [
        new("sessionId", session.ToString()), new("entryId", entry.ToString()), new("__RequestVerificationToken", (await visitor.HereAsync()).GetProperty("token").GetString()!),
    ];

    private static async Task<IReadOnlyList<KeyValuePair<string, string>>> LogAsync(PlannedDay day, string what, params (string Name, string? Value)[] more) =>
        Form(await day.Guardian.GetAsync("/log/new"), [("Input.What", what), .. more]);

    /// <summary>The fields of a page's form, some filled in otherwise.</summary>
    private static List<KeyValuePair<string, string>> Form(AngleSharp.Dom.IDocument page, params (string Name, string? Value)[] fill)
    {
        var fields = Visitor.FieldsOf(page.QuerySelector("main form[data-keep]")!).ToList();
        foreach (var (name, value) in fill)
        {
            fields.RemoveAll(f => f.Key == name);
            if (value is not null)
                fields.Add(new(name, value));
        }

        return fields;
    }

    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
