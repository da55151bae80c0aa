using System.Net;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.OwnLists;

[Collection(PlanningServer.Name)]
public sealed class The_family_s_tablet(TestServer server)
{
    [Fact]
    public async Task Shows_the_names_that_were_chosen_and_signs_the_guardian_out()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        var page = await tablet.GetAsync("/tablet");
        Assert.Equal(["Wren", "Linnet"], page.QuerySelectorAll(".door").Select(d => d.TextContent.Trim()));
        using var today = await tablet.OpenAsync("/today");
        Assert.Equal(HttpStatusCode.Forbidden, today.StatusCode);
        using var start = await tablet.OpenAsync("/");
        Assert.Equal("/tablet", start.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_child_without_a_chosen_name_is_not_there()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        using var heron = await tablet.OpenAsync($"/tablet/{day.Heron}");
        Assert.Equal(HttpStatusCode.NotFound, heron.StatusCode);
    }

    [Fact]
    public async Task The_right_PIN_opens_that_child_s_list_and_no_other()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        using var others = await ListFamily.OpenAsync(tablet, day.Linnet, ListFamily.WrensPin);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, others.StatusCode);
        using var own = await ListFamily.OpenAsync(tablet, day.Wren, ListFamily.WrensPin);
        Assert.Equal("/mine", own.Headers.Location!.OriginalString);
        var page = await tablet.GetAsync("/mine");
        Assert.Equal("Wren", page.QuerySelector("h1")!.TextContent);
        Assert.DoesNotContain("Linnet", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Finished_closes_the_list()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var finished = await tablet.SubmitAsync(await tablet.GetAsync("/mine"), within: "form[action$='handler=Finished']");
        Assert.Equal("/tablet", finished.Headers.Location!.OriginalString);
        using var mine = await tablet.OpenAsync("/mine");
        Assert.Equal(HttpStatusCode.Forbidden, mine.StatusCode);
    }

    [Fact]
    public async Task A_page_of_one_child_is_not_taken_for_another()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        var wrens = await tablet.GetAsync("/mine");
        using var finished = await tablet.SubmitAsync(wrens, within: "form[action$='handler=Finished']");
        using var opened = await ListFamily.OpenAsync(tablet, day.Linnet, ListFamily.LinnetsPin);
        using var late = await tablet.SubmitAsync(wrens, within: ListFamily.Thing(day.ReadAloud));
        Assert.Equal(HttpStatusCode.BadRequest, late.StatusCode);
        Assert.Equal(0, await day.Family.FromDbAsync(db => db.ChildrenSaid.CountAsync()));
    }

    [Fact]
    public async Task Ended_by_the_guardian_it_is_out_with_the_next_request()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var ended = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/family/tablet"), within: "form[action$='handler=End']");
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        using var mine = await tablet.OpenAsync("/mine");
        Assert.Contains("/sign-in", mine.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_stands_among_its_maker_s_devices_and_ends_from_there()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        using var ended = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/person"), within: "form[action$='handler=EndTablet']");
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        using var shown = await tablet.OpenAsync("/tablet");
        Assert.Contains("/sign-in", shown.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_ends_when_its_maker_is_no_guardian_any_more()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.Memberships.SingleAsync(m => m.PersonId == day.Family.GuardianId)).Become(Role.Helper);
            await db.SaveChangesAsync();
        });
        using var mine = await tablet.OpenAsync("/mine");
        Assert.Contains("/sign-in", mine.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_child_who_is_set_aside_loses_the_list()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        await ListFamily.SetAsideAsync(day, day.Wren);
        using var mine = await tablet.OpenAsync("/mine");
        Assert.Equal(HttpStatusCode.Forbidden, mine.StatusCode);
        Assert.Equal("Linnet", Assert.Single((await tablet.GetAsync("/tablet")).QuerySelectorAll(".door")).TextContent.Trim());
    }

    [Fact]
    public async Task A_list_that_is_turned_off_closes()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var off = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/family/lists/{day.Wren}"), new() { ["Input.Shown"] = "false" }, within: "form[action$='handler=Save']");
        Assert.Equal(HttpStatusCode.Redirect, off.StatusCode);
        using var mine = await tablet.OpenAsync("/mine");
        Assert.Equal(HttpStatusCode.Forbidden, mine.StatusCode);
    }

    [Fact]
    public async Task A_lent_list_opens_without_a_PIN_and_is_given_back_when_finished()
    {
        var day = await ListFamily.MakeAsync(server);
        using var lent = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/family/lists/{day.Heron}"), within: "form[action$='handler=Lend']");
        Assert.Equal("/mine", lent.Headers.Location!.OriginalString);
        Assert.Equal("Heron", (await day.Guardian.GetAsync("/mine")).QuerySelector("h1")!.TextContent);
        using var today = await day.Guardian.OpenAsync("/today");
        Assert.Equal(HttpStatusCode.Forbidden, today.StatusCode);
        using var finished = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/mine"), within: "form[action$='handler=Finished']");
        using var after = await day.Guardian.OpenAsync("/mine");
        Assert.Contains("/sign-in", after.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_helper_can_neither_make_a_tablet_nor_see_the_lists()
    {
        var day = await ListFamily.MakeAsync(server);
        var helper = await server.HelperAsync(day.Family);
        foreach (var path in new[] { "/family/tablet", "/family/lists", "/family/said", $"/family/lists/{day.Wren}" })
        {
            using var answer = await helper.OpenAsync(path);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Nobody_is_invited_as_a_learner()
    {
        var day = await ListFamily.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/family/people"), new() { ["Input.Name"] = "Basil", ["Input.Role"] = "Learner" }, within: "form[action$='handler=Invite']");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(0, await day.Family.FromDbAsync(db => db.Invitations.CountAsync()));
    }
}

/// <summary>A server of its own, since its clock is moved.</summary>
public sealed class A_tablet_over_time
{
    [Fact]
    public async Task A_child_who_does_nothing_for_half_an_hour_is_finished()
    {
        await using var server = new OwnServer();
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        server.Clock.Advance(TimeSpan.FromMinutes(20));
        await tablet.GetAsync("/mine");
        server.Clock.Advance(TimeSpan.FromMinutes(29));
        await tablet.GetAsync("/mine");
        server.Clock.Advance(TimeSpan.FromMinutes(30));
        using var late = await tablet.OpenAsync("/mine");
        Assert.Equal(HttpStatusCode.Forbidden, late.StatusCode);
        Assert.Equal(2, (await tablet.GetAsync("/tablet")).QuerySelectorAll(".door").Length);
    }

    [Fact]
    public async Task It_ends_after_ninety_days_without_use()
    {
        await using var server = new OwnServer();
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        server.Clock.Advance(TimeSpan.FromDays(60));
        await tablet.GetAsync("/tablet");
        server.Clock.Advance(TimeSpan.FromDays(89));
        await tablet.GetAsync("/tablet");
        server.Clock.Advance(TimeSpan.FromDays(90));
        using var late = await tablet.OpenAsync("/tablet");
        Assert.Contains("/sign-in", late.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lent_list_closes_after_two_hours_however_much_it_is_used()
    {
        await using var server = new OwnServer();
        var day = await ListFamily.MakeAsync(server);
        using var lent = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/family/lists/{day.Heron}"), within: "form[action$='handler=Lend']");
        server.Clock.Advance(TimeSpan.FromMinutes(119));
        await day.Guardian.GetAsync("/mine");
        server.Clock.Advance(TimeSpan.FromMinutes(1));
        using var late = await day.Guardian.OpenAsync("/mine");
        Assert.Contains("/sign-in", late.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_five_wrong_PINs_the_PIN_rests_and_each_further_one_makes_the_rest_longer()
    {
        await using var server = new OwnServer();
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        for (var i = 0; i < OwnList.TriesBeforeWait - 1; i++)
        {
            using var wrong = await ListFamily.OpenAsync(tablet, day.Wren, "5555");
            Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        }

        // Minutes: 1, 2, 4.
        foreach (var minutes in new[] { 1, 2, 4 })
        {
            using var rests = await ListFamily.OpenAsync(tablet, day.Wren, "5555");
            Assert.Equal(HttpStatusCode.TooManyRequests, rests.StatusCode);
            server.Clock.Advance(TimeSpan.FromMinutes(minutes) - TimeSpan.FromSeconds(1));
            using var right = await ListFamily.OpenAsync(tablet, day.Wren, ListFamily.WrensPin);
            Assert.Equal(HttpStatusCode.TooManyRequests, right.StatusCode);
            server.Clock.Advance(TimeSpan.FromSeconds(1));
        }

        using var opened = await ListFamily.OpenAsync(tablet, day.Wren, ListFamily.WrensPin);
        Assert.Equal("/mine", opened.Headers.Location!.OriginalString);
        Assert.Equal(0, await day.Family.FromDbAsync(db => db.OwnLists.Where(l => l.LearnerId == day.Wren).Select(l => l.WrongPins).SingleAsync()));
    }
}

/// <summary>PINs that are tried out.</summary>
[Collection(PlanningServer.Name)]
public sealed class Wrong_PINs(TestServer server)
{
    [Fact]
    public async Task Many_at_once_are_no_more_tries_than_one_after_the_other()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        var page = await tablet.GetAsync($"/tablet/{day.Wren}");
        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => tablet.SubmitAsync(page, new() { ["Pin"] = "5555" })));
        Assert.All(answers, a => Assert.NotEqual(HttpStatusCode.Redirect, a.StatusCode));
        Assert.InRange(await day.Family.FromDbAsync(db => db.OwnLists.Where(l => l.LearnerId == day.Wren).Select(l => l.WrongPins).SingleAsync()), 1, OwnList.TriesBeforeWait);
    }

    [Fact]
    public async Task A_rest_of_one_child_is_none_of_another()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        for (var i = 0; i < OwnList.TriesBeforeWait; i++)
            (await ListFamily.OpenAsync(tablet, day.Wren, "5555")).Dispose();
        using var linnet = await ListFamily.OpenAsync(tablet, day.Linnet, ListFamily.LinnetsPin);
        Assert.Equal("/mine", linnet.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_guardian_s_new_PIN_opens_at_once()
    {
        var day = await ListFamily.MakeAsync(server);
        var tablet = await ListFamily.TabletAsync(day);
        for (var i = 0; i < OwnList.TriesBeforeWait; i++)
            (await ListFamily.OpenAsync(tablet, day.Wren, "5555")).Dispose();
        using var set = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/family/lists/{day.Wren}"), new() { ["Input.Pin"] = "731946" }, within: "form[action$='handler=Save']");
        Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
        using var opened = await ListFamily.OpenAsync(tablet, day.Wren, "731946");
        Assert.Equal("/mine", opened.Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData("123")]
    [InlineData("1234567")]
    [InlineData("12a4")]
    [InlineData("1111")]
    [InlineData("3456")]
    [InlineData("9876")]
    public async Task A_PIN_that_is_none_or_is_soon_guessed_is_not_set(string pin)
    {
        var day = await ListFamily.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/family/lists/{day.Heron}"), new() { ["Input.Pin"] = pin }, within: "form[action$='handler=Save']");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelector("#pin-fault")!.TextContent);
    }

    [Fact]
    public async Task A_PIN_lies_in_the_database_neither_readable_nor_as_a_hash_alone()
    {
        var day = await ListFamily.MakeAsync(server);
        var kept = await day.Family.FromDbAsync(db => db.OwnLists.Where(l => l.LearnerId == day.Wren).Select(l => l.Pin).SingleAsync());
        Assert.DoesNotContain(ListFamily.WrensPin, kept, StringComparison.Ordinal);
        // What the framework's hasher leaves begins so; sealed, it does not.
        Assert.False(kept.StartsWith("AQAAAA", StringComparison.Ordinal));
    }
}
