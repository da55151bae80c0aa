using System.Net;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

/// <summary>Hours of 75 minutes at most, so that “Visit a mill”, 90 minutes, is what finds no place.</summary>
[Collection(PlanningServer.Name)]
public sealed class ChoicesWhereNotEverythingFits(TestServer server)
{
    private const string Mill = "w2-02-visit-a-mill";
    private const string Map = "w2-07-wheat-journey-map";

    private async Task<AWeekToLayOut> ShortDaysAsync()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Code is not (Mill or Map), courses: false);
        await week.HoursAsync((540, 615), (630, 705), (780, 840));
        return week;
    }

    private static string KeyOfMill(AWeekToLayOut week) => week.Laid().Plan.Misfits.Single().SessionId.ToString("N");

    [Fact]
    public async Task Left_out_it_is_left_out_of_its_unit_when_taken_and_comes_back_when_undone()
    {
        var week = await ShortDaysAsync();
        var before = await week.RowsAsync();
        var asked = await week.LayOutAsync();
        var page = await week.ChooseAsync(asked, "leave:" + KeyOfMill(week));
        Assert.Equal("Visit a mill: left out", page.Text("section[aria-labelledby=chosen] .row-main"));
        Assert.Empty(week.Laid().Plan.Misfits);
        Assert.False(await IsLeftOutAsync(week));
        var to = await week.TakeAsync(page).RedirectedAsync();
        Assert.True(await IsLeftOutAsync(week));
        Assert.DoesNotContain(await week.SessionsAsync(), s => s.ActivityId == week.Activities[Mill]);
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(to), within: ".undo form").RedirectedAsync();
        Assert.False(await IsLeftOutAsync(week));
        Assert.Equal(before, await week.RowsAsync());
    }

    [Fact]
    public async Task Left_out_where_it_was_planned_it_is_let_go()
    {
        var week = await ShortDaysAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        var before = await week.RowsAsync();
        var page = await week.ChooseAsync(await week.LayOutAsync(), $"leave:{mill.Id:N}");
        var to = await week.TakeAsync(page).RedirectedAsync();
        Assert.Equal(SessionState.LetGo, (await week.SessionOfAsync(Mill)).State);
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(to), within: ".undo form").RedirectedAsync();
        Assert.Equal(before, await week.RowsAsync());
    }

    [Fact]
    public async Task Put_off_it_goes_to_the_first_teaching_day_of_the_week_after_without_an_hour()
    {
        var week = await ShortDaysAsync();
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, 9 * 60);
        var page = await week.ChooseAsync(await week.LayOutAsync(), $"next:{mill.Id:N}");
        Assert.Equal("Visit a mill: next week", page.Text("section[aria-labelledby=chosen] .row-main"));
        await week.TakeAsync(page).RedirectedAsync();
        var after = await week.SessionOfAsync(Mill);
        Assert.Equal((new DateOnly(2026, 3, 23), null, SessionState.Planned), (after.Date, after.StartsAt, after.State));
    }

    [Fact]
    public async Task Put_off_over_a_break_it_goes_to_the_first_day_after_it()
    {
        var week = await ShortDaysAsync();
        await week.Family.WithDbAsync(async db =>
        {
            (await db.SchoolYears.Include(y => y.Breaks).SingleAsync()).AddBreak(Guid.CreateVersion7(), "Spring", new(new DateOnly(2026, 3, 23), new DateOnly(2026, 3, 27)));
            await db.SaveChangesAsync();
        });
        var mill = await week.PlanAsync(Mill, AWeekToLayOut.Monday, null);
        await week.TakeAsync(await week.ChooseAsync(await week.LayOutAsync(), $"next:{mill.Id:N}")).RedirectedAsync();
        Assert.Equal(new DateOnly(2026, 3, 30), (await week.SessionOfAsync(Mill)).Date);
    }

    [Fact]
    public async Task Shortened_the_session_keeps_minutes_of_its_own()
    {
        var week = await ShortDaysAsync();
        var asked = await week.LayOutAsync();
        var page = await week.ChooseAsync(asked, $"short:{KeyOfMill(week)}:60");
        Assert.Equal("Visit a mill: in 60 minutes", page.Text("section[aria-labelledby=chosen] .row-main"));
        await week.TakeAsync(page).RedirectedAsync();
        Assert.Equal(60, (await week.SessionOfAsync(Mill)).Minutes);
        Assert.Equal(90, await week.Family.FromDbAsync(db => db.Activities.Where(a => a.Id == week.Activities[Mill]).Select(a => a.HandsOnMinutes).SingleAsync()));
        // Laid out once more it is still the shorter one.
        Assert.Contains("This is how the week is planned already.", (await week.LayOutAsync()).Text("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_somebody_else_sees_to_it_it_takes_none_of_the_family_s_hands()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Code is not (Mill or Map), courses: false);
        var iris = await week.AdultAsync("Iris");
        await week.AddAsync(new DayPattern(iris, new WeekHours(new Dictionary<DayOfWeek, IReadOnlyList<Stretch>> { [DayOfWeek.Tuesday] = [new(9 * 60, 9 * 60 + 30)] })));
        var asked = await week.LayOutAsync();
        Assert.Equal("Needs 90 minutes with an adult; the longest time that an adult shares with Heron, Linnet and Wren is 30 on Tuesday.", week.Laid().Plan.Misfits.Single().Reason);
        var page = await week.ChooseAsync(asked, "help:" + KeyOfMill(week));
        Assert.Equal("Visit a mill: somebody else sees to it", page.Text("section[aria-labelledby=chosen] .row-main"));
        Assert.Equal(AdultNeed.Alone, week.Laid().AtHand.Problem.Sessions.Single(s => s.Title == "Visit a mill").Need);
        await week.TakeAsync(page).RedirectedAsync();
        var mill = await week.SessionOfAsync(Mill);
        Assert.NotNull(mill.StartsAt);
        Assert.Null(mill.AdultId);
    }

    [Fact]
    public async Task A_choice_is_taken_back_and_the_others_stay()
    {
        var week = await ShortDaysAsync();
        await week.LayOutAsync();
        var key = KeyOfMill(week);
        var map = week.Laid().AtHand.Wanted.Single(w => w.Title == "Draw wheat's journey across the world").Key;
        var page = await week.LayOutAsync(AWeekToLayOut.Next, $"short:{key}:60", $"next:{map}");
        Assert.Equal(2, page.QuerySelectorAll("section[aria-labelledby=chosen] li").Length);
        var back = page.QuerySelectorAll("section[aria-labelledby=chosen] li").Single(l => l.TextContent.Contains("Visit a mill", StringComparison.Ordinal));
        back.QuerySelector("form")!.Id = "back";
        page = await week.PressAsync(page, "#back button");
        Assert.Equal("Draw wheat's journey across the world: next week", page.Text("section[aria-labelledby=chosen] .row-main"));
        Assert.Equal("Visit a mill", page.Text("section[aria-labelledby=misfits] b"));
        page = await week.PressAsync(page, "section[aria-labelledby=chosen] button");
        Assert.Null(page.QuerySelector("section[aria-labelledby=chosen]"));
    }

    [Theory]
    [InlineData("leave")]
    [InlineData("leave:mill")]
    [InlineData("short:0000000000004000800000000000abcd")]
    [InlineData("short:0000000000004000800000000000abcd:4")]
    [InlineData("short:0000000000004000800000000000abcd:481")]
    [InlineData("short:0000000000004000800000000000abcd:-5")]
    [InlineData("next:0000000000004000800000000000abcd:60")]
    [InlineData("sing:0000000000004000800000000000abcd")]
    public async Task A_choice_that_no_page_made_is_refused(string choice)
    {
        var family = await server.FamilyAsync();
        var address = $"/week/layout/{AWeekToLayOut.Next}";
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(address), within: "form[action$='handler=Ask']", more: [new("choices", choice)]);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Null((await family.Guardian.GetAsync(address)).QuerySelector("#progress"));
    }

    private static Task<bool> IsLeftOutAsync(AWeekToLayOut week) =>
        week.Family.FromDbAsync(db => db.Activities.Where(a => a.Id == week.Activities[Mill]).Select(a => a.LeftOut).SingleAsync());
}
