using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>A week of a family: what everything in it asks for beside what there is.</summary>
/// <param name="TeachingDays">Without any, nobody has time for anything.</param>
/// <param name="UnitOf">To which unit each activity in it belongs.</param>
public sealed record FamilyWeek(Week Week, IReadOnlyList<DateOnly> TeachingDays, Fit Fit, IReadOnlyDictionary<Guid, Unit> UnitOf)
{
    /// <summary>
    /// The weeks of a unit, one for each: with its own activities that are taken, those of other units that run at the same
    /// time, courses, loops and appointments. An activity asks for all children who are taught, since nobody has been named
    /// for it yet.
    /// </summary>
    /// <param name="unit">With subjects and activities loaded, as they stand in the unit of work.</param>
    /// <param name="monday">Of its first week, as it is or as it might be.</param>
    public static async Task<IReadOnlyList<FamilyWeek>> OfUnitAsync(AppDb db, Unit unit, DateOnly monday, CancellationToken ct)
    {
        var range = new DayRange(monday, monday.AddDays(7 * unit.Weeks - 1));
        var family = await FamilyRoom.LoadAsync(db, range, ct);
        var others = await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery()
            .Where(u => u.Id != unit.Id && u.StartsOn != null && u.StartsOn <= range.Last && u.StartsOn > monday.AddDays(-7 * Unit.MostWeeks)).ToListAsync(ct);
        var standing = await StandingAsync(db, ct);
        List<(Unit Unit, DateOnly Monday)> running = [(unit, monday), .. others.Select(u => (u, u.StartsOn!.Value))];
        var learners = family.Learners.Select(l => l.Id).ToList();
        return
        [
            .. Enumerable.Range(0, unit.Weeks).Select(i =>
            {
                var week = Week.Of(monday.AddDays(7 * i));
                var activities = running.SelectMany(r => r.Unit.InPlan()
                    .Where(a => a.Week <= r.Unit.Weeks && Week.Of(r.Monday.AddDays(7 * (a.Week - 1))) == week).Select(a => (r.Unit, Activity: a))).ToList();
                var days = family.DaysOf(week);
                // In a week without a teaching day no lesson of a course is missed: it is not looked for.
                var demands = activities.Select(x => DemandOf(x.Activity, learners)).Concat(days.Count == 0 ? [] : standing);
                return new FamilyWeek(
                    week, days, Fit.Of([.. demands], family.LearnersOn(days), family.AdultsOn(days)),
                    activities.ToDictionary(x => x.Activity.Id, x => x.Unit));
            }),
        ];
    }

    private static Demand DemandOf(Activity activity, IReadOnlyList<Guid> learners) => new(
        activity.Id, activity.Title, activity.Details.Weights.MaxBy(w => w.Weight)?.SubjectId.ToString(), DemandOrigin.Unit, learners,
        activity.HandsOnMinutes, activity.AdultNeed, activity.WaitingMinutes > 0 ? Demand.UsualLook : 0);

    private static async Task<List<Demand>> StandingAsync(AppDb db, CancellationToken ct)
    {
        var courses = await db.Courses.AsNoTracking().Where(c => !c.SetAside).ToListAsync(ct);
        var loops = await db.Loops.AsNoTracking().Where(l => !l.SetAside).ToListAsync(ct);
        return
        [
            .. courses.Select(c => (Course: c, Lessons: Enumerable.Range(0, c.PerWeek).Count(ahead => c.LessonAhead(ahead) is not null))).Where(c => c.Lessons > 0)
                .Select(c => new Demand(c.Course.Id, c.Course.Title, c.Course.SubjectId.ToString(), DemandOrigin.Course, c.Course.Learners, c.Course.Minutes * c.Lessons, c.Course.Need)),
            .. loops.Select(l => new Demand(l.Id, l.Title, null, DemandOrigin.Loop, l.Learners, l.Minutes * l.PerWeek, l.Need)),
        ];
    }
}
