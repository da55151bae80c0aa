using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Schedule;

/// <summary>A planned session together with what is done in it.</summary>
/// <param name="LeftOut">Subjects of its unit that the family leaves out.</param>
public sealed record PlannedWork(PlannedSession Session, Activity Activity, IReadOnlySet<Guid> LeftOut)
{
    /// <summary>How its minutes count. What was planned before its last subject was left out counts as it was written.</summary>
    public TakenSplit Split => Activity.Split(LeftOut) ?? new TakenSplit(Activity.Details.Weights, Activity.Details.Touches);

    /// <summary>The entry that says it was done as planned; null where it names no learner or no subject to credit.</summary>
    public EntryFacts? AsPlanned()
    {
        var split = Split;
        if (Session.Learners.Count == 0 || split.Split.Count == 0)
            return null;
        var minutes = new Minutes(Activity.HandsOnMinutes);
        // The planned hour is a wish; only what a parent writes down is a start.
        return new EntryFacts(
            Session.Date, null, Activity.Title, Place.Home, "",
            [.. Session.Learners.Distinct().Select(l => new LearnerTime(l, minutes))], split.Split, split.Touches);
    }
}

public static class PlanReading
{
    /// <summary>The sessions with their activities, tracked, in the order of a day: by start, then by place in the day.</summary>
    public static async Task<IReadOnlyList<PlannedWork>> WorkAsync(this AppDb db, IQueryable<PlannedSession> sessions, CancellationToken ct)
    {
        var found = await sessions.ToListAsync(ct);
        var ids = found.Select(s => s.ActivityId).Distinct().ToList();
        var activities = await db.Activities.AsNoTracking().Where(a => ids.Contains(a.Id)).ToDictionaryAsync(a => a.Id, ct);
        var units = activities.Values.Select(a => a.UnitId).Distinct().ToList();
        var leftOut = (await db.Set<UnitSubject>().AsNoTracking().Where(s => s.LeftOut && units.Contains(s.UnitId)).ToListAsync(ct))
            .ToLookup(s => s.UnitId, s => s.SubjectId);
        return
        [
            .. found.OrderBy(s => s.Date).ThenBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id)
                .Select(s => new PlannedWork(s, activities[s.ActivityId], leftOut[activities[s.ActivityId].UnitId].ToHashSet())),
        ];
    }

    /// <summary>One session with its activity; null where the family has none of that id.</summary>
    public static async Task<PlannedWork?> WorkAsync(this AppDb db, Guid sessionId, CancellationToken ct) =>
        (await db.WorkAsync(db.PlannedSessions.Where(s => s.Id == sessionId), ct)).SingleOrDefault();
}
