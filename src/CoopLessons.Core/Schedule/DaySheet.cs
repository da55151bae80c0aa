using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>A session in the order of a day.</summary>
/// <param name="Learners">By the problem's order.</param>
/// <param name="Adult">Whose hands it takes; null where it takes nobody's, or where nobody is named.</param>
/// <param name="ChangeUntil">When the last of its learners is ready for something else.</param>
public sealed record SheetLine(Guid SessionId, string Title, Stretch When, IReadOnlyList<Guid> Learners, AdultNeed Need, Guid? Adult, int ChangeUntil);

/// <summary>A wait in a day.</summary>
/// <param name="From">When the session is over.</param>
/// <param name="Earliest">The look is from here …</param>
/// <param name="Latest">… to here, as the start of it.</param>
/// <param name="Look">When somebody looks; null where that is not planned.</param>
/// <param name="FilledBy">Sessions of the day that run wholly or in part in the wait, in their order.</param>
public sealed record SheetWait(Guid SessionId, string Title, int From, int Earliest, int Latest, Stretch? Look, Guid? Looker, IReadOnlyList<Guid> FilledBy);

/// <summary>What somebody does when.</summary>
public enum SheetPart { Session, Look, Change, Free, HandsOn, Beside }

/// <summary>A cell of somebody's column; <paramref name="SessionId"/> is null in free time.</summary>
public sealed record SheetCell(Stretch When, SheetPart Part, Guid? SessionId);

/// <summary>The day of one learner or adult, in time order. Cells of <see cref="SheetPart.Beside"/> may lie side by side.</summary>
public sealed record SheetColumn(Guid Whose, string Name, IReadOnlyList<SheetCell> Cells);

/// <summary>
/// The run sheet of one day: what comes when, what is waited for and what fills the waits, and the column of each learner
/// and adult. Free time of a learner is told from a quarter of an hour on.
/// </summary>
public sealed record DaySheet(
    DateOnly Day, IReadOnlyList<SheetLine> Lines, IReadOnlyList<SheetWait> Waits, IReadOnlyList<SheetColumn> Learners, IReadOnlyList<SheetColumn> Adults)
{
    private const int ShortestGap = 15;

    /// <summary>Placings of other days and of unknown sessions are passed over; whether the rest are valid does not matter.</summary>
    public static DaySheet Of(WeekProblem problem, IReadOnlyList<Placing> placings, DateOnly day)
    {
        var sessions = problem.Sessions.ToDictionary(s => s.Id);
        var today = placings.Where(p => p.Day == day && sessions.ContainsKey(p.SessionId))
            .OrderBy(p => p.StartsAt).ThenBy(p => p.SessionId).Select(p => (Session: sessions[p.SessionId], Place: p)).ToList();
        return new DaySheet(
            day,
            [.. today.Select(t => Line(problem, t.Session, t.Place))],
            [.. today.Where(t => t.Session.Wait is not null).Select(t => Wait(t.Session, t.Place, today))],
            [.. problem.Learners.Select(l => Column(l, day, today))],
            [.. problem.Adults.Select(a => Column(problem, a, day, today))]);
    }

    private static Stretch Body(WeekSession session, Placing place) => new(place.StartsAt, place.StartsAt + session.Minutes);

    private static Stretch? Look(WeekSession session, Placing place) =>
        session.Wait is { } wait && place.LooksAt is { } at ? new Stretch(at, at + wait.LookMinutes) : null;

    /// <summary>5 minutes, 10 after more than 30, 15 where the learner has sat too long; not longer than a wait.</summary>
    private static int Rest(WeekSession session, WeekLearner learner)
    {
        var rest = session.Minutes > learner.LongestSitting ? 15 : session.Minutes > 30 ? 10 : 5;
        return session.Wait is { } wait ? Math.Min(rest, wait.Minutes / 5 * 5) : rest;
    }

    private static SheetLine Line(WeekProblem problem, WeekSession session, Placing place)
    {
        var learners = problem.Learners.Where(l => session.Learners.Contains(l.Id)).ToList();
        var body = Body(session, place);
        return new SheetLine(session.Id, session.Title, body, [.. learners.Select(l => l.Id)], session.Need,
            session.Need == AdultNeed.HandsOn ? place.Adult : null, body.To + learners.Select(l => Rest(session, l)).DefaultIfEmpty(0).Max());
    }

    private static SheetWait Wait(WeekSession session, Placing place, List<(WeekSession Session, Placing Place)> today)
    {
        var wait = session.Wait!;
        var over = place.StartsAt + session.Minutes;
        var look = Look(session, place);
        var waiting = new Stretch(over, look?.From ?? over + wait.Minutes);
        return new SheetWait(session.Id, session.Title, over, over + wait.Minutes, over + wait.Minutes + wait.Patience, look, place.Looker,
            [.. today.Where(t => t.Session.Id != session.Id && Body(t.Session, t.Place).Meets(waiting)).Select(t => t.Session.Id)]);
    }

    private static SheetColumn Column(WeekLearner learner, DateOnly day, List<(WeekSession Session, Placing Place)> today)
    {
        var cells = new List<SheetCell>();
        var own = today.Where(t => t.Session.Learners.Contains(learner.Id)).ToList();
        foreach (var (session, place) in own)
        {
            cells.Add(new SheetCell(Body(session, place), SheetPart.Session, session.Id));
            if (Look(session, place) is { } look)
                cells.Add(new SheetCell(look, SheetPart.Look, session.Id));
        }

        var busy = cells.Select(c => c.When).ToList();
        foreach (var (session, place) in own)
        {
            // A change ends where the next thing begins, and at the end of the free time.
            var from = place.StartsAt + session.Minutes;
            var until = busy.Where(b => b.From >= from).Select(b => b.From)
                .Concat(learner.Free.On(day).Where(f => f.From < from && from <= f.To).Select(f => f.To))
                .Append(from + Rest(session, learner)).Min();
            if (until > from)
                cells.Add(new SheetCell(new Stretch(from, until), SheetPart.Change, session.Id));
        }

        foreach (var free in learner.Free.On(day))
            cells.AddRange(Gaps(free, [.. cells.Where(c => c.Part != SheetPart.Free).Select(c => c.When)]).Select(g => new SheetCell(g, SheetPart.Free, null)));
        return new SheetColumn(learner.Id, learner.Name, InOrder(cells));
    }

    private static IEnumerable<Stretch> Gaps(Stretch free, IReadOnlyList<Stretch> busy)
    {
        var from = free.From;
        foreach (var taken in busy.Where(free.Meets).OrderBy(b => b.From).Append(new Stretch(free.To, free.To)))
        {
            if (taken.From - from >= ShortestGap)
                yield return new Stretch(from, taken.From);
            from = Math.Max(from, taken.To);
        }
    }

    private static SheetColumn Column(WeekProblem problem, WeekAdult adult, DateOnly day, List<(WeekSession Session, Placing Place)> today)
    {
        var cells = new List<SheetCell>();
        foreach (var (session, place) in today)
        {
            if (session.Need == AdultNeed.HandsOn && place.Adult == adult.Id)
                cells.Add(new SheetCell(Body(session, place), SheetPart.HandsOn, session.Id));
            if (Look(session, place) is { } look && place.Looker == adult.Id)
                cells.Add(new SheetCell(look, SheetPart.Look, session.Id));
        }

        // Near a session is the first adult who is there throughout with hands free; where none is, everybody who is for a part of it.
        foreach (var (session, place) in today.Where(t => t.Session.Need == AdultNeed.Beside))
        {
            var body = Body(session, place);
            var throughout = problem.Adults.FirstOrDefault(a => IsNear(a, body));
            if (throughout?.Id == adult.Id || throughout is null && adult.Free.On(day).Any(body.Meets))
                cells.Add(new SheetCell(body, SheetPart.Beside, session.Id));
        }

        return new SheetColumn(adult.Id, adult.Name, InOrder(cells));

        bool IsNear(WeekAdult one, Stretch body) => one.Free.On(day).Any(f => f.Holds(body)) && !today.Any(t =>
            t.Session.Need == AdultNeed.HandsOn && t.Place.Adult == one.Id && Body(t.Session, t.Place).Meets(body)
            || t.Place.Looker == one.Id && Look(t.Session, t.Place) is { } look && look.Meets(body));
    }

    private static List<SheetCell> InOrder(List<SheetCell> cells) =>
        [.. cells.OrderBy(c => c.When.From).ThenBy(c => c.When.To).ThenBy(c => c.Part).ThenBy(c => c.SessionId)];
}
