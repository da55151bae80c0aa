using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>
/// What a week asks for: what is planned in it and not done, what stayed undone from the two weeks before, the activities
/// of the units whose turn it is, and the lessons and loops that are still missing.
/// </summary>
public sealed class WeekWants
{
    /// <summary>How far back something that was planned and not done is still taken up.</summary>
    private const int DaysLookedBack = 14;

    private readonly Week _week;
    private readonly List<DateOnly> _days;
    private readonly DateOnly _today;
    private readonly List<PlannedSession> _sessions;
    private readonly List<Unit> _units;
    private readonly IReadOnlyList<Learner> _learners;
    private readonly Dictionary<Guid, Course> _courses;
    private readonly Dictionary<Guid, LessonLoop> _loops;
    private readonly WeekAsk _ask;
    private readonly Dictionary<Guid, PlanPlace> _stands;
    private readonly List<Wanted> _all = [];

    private WeekWants(Week week, List<DateOnly> days, DateOnly today, List<PlannedSession> sessions, List<Unit> units, IReadOnlyList<Learner> learners, List<Course> courses, List<LessonLoop> loops, WeekAsk ask)
    {
        _ask = ask;
        _stands = sessions.ToDictionary(s => s.Id, s => s.Stands);
        foreach (var session in sessions.Where(s => ask.Moves.ContainsKey(s.Id)))
            session.MoveTo(ask.Moves[session.Id]);
        (_week, _days, _today, _sessions, _units, _learners) = (week, days, today, sessions, units, learners);
        (_courses, _loops) = (courses.ToDictionary(c => c.Id), loops.ToDictionary(l => l.Id));
    }

    /// <summary>In the order in which they are shown and solved: by source, then by day.</summary>
    public IReadOnlyList<Wanted> All => _all;

    public bool IsForTheMorning(SessionSource source) =>
        source.CourseId is { } course && _courses[course].Morning || source.LoopId is { } loop && _loops[loop].Morning;

    public static async Task<WeekWants> LoadAsync(AppDb db, Week week, List<DateOnly> days, DateOnly today, IReadOnlyList<Learner> learners, WeekAsk ask, CancellationToken ct)
    {
        var units = await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery()
            .Where(u => u.StartsOn != null && u.StartsOn <= week.Days.Last).OrderBy(u => u.StartsOn).ThenBy(u => u.Id).ToListAsync(ct);
        // Every session of an activity, since one that stands in another week needs no second place.
        var from = (week.Monday < today ? week.Monday : today).AddDays(-DaysLookedBack);
        var sessions = await db.PlannedSessions.AsNoTracking()
            .Where(s => s.ActivityId != null || s.Date >= from).OrderBy(s => s.Date).ThenBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(ct);
        var courses = await db.Courses.AsNoTracking().OrderBy(c => c.Title).ThenBy(c => c.Id).ToListAsync(ct);
        var loops = await db.Loops.AsNoTracking().OrderBy(l => l.Title).ThenBy(l => l.Id).ToListAsync(ct);
        var wants = new WeekWants(week, days, today, sessions, units, learners, courses, loops, ask);
        wants.AddLessons(courses);
        wants.AddLoops(loops);
        wants.AddActivities(from);
        return wants;
    }

    /// <summary>What comes before a wanted activity: sessions of this week, and the first day on which it can stand because of others.</summary>
    public (IReadOnlyList<Precedence> Within, DateOnly? NotBefore) Before(Wanted wanted, List<Wanted> all)
    {
        var within = new List<Precedence>();
        DateOnly? notBefore = null;
        if (wanted.Activity is not { } activity || _units.FirstOrDefault(u => u.Id == activity.UnitId) is not { } unit)
            return (within, null);
        foreach (var first in unit.Activities.Where(a => activity.Details.After.Contains(a.Code)))
        {
            var days = ComesAfter.DaysAfter(first.WaitingMinutes);
            var same = all.Where(w => w.Activity?.Id == first.Id).ToList();
            within.AddRange(same.Select(w => new Precedence(w.SessionId, days)));
            // Done or standing in another week: its wait may still reach into this one.
            var elsewhere = _sessions.Where(s => s.ActivityId == first.Id && s.State is SessionState.Done or SessionState.Planned && same.All(w => w.SessionId != s.Id)).ToList();
            if (elsewhere.Where(s => s.ActivityId == first.Id).Select(s => (DateOnly?)s.Date.AddDays(days)).Max() is { } ready && (notBefore is null || ready > notBefore))
                notBefore = ready;
        }

        return (within, notBefore);
    }

    private void AddLessons(List<Course> courses)
    {
        foreach (var course in courses.Where(c => !c.SetAside))
        {
            var open = Open(s => s.CourseId == course.Id);
            var missing = Missing(course.PerWeek, s => s.CourseId == course.Id, open.Count);
            var ahead = open.Count + _sessions.Count(s => s.CourseId == course.Id && s.State == SessionState.Planned && s.Date > _week.Days.Last);
            if (course.Lessons is { } last)
                missing = Math.Min(missing, Math.Max(0, last - course.NextLesson + 1 - ahead));
            Add(new SessionSource(null, course.Id, null), open, missing, (id, session) => new Wanted(
                id, new SessionSource(null, course.Id, null), session, course.Title, Taught(session?.Learners ?? course.Learners), session?.Minutes ?? course.Minutes, course.Need, 0,
                null, [course.SubjectId], course.Split, null)
            { OwnMinutes = session?.Minutes });
        }
    }

    private void AddLoops(List<LessonLoop> loops)
    {
        foreach (var loop in loops.Where(l => !l.SetAside))
        {
            var open = Open(s => s.LoopId == loop.Id);
            var step = loop.StepAhead(0);
            Add(new SessionSource(null, null, loop.Id), open, Missing(loop.PerWeek, s => s.LoopId == loop.Id, open.Count), (id, session) => new Wanted(
                id, new SessionSource(null, null, loop.Id), session, loop.Title, Taught(session?.Learners ?? loop.Learners), session?.Minutes ?? loop.Minutes, loop.Need, 0,
                null, [step.SubjectId], LessonLoop.Split(step), null)
            { OwnMinutes = session?.Minutes });
        }
    }

    private void AddActivities(DateOnly from)
    {
        foreach (var unit in _units)
        {
            var leftOut = unit.LeftOut;
            var weekOfUnit = unit.WeekOn(_week)!.Value;
            var isOver = _week.Monday >= unit.StartsOn!.Value.AddDays(7 * (unit.Weeks + Unit.WeeksAfter));
            foreach (var activity in unit.Activities.OrderBy(a => a.Week).ThenBy(a => a.Order).ThenBy(a => a.Code, StringComparer.Ordinal))
            {
                var own = _sessions.Where(s => s.ActivityId == activity.Id).ToList();
                var open = own.Where(s => IsOpenHere(s) || IsLeftBehind(s, from)).ToList();
                var isNew = own.Count == 0 && !isOver && activity.Week <= weekOfUnit && activity.IsInPlan(leftOut);
                var split = activity.Split(leftOut) ?? new TakenSplit(activity.Details.Weights, activity.Details.Touches);
                Add(new SessionSource(activity.Id, null, null), open, isNew ? 1 : 0, (id, session) => new Wanted(
                    id, new SessionSource(activity.Id, null, null), session, activity.Title, session is null ? Suited(activity) : Taught(session.Learners),
                    session?.Minutes ?? activity.HandsOnMinutes, activity.AdultNeed, activity.WaitingMinutes, activity.Kind,
                    [.. split.Split.OrderByDescending(s => s.Weight).Select(s => s.SubjectId)], split, activity)
                { OwnMinutes = session?.Minutes });
            }
        }
    }

    private void Add(SessionSource source, List<PlannedSession> open, int missing, Func<Guid, PlannedSession?, Wanted> make)
    {
        _all.AddRange(open.Where(s => !_ask.LetGo.Contains(s.Id)).Select(s => make(s.Id, s) with
        {
            From = _stands[s.Id],
            MustBeOn = _ask.Moves.TryGetValue(s.Id, out var day) ? day : null,
        }));
        if (_ask.PlannedOnly)
            return;
        var known = _sessions.Select(s => s.Id).ToHashSet();
        _all.AddRange(Enumerable.Range(0, int.MaxValue).Select(n => Wanted.NewId(_week.Iso, source, n)).Where(id => !known.Contains(id)).Take(missing).Select(id => make(id, null)));
    }

    private List<PlannedSession> Open(Func<PlannedSession, bool> ofSource) => [.. _sessions.Where(s => ofSource(s) && IsOpenHere(s))];

    private bool IsOpenHere(PlannedSession session) =>
        session.State is SessionState.Planned && _week.Days.Contains(session.Date) && session.Date >= _days[0] && !StaysOutside(session);

    /// <summary>Set by hand for a day on which nothing else is taught, such as a Saturday: it stays there, and nothing lies beside it.</summary>
    private bool StaysOutside(PlannedSession session) =>
        session is { Pinned: true, State: SessionState.Planned } && session.Date >= _today && _week.Days.Contains(session.Date)
        && !_days.Contains(session.Date) && !_ask.Lost.Contains(session.Date);

    /// <summary>An activity of these days that fell by the wayside; lessons and loops go on from where they stopped anyway.</summary>
    private bool IsLeftBehind(PlannedSession session, DateOnly from)
    {
        if (session.State is not (SessionState.Planned or SessionState.NotDone) || StaysOutside(session))
            return false;
        if (_ask.PlannedOnly)
            return _week.Days.Contains(session.Date) && _ask.Lost.Contains(session.Date);
        return session.Date >= from && session.Date < _days[0] && (session.Date < _today || _week.Days.Contains(session.Date));
    }

    /// <summary>
    /// How many of a week's lessons are neither done nor planned, nor let go by a parent's own hand; in what is left of a week
    /// no more than its days hold.
    /// </summary>
    private int Missing(int perWeek, Func<PlannedSession, bool> ofSource, int open)
    {
        var seenTo = _sessions.Count(s => ofSource(s) && (s.State is SessionState.Done or SessionState.LetGo && _week.Days.Contains(s.Date) || StaysOutside(s)));
        var aDay = (perWeek + 4) / 5;
        return Math.Max(0, Math.Min(perWeek - seenTo, aDay * _days.Count) - open);
    }

    private List<Guid> Taught(IEnumerable<Guid> learners) => [.. learners.Where(id => _learners.Any(l => l.Id == id))];

    private List<Guid> Suited(Activity activity) => [.. _learners.Where(l => activity.Suits(l.BirthDate, _days[0])).Select(l => l.Id)];
}
