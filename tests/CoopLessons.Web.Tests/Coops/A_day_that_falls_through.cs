using System.Net;
using CoopLessons.Core.Coop;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Snow on a Thursday: Alder leads and calls off, Birch has Wren of 8 and Finch of 11.</summary>
[Collection(SharedServer.Name)]
public sealed class A_day_that_falls_through(TestServer server)
{
    [Fact]
    public async Task Is_told_to_all_by_one_choice_and_one_tap_and_each_family_sees_what_its_children_can_do()
    {
        var day = await SnowDay.MakeAsync(server);
        var page = await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off");
        var main = page.QuerySelector("main")!.TextContent;
        Assert.Contains("2 l of milk", main, StringComparison.Ordinal);
        Assert.Contains("with Iris", main, StringComparison.Ordinal);
        Assert.Contains("Nothing is written for home in “Maps”", main, StringComparison.Ordinal);
        using var off = await day.Coop.Leader.Guardian.SubmitAsync(page, new() { ["Input.Why"] = "snow" });
        Assert.Equal(HttpStatusCode.Redirect, off.StatusCode);

        var notice = await day.Birch.Guardian.GetAsync(off.Headers.Location!.OriginalString);
        Assert.Equal("No meeting on Thursday, 12 March: snow", notice.QuerySelector("h1")!.TextContent);
        var (wren, finch) = (Section(notice, "Wren at home"), Section(notice, "Finch at home"));
        Assert.Contains("Shape one roll.", wren, StringComparison.Ordinal);
        Assert.DoesNotContain("Weigh a loaf", wren, StringComparison.Ordinal);
        Assert.DoesNotContain("Draw the way", wren, StringComparison.Ordinal);
        Assert.Contains("Weigh a loaf", finch, StringComparison.Ordinal);
        Assert.Contains("Draw the way to the mill.", finch, StringComparison.Ordinal);
        Assert.Contains("Nothing is written for home.", finch, StringComparison.Ordinal);
        // Wren's allergy is known to its own family, whether or not the co-op is shown it.
        Assert.Contains("Flour holds wheat: use Rice flour instead", wren, StringComparison.Ordinal);
        Assert.Contains("2 l of milk", notice.QuerySelector("main")!.TextContent, StringComparison.Ordinal);

        var leaders = (await day.Coop.Leader.Guardian.GetAsync(off.Headers.Location!.OriginalString)).QuerySelector("main")!.TextContent;
        Assert.DoesNotContain("Wren", leaders, StringComparison.Ordinal);
        Assert.Contains("Shape one roll.", (await day.Birch.Guardian.GetAsync(day.Path + "/home")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_told_once_by_two_leaders_and_however_often_it_is_sent()
    {
        var day = await SnowDay.MakeAsync(server);
        await day.Coop.PartAsync(day.Birch, CoopPart.Leader);
        var (one, other) = (await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off"), await day.Birch.Guardian.GetAsync(day.Path + "/off"));
        var answers = await Task.WhenAll(
            day.Coop.Leader.Guardian.SubmitAsync(one, new() { ["Input.Why"] = "snow" }), day.Coop.Leader.Guardian.SubmitAsync(one, new() { ["Input.Why"] = "snow" }),
            day.Birch.Guardian.SubmitAsync(other, new() { ["Input.Why"] = "illness" }));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Single(await day.NoticesAsync());
    }

    [Fact]
    public async Task Is_called_off_by_leaders_alone_who_say_why()
    {
        var day = await SnowDay.MakeAsync(server);
        foreach (var path in new[] { "/off", "/again" })
        {
            using var refused = await day.Birch.Guardian.OpenAsync(day.Path + path);
            Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        }

        var page = await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off");
        foreach (var (fill, says) in new (Dictionary<string, string?>, string)[]
        {
            (new() { ["Input.Words"] = "Stay warm" }, "Say why."), (new() { ["Input.Why"] = "other", ["Input.Words"] = "Stay warm" }, "Say in a few words what it is."), (new() { ["Input.Why"] = "nonsense", ["Input.Words"] = "Stay warm" }, "Say why."),
        })
        {
            using var answer = await day.Coop.Leader.Guardian.SubmitAsync(page, fill);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            var text = await answer.Content.ReadAsStringAsync();
            Assert.Contains(says, text, StringComparison.Ordinal);
            Assert.Contains("Stay warm", text, StringComparison.Ordinal);
        }

        Assert.Empty(await day.NoticesAsync());
        Assert.True((await day.MeetingsAsync()).Single().Stands);
    }

    [Fact]
    public async Task Is_held_after_all_until_the_day_is_over_and_all_are_told_that_too()
    {
        await using var own = new OwnServer();
        var day = await SnowDay.MakeAsync(own);
        var open = await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off");
        using var off = await day.Coop.Leader.Guardian.SubmitAsync(open, new() { ["Input.Why"] = "other", ["Input.Other"] = "no heating" });
        var after = await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off");
        using var on = await day.Coop.Leader.Guardian.SubmitAsync(after, within: "#after-words");
        Assert.Equal(HttpStatusCode.Redirect, on.StatusCode);
        Assert.True((await day.MeetingsAsync()).Single().Stands);
        Assert.Equal(["No meeting on Thursday, 12 March: no heating", "We meet after all on Thursday, 12 March"], (await day.NoticesAsync()).Select(n => n.Title));
        Assert.Contains("The meeting is held after all.", (await day.Birch.Guardian.GetAsync(off.Headers.Location!.OriginalString)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        // What was open from before calls nothing off a second time.
        using var again = await day.Coop.Leader.Guardian.SubmitAsync(open, new() { ["Input.Why"] = "snow" });
        Assert.Equal(2, (await day.NoticesAsync()).Count);
        Assert.True((await day.MeetingsAsync()).Single().Stands);

        using var off2 = await day.Coop.Leader.Guardian.SubmitAsync(await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off"), new() { ["Input.Why"] = "snow" });
        var late = await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off");
        own.Clock.Advance(TimeSpan.FromDays(1));
        using var refused = await day.Coop.Leader.Guardian.SubmitAsync(late, within: "#after-words");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.False((await day.MeetingsAsync()).Single().Stands);
    }

    [Fact]
    public async Task Is_made_up_for_on_a_day_that_a_leader_takes_once()
    {
        var day = await SnowDay.MakeAsync(server);
        using var off = await day.Coop.Leader.Guardian.SubmitAsync(await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off"), new() { ["Input.Why"] = "snow" });
        var page = await day.Coop.Leader.Guardian.GetAsync(day.Path + "/again");
        Assert.Contains("Thursday, 19 March", page.QuerySelector("main label")!.TextContent, StringComparison.Ordinal);
        using var taken = await day.Coop.Leader.Guardian.SubmitAsync(page);
        using var twice = await day.Coop.Leader.Guardian.SubmitAsync(page);
        Assert.Equal(taken.Headers.Location, twice.Headers.Location);
        var made = (await day.MeetingsAsync()).Single(m => m.InsteadOf is not null);
        Assert.Equal((new DateOnly(2026, 3, 19), "the mill house", day.Meeting), (made.On, made.Where, made.InsteadOf));
        Assert.Equal(["No meeting on Thursday, 12 March: snow", "A day instead of Thursday, 12 March"], (await day.NoticesAsync()).Select(n => n.Title));

        // Held after all no longer: another day stands instead.
        using var refused = await day.Coop.Leader.Guardian.PostAsync(day.Path + "/off?handler=After", [new("__RequestVerificationToken", await day.Coop.Leader.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("stands instead of it", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-03-12")]
    [InlineData("2026-03-01")]
    [InlineData("")]
    [InlineData("soon")]
    public async Task Is_not_made_up_for_on_a_day_that_cannot_be(string on)
    {
        var day = await SnowDay.MakeAsync(server);
        using var off = await day.Coop.Leader.Guardian.SubmitAsync(await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off"), new() { ["Input.Why"] = "snow" });
        using var answer = await day.Coop.Leader.Guardian.SubmitAsync(await day.Coop.Leader.Guardian.GetAsync(day.Path + "/again"), new() { ["Input.On"] = on });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Single(await day.MeetingsAsync());
    }

    private static string Section(AngleSharp.Dom.IDocument page, string heading) => page.QuerySelectorAll("main section").Single(s => s.QuerySelector("h2")?.TextContent == heading).TextContent;
}

/// <summary>A co-op that meets on 12 March: bread for 6 to 12 with words for home by age, and maps for 10 and up without.</summary>
internal sealed record SnowDay(CoopOfTest Coop, TestFamily Birch, Guid Meeting)
{
    public string Path => $"{Coop.Home}/days/{Meeting}";

    public static async Task<SnowDay> MakeAsync(TestServer server)
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var birch = await coop.JoinAsync("Birch");
        await CoopOfTest.ChildAsync(birch, "Wren", new(2017, 5, 1));
        await CoopOfTest.ChildAsync(birch, "Finch", new(2014, 6, 1));
        var (meeting, iris, period, barn, loft) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        await coop.WithDbAsync(async db =>
        {
            db.AddRange(new CoopMeeting(coop.Id, meeting, TestServer.Today, "the mill house"), new CoopPeriod(coop.Id, period, new(9, 0), new(10, 30)), new CoopRoom(coop.Id, barn, "the barn", 12), new CoopRoom(coop.Id, loft, "the loft", null));
            db.Add(new CoopAdult(coop.Id, coop.Leader.Id, iris, "Iris"));
            var bread = ClassDetails.Empty with
            {
                Teachers = [iris],
                Uses = [new RoomIngredient(new Ingredient("Flour", [Allergen.Wheat]), new Ingredient("Rice flour", []))],
                HomeVersions = [new HomeVersion(6, 8, "Shape one roll."), new HomeVersion(9, 12, "Weigh a loaf before and after.")],
                Perishables = ["2 l of milk"],
            };
            db.Add(new CoopClass(coop.Id, Guid.CreateVersion7(), new("Bread", "Bake together.", period, barn, 6, 12, 8, new(2026, 1, 8), new(2026, 5, 28), false), bread));
            db.Add(new CoopClass(coop.Id, Guid.CreateVersion7(), new("Maps", "Draw the way to the mill.", period, loft, 10, 14, 8, new(2026, 1, 8), new(2026, 5, 28), false), ClassDetails.Empty));
            // Over before that day.
            db.Add(new CoopClass(coop.Id, Guid.CreateVersion7(), new("Snowflakes", "Fold paper.", period, loft, 4, 14, 8, new(2026, 1, 8), new(2026, 3, 5), false), ClassDetails.Empty));
            await db.SaveChangesAsync();
        });
        return new SnowDay(coop, birch, meeting);
    }

    public async Task<List<CoopNotice>> NoticesAsync()
    {
        List<CoopNotice> found = [];
        await Coop.WithDbAsync(async db => found = await db.CoopNotices.AsNoTracking().OrderBy(n => n.At).ThenBy(n => n.Id).ToListAsync());
        return found;
    }

    public async Task<List<CoopMeeting>> MeetingsAsync()
    {
        List<CoopMeeting> found = [];
        await Coop.WithDbAsync(async db => found = await db.CoopMeetings.AsNoTracking().OrderBy(m => m.On).ToListAsync());
        return found;
    }
}
