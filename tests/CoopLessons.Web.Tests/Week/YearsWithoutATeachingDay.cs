using CoopLessons.Core.Calendar;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class YearsWithoutATeachingDay(TestServer server)
{
    private static readonly DateOnly Friday = new(2026, 3, 13);
    private static readonly DateOnly Monday = new(2026, 3, 16);

    [Fact]
    public async Task Days_from_Monday_to_Friday_stand_in()
    {
        var day = await PausedAsync();
        var days = await day.Family.FromDbAsync(db => TeachingDays.LoadAsync(db, default));
        Assert.Equal([Friday, Monday, new DateOnly(2026, 3, 17)], days.After(TestServer.Today, 3));
    }

    [Fact]
    public async Task The_day_opens_and_offers_a_day_to_move_to()
    {
        var day = await PausedAsync();
        using var not = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "NotToday"));
        var line = (await day.TodayAsync()).QuerySelector(PlannedDay.Line(day.Letters))!;
        Assert.Contains("Friday 13 March", line.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Something_can_be_placed()
    {
        var day = await PausedAsync();
        var page = await day.Guardian.GetAsync($"/week/place/{day.Mill}");
        Assert.Equal("2026-03-12", page.QuerySelector("input[name='Input.Date']")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_lost_day_is_offered_ten_days()
    {
        var day = await PausedAsync();
        var page = await day.Guardian.GetAsync("/week/lost/2026-03-12");
        Assert.Equal(10 + 2, page.QuerySelector("select")!.QuerySelectorAll("option").Length);
    }

    private async Task<PlannedDay> PausedAsync()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var year = await db.SchoolYears.Include(y => y.Breaks).SingleAsync();
            year.AddBreak(Guid.CreateVersion7(), "Moving house", year.Days);
            var next = new SchoolYear(Guid.CreateVersion7(), "The year after", new DayRange(year.Days.Last.AddDays(1), year.Days.Last.AddYears(2)), Weekdays.MondayToFriday);
            next.AddBreak(Guid.CreateVersion7(), "Building", next.Days);
            db.SchoolYears.Add(next);
            await db.SaveChangesAsync();
        });
        return day;
    }
}
