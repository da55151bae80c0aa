using System.Net;
using CoopLessons.Data.Log;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.OwnLists;

[Collection(PlanningServer.Name)]
public sealed class What_a_child_says(TestServer server)
{
    private const string Confirm = "form[action$='handler=Confirm']";

    [Fact]
    public async Task Waits_and_counts_nowhere()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.Letters, new() { ["Words"] = "All of the B." });
        Assert.Equal(HttpStatusCode.Redirect, said.StatusCode);
        Assert.Equal(0, await day.EntriesAsync());
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.Letters)).State);
        Assert.Contains("a grown-up will look", (await wren.GetAsync("/mine")).QuerySelector(ListFamily.Thing(day.Letters))!.TextContent, StringComparison.Ordinal);
        var today = await day.TodayAsync();
        Assert.Equal("1 thing waits for you", today.QuerySelector("#waits-head")!.TextContent);
        Assert.Contains("All of the B.", today.QuerySelector("#waits")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sent_twice_is_said_once_and_said_again_on_another_page_is_still_said_once()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        var (page, other) = (await wren.GetAsync("/mine"), await wren.GetAsync("/mine"));
        foreach (var from in new[] { page, page, other })
        {
            using var answer = await wren.SubmitAsync(from, within: ListFamily.Thing(day.Letters));
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        Assert.Equal(1, await day.Family.FromDbAsync(db => db.ChildrenSaid.CountAsync()));
    }

    [Fact]
    public async Task Can_be_taken_back_while_it_waits()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.Letters);
        using var back = await wren.SubmitAsync(await wren.GetAsync("/mine"), within: $"{ListFamily.Thing(day.Letters)} form[action$='handler=TakeBack']");
        Assert.Equal(SaidState.TakenBack, (await ListFamily.SaidAsync(day)).State);
        Assert.Null((await day.TodayAsync()).QuerySelector("#waits"));
        Assert.NotNull((await wren.GetAsync("/mine")).QuerySelector($"{ListFamily.Thing(day.Letters)} form[action$='handler=Did']"));
    }

    [Fact]
    public async Task Confirmed_it_is_logged_as_planned_for_that_child_alone()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.ReadAloud);
        using var confirmed = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        Assert.Equal(HttpStatusCode.Redirect, confirmed.StatusCode);
        Assert.Equal(30, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(0, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.ReadAloud)).State);
        Assert.Equal(SaidState.Confirmed, (await ListFamily.SaidAsync(day)).State);
        Assert.Contains("done", (await wren.GetAsync("/mine")).QuerySelector(ListFamily.Thing(day.ReadAloud))!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sibling_who_says_the_same_is_added_to_the_entry()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var first = await ListFamily.SayAsync(wren, day.ReadAloud);
        using var confirmed = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        var linnet = await ListFamily.OpenedAsync(day, day.Linnet, ListFamily.LinnetsPin);
        using var second = await ListFamily.SayAsync(linnet, day.ReadAloud);
        using var joined = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        Assert.Equal(1, await day.EntriesAsync());
        Assert.Equal(30, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(30, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(2, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));
    }

    [Fact]
    public async Task Undo_takes_out_of_the_log_what_confirming_put_in_and_leaves_the_sibling()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var first = await ListFamily.SayAsync(wren, day.ReadAloud);
        using var confirmed = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        var linnet = await ListFamily.OpenedAsync(day, day.Linnet, ListFamily.LinnetsPin);
        using var second = await ListFamily.SayAsync(linnet, day.ReadAloud);
        using var joined = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        var (wrens, linnets) = await day.Family.FromDbAsync(async db => (await db.ChildrenSaid.SingleAsync(s => s.LearnerId == day.Wren), await db.ChildrenSaid.SingleAsync(s => s.LearnerId == day.Linnet)));

        using var undone = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/family/said"), within: $"#said-{linnets.Id:N} form[action$='handler=Undo']");
        Assert.Equal(30, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(0, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.ReadAloud)).State);

        using var last = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/family/said"), within: $"#said-{wrens.Id:N} form[action$='handler=Undo']");
        Assert.Equal(0, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(SessionState.Planned, (await day.SessionAsync(day.ReadAloud)).State);
        Assert.Equal(2, await day.Family.FromDbAsync(db => db.ChildrenSaid.CountAsync(s => s.State == SaidState.Waiting)));
    }

    [Fact]
    public async Task Two_guardians_who_confirm_at_once_log_once()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.ReadAloud);
        // Each page has an entry id of its own.
        var pages = new[] { await day.TodayAsync(), await day.TodayAsync(), await day.Guardian.GetAsync("/family/said") };
        var answers = await Task.WhenAll(pages.Concat(pages).Select(p => day.Guardian.SubmitAsync(p, within: Confirm)));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal(1, await day.EntriesAsync());
        Assert.Equal(30, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task What_a_parent_ticked_off_already_is_confirmed_and_written_once()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.ReadAloud);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        using var confirmed = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        Assert.Equal(1, await day.Family.FromDbAsync(db => db.LogRevisions.CountAsync()));
        // Undone, the parent's own entry stays.
        using var undone = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/family/said"), within: "form[action$='handler=Undo']");
        Assert.Equal(30, (await day.LedgerAsync(day.Wren)).Total.Value);
    }

    [Fact]
    public async Task Not_yet_with_a_word_is_read_by_that_child_who_can_say_it_again()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.ReadAloud);
        using var notYet = await day.Guardian.SubmitAsync(await day.TodayAsync(), new() { ["answer"] = "Chapter 7 is still to come." }, within: "form[action$='handler=NotYet']");
        Assert.Equal(HttpStatusCode.Redirect, notYet.StatusCode);
        Assert.Contains("Chapter 7 is still to come.", (await wren.GetAsync("/mine")).QuerySelector(ListFamily.Thing(day.ReadAloud))!.TextContent, StringComparison.Ordinal);
        var linnet = await ListFamily.OpenedAsync(day, day.Linnet, ListFamily.LinnetsPin);
        Assert.DoesNotContain("Chapter 7 is still to come.", (await linnet.GetAsync("/mine")).Body!.TextContent, StringComparison.Ordinal);
        using var again = await ListFamily.SayAsync(wren, day.ReadAloud);
        Assert.Equal(1, await day.Family.FromDbAsync(db => db.ChildrenSaid.CountAsync(s => s.State == SaidState.Waiting)));
    }

    [Fact]
    public async Task With_changes_fills_the_log_s_form_and_what_is_saved_there_decides_it()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.ReadAloud, new() { ["Words"] = "Twice." });
        var id = (await ListFamily.SaidAsync(day)).Id;
        var form = await day.Guardian.GetAsync($"/log/new?said={id}");
        using var saved = await day.Guardian.SubmitAsync(form, new() { ["Input.Length"] = "60" });
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Equal(60, (await day.LedgerAsync(day.Wren)).Total.Value);
        Assert.Equal(0, (await day.LedgerAsync(day.Linnet)).Total.Value);
        Assert.Equal("Twice.", await day.Family.FromDbAsync(db => db.LogRevisions.Select(r => r.Note).SingleAsync()));
        Assert.Equal(SaidState.Changed, (await ListFamily.SaidAsync(day)).State);
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.ReadAloud)).State);
        using var replay = await day.Guardian.SubmitAsync(form, new() { ["Input.Length"] = "60" });
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task What_was_not_planned_needs_the_form()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await wren.SubmitAsync(await wren.GetAsync("/mine"), new() { ["What"] = "Counted the ducks" }, within: "#besides form.form");
        Assert.Equal(HttpStatusCode.Redirect, said.StatusCode);
        using var confirmed = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: Confirm);
        Assert.Equal($"/log/new?said={(await ListFamily.SaidAsync(day)).Id}", confirmed.Headers.Location!.OriginalString);
        Assert.Equal(0, await day.EntriesAsync());
    }

    [Fact]
    public async Task Something_that_can_hurt_is_not_said_without_the_grown_up_who_was_there()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        Assert.Contains("Only with a grown-up", (await wren.GetAsync("/mine")).QuerySelector(ListFamily.Thing(day.Sourdough))!.TextContent, StringComparison.Ordinal);
        using var alone = await ListFamily.SayAsync(wren, day.Sourdough);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, alone.StatusCode);
        Assert.Contains("Say which grown-up was with you.", (await Visitor.ParseAsync(alone)).QuerySelector($"{ListFamily.Thing(day.Sourdough)} .fault")!.TextContent, StringComparison.Ordinal);
        using var with = await ListFamily.SayAsync(wren, day.Sourdough, new() { ["With"] = "Iris Alder" });
        Assert.Equal(HttpStatusCode.Redirect, with.StatusCode);
        Assert.Equal("Iris Alder", (await ListFamily.SaidAsync(day)).With);
    }

    [Fact]
    public async Task Another_child_s_things_are_nowhere()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await ListFamily.SayAsync(wren, day.ReadAloud);
        var wrens = (await ListFamily.SaidAsync(day)).Id;
        var linnet = await ListFamily.OpenedAsync(day, day.Linnet, ListFamily.LinnetsPin);
        var page = await linnet.GetAsync("/mine");
        Assert.Null(page.QuerySelector(ListFamily.Thing(day.Letters)));
        var token = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var session = await linnet.PostAsync("/mine?handler=Did", [new("Id", Guid.CreateVersion7().ToString()), new("SessionId", day.Letters.ToString()), new("__RequestVerificationToken", token)]);
        Assert.Equal(HttpStatusCode.NotFound, session.StatusCode);
        using var back = await linnet.PostAsync("/mine?handler=TakeBack", [new("saidId", wrens.ToString()), new("__RequestVerificationToken", token)]);
        Assert.Equal(HttpStatusCode.NotFound, back.StatusCode);
        Assert.Equal(SaidState.Waiting, (await ListFamily.SaidAsync(day)).State);
    }

    [Theory]
    [InlineData(ReadingLevel.Pictures, "Cook", "")]
    [InlineData(ReadingLevel.ShortWords, "Start the sourdough", "Stirs and names what it smells like.")]
    [InlineData(ReadingLevel.AllWords, "Start the sourdough", "Cover it.")]
    public async Task Is_written_as_the_child_reads(ReadingLevel reading, string title, string line)
    {
        var day = await ListFamily.MakeAsync(server, reading);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        var thing = (await wren.GetAsync("/mine")).QuerySelector(ListFamily.Thing(day.Sourdough))!;
        Assert.Equal($"9:00 {title}", thing.QuerySelector(".thing-title")!.TextContent.Trim());
        Assert.Contains(line, thing.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Weighs the flour", thing.TextContent, StringComparison.Ordinal);
        Assert.NotNull(thing.QuerySelector(".thing-picture svg"));
        if (reading == ReadingLevel.Pictures)
            Assert.All(thing.QuerySelectorAll(".thing-words p"), p => Assert.InRange(p.TextContent.Replace("9:00", "", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries).Length, 1, 2));
    }
}
