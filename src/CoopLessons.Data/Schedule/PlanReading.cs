using CoopLessons.Data.Planning;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Schedule;

public static class PlanReading
{
    /// <summary>The sessions with what is done in them, tracked, in the order of a day: by start, then by place in the day.</summary>
    /// <param name="today">
    /// Given, lessons and steps that are planned from that day on are counted forward from the bookmark, in their order; without
    /// it each is shown as the one that would be done now.
    /// </param>
    public static async Task<IReadOnlyList<PlannedWork>> WorkAsync(this AppDb db, IQueryable<PlannedSession> sessions, CancellationToken ct, DateOnly? today = null)
    {
        var found = await sessions.ToListAsync(ct);
        var activities = await ActivitiesAsync(db, found, ct);
        var units = activities.Values.Select(a => a.UnitId).Distinct().ToList();
        var leftOut = units.Count == 0 ? [] : (await db.Set<UnitSubject>().AsNoTracking().Where(s => s.LeftOut && units.Contains(s.UnitId)).ToListAsync(ct));
        var byUnit = leftOut.ToLookup(s => s.UnitId, s => s.SubjectId);
        var rounds = await Rounds.LoadAsync(db, found, today, ct);
        return
        [
            .. found.OrderBy(s => s.Date).ThenBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id)
                .Select(s => s.ActivityId is { } id
                    ? new PlannedWork(s, Doing.Of(s, activities[id], byUnit[activities[id].UnitId].ToHashSet()))
                    : rounds.WorkOf(s)),
        ];
    }

    /// <summary>One session with what is done in it; null where the family has none of that id.</summary>
    public static async Task<PlannedWork?> WorkAsync(this AppDb db, Guid sessionId, CancellationToken ct) =>
        (await db.WorkAsync(db.PlannedSessions.Where(s => s.Id == sessionId), ct)).SingleOrDefault();

    private static async Task<Dictionary<Guid, Activity>> ActivitiesAsync(AppDb db, List<PlannedSession> found, CancellationToken ct)
    {
        var ids = found.Select(s => s.ActivityId).OfType<Guid>().Distinct().ToList();
        return ids.Count == 0 ? [] : await db.Activities.AsNoTracking().Where(a => ids.Contains(a.Id)).ToDictionaryAsync(a => a.Id, ct);
    }
}

/// <summary>The courses and loops behind some sessions, and which lesson or step each of them is.</summary>
internal sealed class Rounds
{
    private readonly Dictionary<Guid, Course> _courses;
    private readonly Dictionary<Guid, LessonLoop> _loops;

    /// <summary>How many planned before it take the bookmark further, by session.</summary>
    private readonly Dictionary<Guid, int> _ahead;

    private Rounds(Dictionary<Guid, Course> courses, Dictionary<Guid, LessonLoop> loops, Dictionary<Guid, int> ahead) =>
        (_courses, _loops, _ahead) = (courses, loops, ahead);

    public static async Task<Rounds> LoadAsync(AppDb db, List<PlannedSession> found, DateOnly? today, CancellationToken ct)
    {
        var courseIds = found.Select(s => s.CourseId).OfType<Guid>().Distinct().ToList();
        var loopIds = found.Select(s => s.LoopId).OfType<Guid>().Distinct().ToList();
        if (courseIds.Count + loopIds.Count == 0)
            return new Rounds([], [], []);
        // Tracked, since their bookmarks move when a session is done.
        var courses = await db.Courses.Where(c => courseIds.Contains(c.Id)).ToDictionaryAsync(c => c.Id, ct);
        var loops = await db.Loops.Where(l => loopIds.Contains(l.Id)).ToDictionaryAsync(l => l.Id, ct);
        return new Rounds(courses, loops, today is { } day ? await AheadAsync(db, courseIds, loopIds, day, ct) : []);
    }

    private static async Task<Dictionary<Guid, int>> AheadAsync(AppDb db, List<Guid> courseIds, List<Guid> loopIds, DateOnly today, CancellationToken ct)
    {
        var open = await db.PlannedSessions
            .Where(s => s.State == SessionState.Planned && s.Date >= today
                && (s.CourseId != null && courseIds.Contains(s.CourseId.Value) || s.LoopId != null && loopIds.Contains(s.LoopId.Value)))
            .Select(s => new { s.Id, Source = s.CourseId ?? s.LoopId, s.Date, s.StartsAt, s.Order }).ToListAsync(ct);
        return open.GroupBy(s => s.Source)
            .SelectMany(g => g.OrderBy(s => s.Date).ThenBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id).Select((s, i) => (s.Id, i)))
            .ToDictionary(s => s.Id, s => s.i);
    }

    public PlannedWork WorkOf(PlannedSession session)
    {
        var isDone = session.State == SessionState.Done;
        var ahead = _ahead.GetValueOrDefault(session.Id);
        if (session.CourseId is { } courseId)
        {
            var course = _courses[courseId];
            return new PlannedWork(session, Doing.Of(session, course, isDone ? session.LessonNumber : course.LessonAhead(ahead)), course);
        }

        var loop = _loops[session.LoopId!.Value];
        var step = isDone && session.StepId is { } done ? loop.Step(done) : null;
        return new PlannedWork(session, Doing.Of(session, loop, step ?? loop.StepAhead(ahead)), Loop: loop);
    }
}
