using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class What_the_database_refuses(TestServer server)
{
    [Fact]
    public async Task A_session_of_nothing_and_a_session_of_two_things()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var (course, loop) = (await family.CourseAsync(), await family.LoopAsync());
        var lesson = await family.LessonAsync(course, TestServer.Today);
        await RefusedAsync<PlannedSession>(family, s => s.Id == lesson, (db, s) => db.Entry(s).Property(nameof(PlannedSession.CourseId)).CurrentValue = null);
        await RefusedAsync<PlannedSession>(family, s => s.Id == lesson, (db, s) => db.Entry(s).Property(nameof(PlannedSession.LoopId)).CurrentValue = loop);
    }

    [Fact]
    public async Task A_wish_about_nothing()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var wish = await family.AddAsync(id => new WeeklyWish(id, family.Subjects["science"], null, DayOfWeek.Wednesday, false));
        await RefusedAsync<WeeklyWish>(family, w => w.Id == wish, (db, w) => db.Entry(w).Property(nameof(WeeklyWish.SubjectId)).CurrentValue = null);
    }

    [Fact]
    public async Task A_grown_up_removed_while_a_session_names_them()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var adult = await family.AddAsync(id => new TeachingAdult(id, "Basil", null, "", 0));
        var lesson = await family.LessonAsync(await family.CourseAsync(), TestServer.Today);
        await family.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == lesson)).TakeHandsOf(adult);
            await db.SaveChangesAsync();
        });
        await RefusedAsync<TeachingAdult>(family, a => a.Id == adult, (db, a) => db.Remove(a));
    }

    private static async Task RefusedAsync<T>(PlanningFamily family, System.Linq.Expressions.Expression<Func<T, bool>> which, Action<AppDb, T> change)
        where T : class
    {
        await family.Family.WithDbAsync(async db =>
        {
            change(db, await db.Set<T>().SingleAsync(which));
            await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync());
        });
    }
}
