using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

/// <summary>The school year ends on Tuesday 30 June 2026; with the week of Thursday 12 March, seventeen weeks are left.</summary>
[Collection(PlanningServer.Name)]
public sealed class The_free_weeks_of_the_year(TestServer server)
{
    private async Task<TestFamily> FamilyAsync(int weeksTaken, params DateOnly[] logged)
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren", new DateOnly(2019, 5, 2));
        var science = await family.SubjectAsync("science");
        await family.WithDbAsync(async db =>
        {
            var unit = new Unit(Guid.CreateVersion7(), "From Grain to Loaf", "", weeksTaken);
            unit.Take(new DateOnly(2026, 3, 16));
            db.Add(unit);
            foreach (var date in logged)
                db.Add(LogEntry.Write(Guid.CreateVersion7(), new EntryFacts(date, null, "Baked", Place.Home, "", [new LearnerTime(wren, new Minutes(30))], [new SubjectWeight(science, 1)], []), new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return family;
    }

    [Fact]
    public async Task Stand_in_one_quiet_line()
    {
        var page = await (await FamilyAsync(2)).Guardian.GetAsync("/week");
        Assert.Equal("17 teaching weeks left in 2025–26: 2 are spoken for, 15 are free.", page.Text("#slack summary"));
        Assert.Null(page.QuerySelector("#slack .note"));
    }

    [Fact]
    public async Task Are_told_in_numbers_for_the_beginning_and_for_now()
    {
        // Reckoned from the week of 23 February; nothing was done in the week after it.
        var page = await (await FamilyAsync(2, new DateOnly(2026, 2, 25))).Guardian.GetAsync("/week");
        Assert.Equal("Teaching weeks, to the end of the year 19 17 Spoken for 3 2 Free 16 15", page.Text("#slack tr:has(td) > *"));
        Assert.Contains("so far 1 week", page.Text("#slack .hint"), StringComparison.Ordinal);
        Assert.Contains("of 19 that would be 16 planned", page.Text("#slack .hint"), StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("#slack .note"));
    }

    [Fact]
    public async Task Are_warned_of_where_they_go_faster_than_the_year()
    {
        var page = await (await FamilyAsync(6, new DateOnly(2026, 2, 18))).Guardian.GetAsync("/week");
        Assert.Equal("Look The free weeks go faster than the year: 2 of 13 are used, and 3 of 20 teaching weeks are gone.", page.Text("#slack .note"));
    }

    [Fact]
    public async Task Count_a_week_for_which_something_is_planned()
    {
        var family = await FamilyAsync(2);
        var songs = await family.MillSongsAsync();
        await family.WithDbAsync(async db =>
        {
            db.Add(new CoopLessons.Data.Schedule.PlannedSession(Guid.CreateVersion7(), songs.Song, TestServer.Today, null, 0, await db.Learners.Select(l => l.Id).ToListAsync()));
            await db.SaveChangesAsync();
        });
        Assert.Contains("3 are spoken for, 14 are free", (await family.Guardian.GetAsync("/week")).Text("#slack summary"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_not_spoken_of_between_school_years()
    {
        var family = await FamilyAsync(2);
        await family.WithDbAsync(async db => await db.SchoolYears.ExecuteDeleteAsync());
        Assert.Null((await family.Guardian.GetAsync("/week")).QuerySelector("#slack"));
    }
}
