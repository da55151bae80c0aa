using CoopLessons.Core.Calendar;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>An activity of a week that is made ready.</summary>
/// <param name="Learners">Who does it, in the family's order: those planned, or, while it has no day, those who are old enough for it.</param>
/// <param name="Date">The first day of the week on which it is planned; null while it has none.</param>
public sealed record ReadyActivity(Unit Unit, Activity Activity, IReadOnlyList<Learner> Learners, DateOnly? Date)
{
    /// <summary>The last day of the week on which it is planned; null while it has none.</summary>
    public DateOnly? LastDate { get; init; }

    /// <summary>What lies out for it by name, with what the family uses instead of something else.</summary>
    public IReadOnlyList<string> LaidOut { get; init; } = [];

    /// <summary>What of that stands in for something else.</summary>
    public IReadOnlyList<string> Instead { get; init; } = [];

    /// <summary>The last day of the week on which its things are needed: its own, or the Sunday.</summary>
    public DateOnly LastDayIn(Week week) => LastDate ?? week.Days.Last;

    /// <summary>The day by which its things lie ready: its own, or the Monday of the week.</summary>
    public DateOnly DayIn(Week week) => Date ?? week.Monday;
}

/// <summary>
/// The activities that a week is made ready for: what is planned in it and not let go, done or not, and what the units have
/// for this week and has no day anywhere yet.
/// </summary>
/// <param name="Learners">All who are taught at home, in the family's order, whether they take part or are in the room.</param>
/// <param name="Activities">By day, those without one last; then as the day and the unit order them.</param>
public sealed record ReadyWeek(Week Week, IReadOnlyList<Learner> Learners, IReadOnlyList<ReadyActivity> Activities)
{
    /// <summary>Where an activity of the week meets a child, whether they take part or are in the house.</summary>
    public IReadOnlyList<Caution> CautionsOf(ReadyActivity activity)
    {
        var day = activity.DayIn(Week);
        return Cautions.Of([.. activity.Learners.Select(l => l.ToCautioned(day))], [.. Learners.Where(l => l.BirthDate <= day).Select(l => l.ToCautioned(day))], activity.Activity.CareWith(activity.Instead));
    }

    public static async Task<ReadyWeek> LoadAsync(AppDb db, Week week, CancellationToken ct)
    {
        var learners = await db.Learners.AsNoTracking().Include(l => l.Levels).Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct);
        var (first, last) = (week.Days.First, week.Days.Last);
        var sessions = await db.PlannedSessions.AsNoTracking().Where(s => s.ActivityId != null && s.Date >= first && s.Date <= last && s.State != SessionState.LetGo)
            .OrderBy(s => s.Date).ThenBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(ct);
        var inWeek = sessions.Select(s => s.ActivityId!.Value).ToHashSet();
        var units = await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery()
            .Where(u => u.StartsOn != null && u.StartsOn <= last || u.Activities.Any(a => inWeek.Contains(a.Id))).OrderBy(u => u.StartsOn).ThenBy(u => u.Id).ToListAsync(ct);
        var anywhere = (await db.PlannedSessions.Where(s => s.ActivityId != null).Select(s => s.ActivityId!.Value).Distinct().ToListAsync(ct)).ToHashSet();

        var planned = sessions.GroupBy(s => s.ActivityId!.Value).Select(g =>
        {
            var unit = units.First(u => u.Activities.Any(a => a.Id == g.Key));
            var taking = g.SelectMany(s => s.Learners).ToHashSet();
            return new ReadyActivity(unit, unit.Activities.First(a => a.Id == g.Key), [.. learners.Where(l => taking.Contains(l.Id))], g.First().Date) { LastDate = g.Last().Date };
        });
        var waiting = units.Where(u => u.StartsOn is { } starts && starts <= last).SelectMany(u => u.InPlan()
            .Where(a => a.Week == u.WeekOn(week) && !anywhere.Contains(a.Id))
            .Select(a => new ReadyActivity(u, a, [.. learners.Where(l => a.Suits(l.BirthDate, first))], null)));
        var goods = await GoodBook.LoadAsync(db, ct);
        return new ReadyWeek(week, learners, [.. planned.Concat(waiting).Select(a => LayOut(a, goods))]);
    }

    private static ReadyActivity LayOut(ReadyActivity activity, GoodBook goods)
    {
        var asks = goods.AsksOf(activity.Activity, activity.Date, activity.Learners.Count).Select(a => a.Ask).ToList();
        return activity with { LaidOut = [.. asks.Select(a => a.Supply.Name)], Instead = [.. asks.Where(a => a.InsteadOf is not null).Select(a => a.Supply.Name)] };
    }
}
