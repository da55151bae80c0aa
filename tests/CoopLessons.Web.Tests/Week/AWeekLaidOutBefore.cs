using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class AWeekLaidOutBefore(TestServer server)
{
    private const string Mill = "w2-02-visit-a-mill";

    [Fact]
    public async Task Laid_out_again_it_stays_as_it_is()
    {
        var week = await AWeekToLayOut.TakenAsync(server);
        var before = await week.RowsAsync();
        var page = await week.LayOutAsync();
        Assert.Contains("This is how the week is planned already.", page.Text("main"), StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("form[action$='handler=Take']"));
        Assert.Equal(before, await week.RowsAsync());
    }

    [Theory]
    [InlineData("2026-03-16", 6 * 60)]
    [InlineData("2026-03-18", 11 * 60)]
    [InlineData("2026-03-21", 10 * 60)]
    [InlineData("2026-03-19", null)]
    [InlineData("2026-03-21", null)]
    public async Task What_was_set_by_hand_stays_where_it_is_whatever_that_breaks(string date, int? startsAt)
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week <= 2 && a.Code != Mill, courses: false);
        await week.PlanAsync(Mill, DateOnly.ParseExact(date, "yyyy-MM-dd"), startsAt, pinned: true);
        await week.AddAsync(new Data.Planning.Course(Guid.CreateVersion7(), new("Latin", await week.Family.SubjectAsync("writing"), [week.Heron], 30, 5, Core.Units.AdultNeed.Alone, null, 1, false)));
        var page = await week.LayOutAsync();
        await week.TakeAsync(page).RedirectedAsync();
        var mill = await week.SessionOfAsync(Mill);
        Assert.Equal(DateOnly.ParseExact(date, "yyyy-MM-dd"), mill.Date);
        Assert.True(mill.Pinned);
        if (startsAt is not null)
            Assert.Equal(startsAt, mill.StartsAt);
        Assert.Equal(5, (await week.SessionsAsync()).Count(s => s.CourseId is not null));
    }

    [Fact]
    public async Task A_lesson_set_by_hand_for_a_Saturday_is_one_of_the_week_s_five()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week <= 2, courses: false);
        var course = Guid.CreateVersion7();
        await week.AddAsync(new Data.Planning.Course(course, new("Latin", await week.Family.SubjectAsync("writing"), [week.Heron], 30, 5, Core.Units.AdultNeed.Alone, null, 1, false)));
        var saturday = Data.Schedule.PlannedSession.OfCourse(Guid.CreateVersion7(), course, new DateOnly(2026, 3, 21), 10 * 60, 0, [week.Heron]);
        saturday.Pin(true);
        await week.AddAsync(saturday);
        await week.TakeAsync(await week.LayOutAsync()).RedirectedAsync();
        var lessons = (await week.SessionsAsync()).Where(s => s.CourseId == course).ToList();
        Assert.Equal(5, lessons.Count);
        Assert.Equal((new DateOnly(2026, 3, 21), 10 * 60), (lessons[^1].Date, lessons[^1].StartsAt));
    }

    [Fact]
    public async Task In_the_middle_of_a_week_only_what_is_left_of_it_is_used()
    {
        // A Thursday, ten in the morning.
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week == 1 && a.Code != "w1-08-where-wheat-began");
        var page = await week.LayOutAsync("2026-W11");
        Assert.Equal(["12", "13"], page.QuerySelectorAll(".week .day h2 .num").Select(d => d.TextContent));
        var places = week.Laid("2026-W11").Plan.Places;
        // Two days hold two lessons of each course, and the activity that was not done.
        Assert.Equal((2 * 6) + 1, places.Count);
        Assert.All(places, p => Assert.InRange(p.Day, TestServer.Today, TestServer.Today.AddDays(1)));
        Assert.All(places.Where(p => p.Day == TestServer.Today), p => Assert.True(p.StartsAt >= 10 * 60, $"{p.StartsAt} has gone by."));
        Assert.Contains(places, p => p.Day == TestServer.Today);
    }

    [Fact]
    public async Task What_stayed_undone_is_taken_up_again()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week <= 2 && a.Code != Mill, courses: false);
        var mill = await week.PlanAsync(Mill, TestServer.Today.AddDays(-1), 9 * 60);
        var page = await week.LayOutAsync();
        Assert.Equal("from Wednesday", page.Text(".week .state"));
        await week.TakeAsync(page).RedirectedAsync();
        var after = await week.SessionOfAsync(Mill);
        Assert.Equal(mill.Id, after.Id);
        Assert.InRange(after.Date, AWeekToLayOut.Monday, AWeekToLayOut.Monday.AddDays(4));
    }
}
