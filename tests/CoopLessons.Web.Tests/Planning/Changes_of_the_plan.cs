using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class Changes_of_the_plan(TestServer server)
{
    private static readonly DateOnly Friday = new(2026, 3, 13);

    private static Task<Dictionary<Guid, PlanPlace>> StandsAsync(PlannedDay day) => day.Family.FromDbAsync(db => db.PlannedSessions.ToDictionaryAsync(s => s.Id, s => s.Stands));

    private static Task<PlanAnswer> TakeAsync(PlannedDay day, params PlanChange[] changes) => day.Family.FromDbAsync(async db =>
    {
        var answer = await Plan.ApplyAsync(db, changes, default);
        await db.SaveChangesAsync();
        return answer;
    });

    private static async Task<Guid> AdultAsync(PlannedDay day)
    {
        var adult = Guid.CreateVersion7();
        await day.Family.WithDbAsync(async db =>
        {
            db.Add(new TeachingAdult(adult, "Basil", null, "", 0));
            await db.SaveChangesAsync();
        });
        return adult;
    }

    [Fact]
    public async Task Carry_everything_and_undone_give_back_exactly_what_was()
    {
        var day = await PlannedDay.MakeAsync(server);
        var adult = await AdultAsync(day);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.Letters)).LetGo();
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.ReadAloud)).NotToday();
            await db.SaveChangesAsync();
        });
        var before = await StandsAsync(day);
        PlanChange[] changes =
        [
            new(day.Sourdough, before[day.Sourdough], new PlanPlace(Friday, 615, 4, 735, adult, 20, Pinned: true)),
            new(day.Letters, before[day.Letters], new PlanPlace(Friday, 540)),
            new(day.ReadAloud, before[day.ReadAloud], null),
        ];
        Assert.Equal(PlanAnswer.Taken, await TakeAsync(day, changes));
        var after = await StandsAsync(day);
        Assert.All(changes, c => Assert.Equal(c.Then, after[c.SessionId]));
        Assert.Equal(PlanState.LetGo, after[day.ReadAloud].State);
        Assert.Equal(PlanAnswer.Taken, await TakeAsync(day, changes));
        Assert.Equal(after, await StandsAsync(day));

        PlanChange[] back = [.. changes.Select(Plan.Undoing)];
        Assert.Equal(PlanAnswer.Taken, await TakeAsync(day, back));
        Assert.Equal(before, await StandsAsync(day));
        Assert.Equal(PlanAnswer.Taken, await TakeAsync(day, back));
        Assert.Equal(before, await StandsAsync(day));
    }

    [Fact]
    public async Task Are_refused_together_where_one_finds_its_session_elsewhere()
    {
        var day = await PlannedDay.MakeAsync(server);
        var before = await StandsAsync(day);
        var sound = new PlanChange(day.Letters, before[day.Letters], new PlanPlace(Friday));
        foreach (var odd in new[] { before[day.Sourdough] with { StartsAt = 541 }, before[day.Sourdough] with { Pinned = true }, before[day.Sourdough] with { Minutes = 10 }, before[day.Sourdough] with { Date = Friday } })
            Assert.Equal(PlanAnswer.Overtaken, await TakeAsync(day, sound, new PlanChange(day.Sourdough, odd, new PlanPlace(Friday, 600))));
        Assert.Equal(before, await StandsAsync(day));
    }

    [Fact]
    public async Task Are_unknown_with_an_adult_of_another_family_or_a_number_out_of_bounds()
    {
        var (day, theirs) = (await PlannedDay.MakeAsync(server), await PlannedDay.MakeAsync(server));
        var adult = await AdultAsync(theirs);
        var before = await StandsAsync(day);
        foreach (var odd in new[] { new PlanPlace(Friday, 540, AdultId: adult), new PlanPlace(Friday, 1440), new PlanPlace(Friday, Minutes: 0) })
            Assert.Equal(PlanAnswer.Unknown, await TakeAsync(day, new PlanChange(day.Letters, before[day.Letters], odd)));
        Assert.Equal(before, await StandsAsync(day));
    }

    [Fact]
    public async Task Of_a_day_alone_keep_the_hour_and_all_else()
    {
        var day = await PlannedDay.MakeAsync(server);
        var before = await StandsAsync(day);
        var changes = await day.Family.FromDbAsync(db => Plan.ToDaysAsync(db, TestServer.Today, [(day.Sourdough, Friday), (day.Letters, null)], default));
        Assert.Equal(PlanAnswer.Taken, await TakeAsync(day, [.. changes!]));
        var after = await StandsAsync(day);
        Assert.Equal(before[day.Sourdough] with { Date = Friday }, after[day.Sourdough]);
        Assert.Equal(before[day.Letters] with { State = PlanState.LetGo }, after[day.Letters]);
    }

    [Fact]
    public async Task That_set_an_hour_to_look_show_it_on_the_strip()
    {
        var day = await PlannedDay.MakeAsync(server);
        var before = await StandsAsync(day);
        Assert.Equal(PlanAnswer.Taken, await TakeAsync(day, new PlanChange(day.Sourdough, before[day.Sourdough], before[day.Sourdough] with { LooksAt = 660 })));
        Assert.Equal("11:00", (await day.TodayAsync()).QuerySelector(".strip-look time")!.TextContent);
    }

    [Fact]
    public async Task That_a_parent_makes_hold_the_session_where_it_was_put()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var moved = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/move/{day.Letters}"), new() { ["Input.Start"] = "10:30" });
        Assert.True((await day.SessionAsync(day.Letters)).Pinned);
        using var loosened = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/move/{day.Letters}"), new() { ["Input.Pinned"] = "false" });
        Assert.False((await day.SessionAsync(day.Letters)).Pinned);
    }
}
