using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

/// <summary>The second week of the unit is laid out and taken; Wednesday 18 March is lost, or more than that.</summary>
[Collection(PlanningServer.Name)]
public sealed class WednesdayFellThrough(TestServer server)
{
    private const string Path = "/week/ways/2026-03-18";
    private const string Feast = "w4-09-closing-feast";
    private static readonly DateOnly Wednesday = new(2026, 3, 18);
    private static readonly string Key = FamilyWork.KeyOf(new DayRange(Wednesday, Wednesday));

    private static Future Of(AWeekToLayOut week, FutureKind kind, string? key = null) => week.Outcome<UpsetOutcome>(key ?? Key).Futures.Single(f => f.Kind == kind);

    private static Task<HttpResponseMessage> TakeAsync(AWeekToLayOut week, IHtmlDocument page, FutureKind kind) =>
        week.Guardian.SubmitAsync(page, within: $"section[aria-labelledby=way-{kind}] form");

    [Fact]
    public async Task Three_ways_are_shown_with_what_each_costs_and_nothing_is_changed()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var before = await week.RowsAsync();
        var hit = (await week.SessionsAsync()).Where(s => s.Date == Wednesday).ToList();
        var page = await week.WaysAsync(Path, Key);
        Assert.Equal(["Everything a day later", "Thin it out", "Let it go"], page.QuerySelectorAll(".ways h2").Select(h => h.TextContent));
        Assert.Equal(before, await week.RowsAsync());

        var letGo = Of(week, FutureKind.LetGo);
        Assert.Equal(hit.Count(s => s.ActivityId is not null), letGo.LetGo.Count);
        Assert.Equal(["Mathematics", "Reading"], letGo.Resuming.Order());
        Assert.Equal(0, letGo.Moved);
        // What a child loses is what stood on the day for it, however it is divided over subjects.
        var minutes = await MinutesAsync(week, hit);
        Assert.All([week.Heron, week.Linnet, week.Wren], child => Assert.Equal(
            hit.Where(s => s.Learners.Contains(child)).Sum(s => minutes[s.Id]), letGo.Lost.Where(l => l.LearnerId == child).Sum(l => l.Minutes)));
        var mathematics = await week.Family.SubjectAsync("mathematics");
        var lessons = await week.Family.FromDbAsync(db => db.Courses.Where(c => c.SubjectId == mathematics).Select(c => c.Id).ToListAsync());
        Assert.Equal(30 * hit.Count(s => s.CourseId is { } id && lessons.Contains(id)), letGo.Lost.Where(l => l.SubjectId == mathematics).Sum(l => l.Minutes));
        var told = page.Text("section[aria-labelledby=way-LetGo]");
        Assert.All(letGo.LetGo, title => Assert.Contains(title, told, StringComparison.Ordinal));
        // The unit has four weeks from 9 March.
        Assert.Contains("From Grain to Loaf still ends on Friday 3 April", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shifted_each_activity_goes_to_the_next_teaching_day_and_lessons_stay()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        await week.PlanAsync(Feast, new DateOnly(2026, 4, 3), 9 * 60);
        var before = await week.SessionsAsync();
        var page = await week.WaysAsync(Path, Key);
        var end = Assert.Single(Of(week, FutureKind.Shift).Ends);
        Assert.Equal((new DateOnly(2026, 4, 3), new DateOnly(2026, 4, 6)), (end.Before, end.After));
        await TakeAsync(week, page, FutureKind.Shift).RedirectedAsync();
        var after = (await week.SessionsAsync()).ToDictionary(s => s.Id);
        foreach (var session in before)
        {
            var now = after[session.Id];
            if (session.ActivityId is not null)
                Assert.Equal(session.Date < Wednesday ? session.Date : NextTeachingDay(session.Date), now.Date);
            else if (session.Date == Wednesday)
                Assert.Equal(SessionState.LetGo, now.State);
            else
                // On a day to which activities come, its hour may make room for them.
                Assert.Equal((session.Date, SessionState.Planned), (now.Date, now.State));
            if (session.Date < Wednesday)
                Assert.Equal(session.StartsAt, now.StartsAt);
        }

        Assert.DoesNotContain(after.Values, s => s.Date == Wednesday && s.State == SessionState.Planned);
        await KeepsEveryRuleAsync(week);
    }

    [Fact]
    public async Task Thinned_out_the_end_stays_and_nothing_leaves_the_week()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var before = (await week.SessionsAsync()).ToDictionary(s => s.Id);
        var page = await week.WaysAsync(Path, Key);
        var thin = Of(week, FutureKind.Thin);
        Assert.All(thin.Ends, e => Assert.Equal(e.Before, e.After));
        await TakeAsync(week, page, FutureKind.Thin).RedirectedAsync();
        var after = await week.SessionsAsync();
        Assert.All(after.Where(s => s.State == SessionState.Planned), s =>
        {
            Assert.NotEqual(Wednesday, s.Date);
            Assert.InRange(s.Date, AWeekToLayOut.Monday, AWeekToLayOut.Monday.AddDays(4));
        });
        // Only of the lost day is anything let go.
        Assert.All(after.Where(s => s.State == SessionState.LetGo), s => Assert.Equal(Wednesday, before[s.Id].Date));
        Assert.Equal(thin.LetGo.Count, after.Count(s => s.State == SessionState.LetGo && s.ActivityId is not null));
        await KeepsEveryRuleAsync(week);
    }

    [Fact]
    public async Task Let_go_nothing_else_moves()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var before = await week.SessionsAsync();
        await TakeAsync(week, await week.WaysAsync(Path, Key), FutureKind.LetGo).RedirectedAsync();
        var after = (await week.SessionsAsync()).ToDictionary(s => s.Id);
        Assert.All(before, s => Assert.Equal(
            (s.Date, s.StartsAt, s.Date == Wednesday ? SessionState.LetGo : s.State), (after[s.Id].Date, after[s.Id].StartsAt, after[s.Id].State)));
    }

    [Theory]
    [InlineData(FutureKind.Shift)]
    [InlineData(FutureKind.Thin)]
    [InlineData(FutureKind.LetGo)]
    public async Task Each_way_is_taken_once_and_undone_as_a_whole(FutureKind kind)
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var before = await week.RowsAsync();
        var page = await week.WaysAsync(Path, Key);
        var to = await TakeAsync(week, page, kind).RedirectedAsync();
        var taken = await week.RowsAsync();
        Assert.NotEqual(before, taken);
        Assert.Equal(to, await TakeAsync(week, page, kind).RedirectedAsync());
        Assert.Equal(taken, await week.RowsAsync());
        var bar = await week.Guardian.GetAsync(to);
        Assert.StartsWith("Wednesday 18 March fell through:", bar.Text(".undo > span"), StringComparison.Ordinal);
        await week.Guardian.SubmitAsync(bar, within: ".undo form").RedirectedAsync();
        Assert.Equal(before, await week.RowsAsync());
    }

    [Fact]
    public async Task When_something_was_moved_meanwhile_nothing_is_taken()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var page = await week.WaysAsync(Path, Key);
        var one = (await week.SessionsAsync()).First(s => s.Date == Wednesday);
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync($"/week/move/{one.Id}"), new() { ["Input.Date"] = "2026-03-27" }).RedirectedAsync();
        var before = await week.RowsAsync();
        foreach (var kind in Enum.GetValues<FutureKind>())
        {
            var answer = await TakeAsync(week, page, kind).AnsweredAsync(HttpStatusCode.Conflict);
            Assert.Contains("Nothing was taken; look once more.", answer.Text(".validation-summary-errors"), StringComparison.Ordinal);
        }

        Assert.Equal(before, await week.RowsAsync());
    }

    [Fact]
    public async Task Of_half_a_week_each_way_can_be_taken()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var key = FamilyWork.KeyOf(new DayRange(Wednesday, Wednesday.AddDays(2)));
        var before = await week.SessionsAsync();
        var rows = await week.RowsAsync();
        var page = await week.WaysAsync(Path + "?to=2026-03-20", key);
        Assert.Equal("Everything 3 days later", page.Text("#way-Shift"));
        var to = await TakeAsync(week, page, FutureKind.Shift).RedirectedAsync();
        var after = (await week.SessionsAsync()).ToDictionary(s => s.Id);
        // Wednesday, Thursday and Friday become Monday, Tuesday and Wednesday.
        Assert.All(before.Where(s => s.ActivityId is not null && s.Date >= Wednesday), s => Assert.Equal(s.Date.AddDays(5), after[s.Id].Date));
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(to), within: ".undo form").RedirectedAsync();
        Assert.Equal(rows, await week.RowsAsync());
        await TakeAsync(week, await week.Guardian.GetAsync(Path + "?to=2026-03-20"), FutureKind.Thin).RedirectedAsync();
        Assert.DoesNotContain(await week.SessionsAsync(), s => s.Date >= Wednesday && s.State == SessionState.Planned);
    }

    [Fact]
    public async Task Over_a_weekend_each_way_can_be_taken()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week == 1, courses: false);
        await week.PlanAsync("w2-02-visit-a-mill", new DateOnly(2026, 3, 19), 9 * 60);
        await week.PlanAsync("w2-07-wheat-journey-map", new DateOnly(2026, 3, 20), 9 * 60);
        await week.PlanAsync("w2-09-the-millers-donkey", new DateOnly(2026, 3, 23), 9 * 60);
        await week.PlanAsync("w2-01-grind-and-sift", new DateOnly(2026, 3, 24), 9 * 60);
        const string path = "/week/ways/2026-03-19?to=2026-03-24";
        var key = FamilyWork.KeyOf(new DayRange(new DateOnly(2026, 3, 19), new DateOnly(2026, 3, 24)));
        var rows = await week.RowsAsync();
        var page = await week.WaysAsync(path, key);
        Assert.Equal("Everything 4 days later", page.Text("#way-Shift"));
        var to = await TakeAsync(week, page, FutureKind.Thin).RedirectedAsync();
        var after = await week.SessionsAsync();
        // What stood in a week looks for room in that week.
        Assert.InRange((await week.SessionOfAsync("w2-02-visit-a-mill")).Date, AWeekToLayOut.Monday, AWeekToLayOut.Monday.AddDays(2));
        Assert.InRange((await week.SessionOfAsync("w2-01-grind-and-sift")).Date, new DateOnly(2026, 3, 25), new DateOnly(2026, 3, 27));
        Assert.Equal(4, after.Count(s => s.State == SessionState.Planned));
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(to), within: ".undo form").RedirectedAsync();
        Assert.Equal(rows, await week.RowsAsync());
        await TakeAsync(week, await week.Guardian.GetAsync(path), FutureKind.Shift).RedirectedAsync();
        Assert.Equal(new DateOnly(2026, 3, 25), (await week.SessionOfAsync("w2-02-visit-a-mill")).Date);
        Assert.Equal(new DateOnly(2026, 3, 30), (await week.SessionOfAsync("w2-01-grind-and-sift")).Date);
    }

    [Fact]
    public async Task What_was_set_by_hand_for_the_lost_day_finds_a_free_hour_on_the_next()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week == 1, courses: false);
        await week.PlanAsync("w2-02-visit-a-mill", Wednesday, 9 * 60, pinned: true);
        await week.PlanAsync("w2-07-wheat-journey-map", Wednesday.AddDays(1), 9 * 60, pinned: true);
        await TakeAsync(week, await week.WaysAsync(Path, Key), FutureKind.Shift).RedirectedAsync();
        var (mill, map) = (await week.SessionOfAsync("w2-02-visit-a-mill"), await week.SessionOfAsync("w2-07-wheat-journey-map"));
        Assert.Equal((Wednesday.AddDays(1), 9 * 60), (map.Date, map.StartsAt));
        Assert.Equal(Wednesday.AddDays(1), mill.Date);
        Assert.False(new Stretch(mill.StartsAt!.Value, mill.StartsAt.Value + 90).Meets(new Stretch(9 * 60, (9 * 60) + 45)));
    }

    [Theory]
    [InlineData("tomorrow", "Write the last day as a date.")]
    [InlineData("2026-03-17", "The last day lies before the first.")]
    [InlineData("2026-04-08", "At most 21 days can be looked at; a longer time is a break of the school year.")]
    public async Task A_last_day_that_cannot_be_is_told_beside_the_field(string to, string sentence)
    {
        var family = await server.FamilyAsync();
        var answer = await family.Guardian.OpenAsync($"{Path}?to={to}").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal(sentence, answer.Fault("to"));
        Assert.Equal(to, answer.QuerySelector("#to")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_day_on_which_nothing_stood_has_nothing_to_take()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        var page = await week.WaysAsync(Path, Key);
        Assert.Equal("Nothing was hit", page.Text(".empty h2"));
        Assert.Empty(page.QuerySelectorAll(".ways"));
    }

    /// <summary>Held against the rules as the week stands now, with nothing new taken up.</summary>
    private static Task KeepsEveryRuleAsync(AWeekToLayOut week) => week.Family.WithDbAsync(async db =>
    {
        foreach (var session in (await week.SessionsAsync()).Where(s => s.State == SessionState.Planned && s.StartsAt is not null))
            Assert.Empty(await Data.Planning.HandMoves.BreaksAsync(db, session.Id, session.Date, TestServer.Today, default));
    });

    private static DateOnly NextTeachingDay(DateOnly date) => date.AddDays(date.DayOfWeek == DayOfWeek.Friday ? 3 : 1);

    private static Task<Dictionary<Guid, int>> MinutesAsync(AWeekToLayOut week, List<PlannedSession> sessions) => week.Family.FromDbAsync(async db =>
    {
        var activities = await db.Activities.ToDictionaryAsync(a => a.Id, a => a.HandsOnMinutes);
        var courses = await db.Courses.ToDictionaryAsync(c => c.Id, c => c.Minutes);
        return sessions.ToDictionary(s => s.Id, s => s.ActivityId is { } id ? activities[id] : courses[s.CourseId!.Value]);
    });
}
