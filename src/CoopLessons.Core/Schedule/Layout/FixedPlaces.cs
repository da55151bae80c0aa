using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>Where the fixed sessions stand, with looks and hands found where the problem does not name them.</summary>
internal static class FixedPlaces
{
    /// <summary>In the problem's order.</summary>
    public static List<(WeekSession Session, Placing Place)> Of(WeekProblem problem)
    {
        var found = new List<(WeekSession Session, Placing Place)>();
        var bodies = problem.Sessions.Where(s => s.Fixed).ToList();
        foreach (var session in bodies)
        {
            var was = session.Was!;
            var body = new Stretch(was.StartsAt, was.StartsAt + session.Minutes);
            var adult = session.Need == AdultNeed.HandsOn ? was.Adult ?? Hands(problem, found, was.Day, body) : null;
            found.Add((session, new Placing(session.Id, was.Day, was.StartsAt, null, adult, null)));
        }

        for (var i = 0; i < found.Count; i++)
            if (found[i].Session.Wait is { } wait)
                found[i] = (found[i].Session, WithLook(problem, found, i, wait));
        return found;
    }

    private static Placing WithLook(WeekProblem problem, List<(WeekSession Session, Placing Place)> found, int at, WaitAndLook wait)
    {
        var (session, place) = found[at];
        var was = session.Was!;
        var earliest = Math.Min(Slots.Minutes * Slots.Up(was.StartsAt + session.Minutes + wait.Minutes), Slots.Minutes * (Slots.PerDay - 1));
        var look = was.LooksAt ?? earliest;
        for (var k = earliest; was.LooksAt is null && k <= was.StartsAt + session.Minutes + wait.Minutes + wait.Patience; k += Slots.Minutes)
        {
            var body = new Stretch(k, k + wait.LookMinutes);
            if (!session.Learners.All(l => IsFree(problem, l, place.Day, body)) || found.Any(f => f.Place.Day == place.Day && f.Session.Learners.Intersect(session.Learners).Any() && Busy(f).Any(body.Meets)))
                continue;
            if (was.Looker is null && !problem.Adults.Any(a => IsFreeAdult(problem, found, a, place.Day, body)))
                continue;
            look = k;
            break;
        }

        return place with { LooksAt = look, Looker = was.Looker ?? Hands(problem, found, place.Day, new Stretch(look, look + wait.LookMinutes)) };
    }

    private static IEnumerable<Stretch> Busy((WeekSession Session, Placing Place) one)
    {
        yield return new Stretch(one.Place.StartsAt, one.Place.StartsAt + one.Session.Minutes);
        if (one.Place.LooksAt is { } look)
            yield return new Stretch(look, look + one.Session.Wait!.LookMinutes);
    }

    // Who is there and has no other fixed session in hand; else who is there; else the first.
    private static Guid? Hands(WeekProblem problem, List<(WeekSession Session, Placing Place)> found, DateOnly day, Stretch body) =>
        (problem.Adults.FirstOrDefault(a => IsFreeAdult(problem, found, a, day, body))
            ?? problem.Adults.FirstOrDefault(a => a.Free.On(day).Any(s => s.Holds(body)))
            ?? (problem.Adults.Count > 0 ? problem.Adults[0] : null))?.Id;

    private static bool IsFreeAdult(WeekProblem problem, List<(WeekSession Session, Placing Place)> found, WeekAdult adult, DateOnly day, Stretch body) =>
        adult.Free.On(day).Any(s => s.Holds(body))
        && !found.Any(f => f.Place.Day == day
            && (f.Place.Adult == adult.Id && body.Meets(new Stretch(f.Place.StartsAt, f.Place.StartsAt + f.Session.Minutes))
                || f.Place.Looker == adult.Id && f.Place.LooksAt is { } k && body.Meets(new Stretch(k, k + f.Session.Wait!.LookMinutes))));

    private static bool IsFree(WeekProblem problem, Guid learner, DateOnly day, Stretch body) =>
        problem.Learners.First(l => l.Id == learner).Free.On(day).Any(s => s.Holds(body));
}
