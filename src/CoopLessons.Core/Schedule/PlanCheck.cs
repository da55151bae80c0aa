using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>
/// Holds placings against the rules of a week, by the minute. It knows nothing of how a plan is found, so that it serves
/// plans laid out by the program and moves made by hand alike.
/// </summary>
public static partial class PlanCheck
{
    private sealed record Laid(WeekSession Session, Placing Place)
    {
        public Stretch Body => new(Place.StartsAt, Place.StartsAt + Session.Minutes);
        public Stretch? Look => Session.Wait is { } wait && Place.LooksAt is { } at ? new Stretch(at, at + wait.LookMinutes) : null;
        public int Over => Look is { } look ? Math.Max(look.To, Body.To) : Body.To;
        public string Title => $"“{Session.Title}”";
        public string At => $"On {ClockWords.Weekday(Place.Day)} at {ClockWords.Time(Place.StartsAt)}";
    }

    /// <summary>
    /// What the placings break, in the order of the placings; nothing where all is well. A session without a placing is no
    /// fault. Hands that are not named are taken to be those of the first adult who has them free.
    /// </summary>
    /// <param name="placings">Any placings: unknown sessions, days and times among them.</param>
    public static IReadOnlyList<PlanFault> Faults(WeekProblem problem, IReadOnlyList<Placing> placings)
    {
        var sessions = problem.Sessions.ToDictionary(s => s.Id);
        var faults = new List<PlanFault>();
        var laid = new List<Laid>();
        foreach (var place in placings)
        {
            if (!sessions.TryGetValue(place.SessionId, out var session))
                faults.Add(new PlanFault(FaultKind.Unknown, place.SessionId, [], $"On {ClockWords.Weekday(place.Day)} at {ClockWords.Time(place.StartsAt)} stands a session that is not in this week."));
            else if (laid.Any(l => l.Session.Id == session.Id))
                faults.Add(new PlanFault(FaultKind.Twice, session.Id, [], $"“{session.Title}” has two places, one of them on {ClockWords.Weekday(place.Day)} at {ClockWords.Time(place.StartsAt)}."));
            else
                laid.Add(new Laid(session, place));
        }

        foreach (var one in laid)
            faults.AddRange([.. OfDay(problem, one), .. OfHours(problem, one), .. OfLook(one), .. OfOrder(problem, laid, one), .. OfBound(one)]);
        faults.AddRange(Clashes(problem, laid));
        faults.AddRange(OfAdults(problem, laid));
        var order = placings.Select((p, i) => (p.SessionId, i)).GroupBy(p => p.SessionId).ToDictionary(g => g.Key, g => g.First().i);
        return [.. faults.OrderBy(f => order[f.SessionId])];
    }

    private static IEnumerable<PlanFault> OfDay(WeekProblem problem, Laid one)
    {
        if (!problem.Days.Contains(one.Place.Day))
            yield return new PlanFault(FaultKind.OutsideDays, one.Session.Id, [], $"{one.Title} stands on {ClockWords.Day(one.Place.Day)}, which is not one of these days.");
        else if (one.Session.OnlyOn is { } only && !only.Contains(one.Place.Day))
            yield return new PlanFault(FaultKind.OutsideDays, one.Session.Id, [], only.Count == 0
                ? $"{one.Title} may stand on no day of this week."
                : $"{one.Title} may stand only on {ClockWords.List([.. only.Select(ClockWords.Weekday)])}, not on {ClockWords.Weekday(one.Place.Day)}.");
    }

    private static IEnumerable<PlanFault> OfHours(WeekProblem problem, Laid one)
    {
        foreach (var learner in problem.Learners.Where(l => one.Session.Learners.Contains(l.Id)))
        {
            var free = learner.Free.On(one.Place.Day);
            if (!free.Any(s => s.Holds(one.Body)))
                yield return new PlanFault(FaultKind.OutsideHours, one.Session.Id, [], $"{one.At} {learner.Name} is not free for the {ClockWords.Length(one.Session.Minutes)} of {one.Title}.");
            else if (one.Look is { } look && !free.Any(s => s.Holds(look)))
                yield return new PlanFault(FaultKind.OutsideHours, one.Session.Id, [], $"On {ClockWords.Weekday(one.Place.Day)} at {ClockWords.Time(look.From)} {learner.Name} is not free to look after {one.Title}.");
        }
    }

    private static IEnumerable<PlanFault> OfLook(Laid one)
    {
        if (one.Session.Wait is not { } wait)
            yield break;
        if (one.Place.LooksAt is not { } look)
        {
            yield return new PlanFault(FaultKind.LookMissing, one.Session.Id, [], $"{one.Title} waits {ClockWords.Length(wait.Minutes)}, and nobody looks after it.");
            yield break;
        }

        var earliest = one.Body.To + wait.Minutes;
        var latest = one.Place.StartsAt + (one.Session.Minutes + wait.Minutes + wait.Patience + 4) / 5 * 5;
        if (look < earliest || look > latest)
            yield return new PlanFault(FaultKind.LookAtWrongTime, one.Session.Id, [],
                $"{one.Title} is to be looked after between {ClockWords.Time(earliest)} and {ClockWords.Time(latest)} on {ClockWords.Weekday(one.Place.Day)}, not at {ClockWords.Time(look)}.");
    }

    private static IEnumerable<PlanFault> OfOrder(WeekProblem problem, List<Laid> laid, Laid one)
    {
        foreach (var before in one.Session.After)
        {
            var other = laid.FirstOrDefault(l => l.Session.Id == before.SessionId);
            var title = problem.Sessions.FirstOrDefault(s => s.Id == before.SessionId)?.Title ?? "another";
            if (other is null)
                yield return Fault($"{one.Title} comes after “{title}”, which has no place.");
            else if (before.DaysBefore > 0 && (At(problem, one.Place.Day) - At(problem, other.Place.Day) < before.DaysBefore || one.Place.Day <= other.Place.Day))
                yield return Fault($"{one.Title} comes {(before.DaysBefore == 1 ? "a day" : $"{before.DaysBefore} days")} after {other.Title}, which is on {ClockWords.Weekday(other.Place.Day)}; it cannot be on {ClockWords.Weekday(one.Place.Day)}.");
            else if (one.Place.Day < other.Place.Day || one.Place.Day == other.Place.Day && one.Place.StartsAt < other.Over)
                yield return Fault($"{one.Title} comes after {other.Title}, which is over on {ClockWords.Weekday(other.Place.Day)} at {ClockWords.Time(other.Over)}; it cannot begin on {ClockWords.Weekday(one.Place.Day)} at {ClockWords.Time(one.Place.StartsAt)}.");

            PlanFault Fault(string sentence) => new(FaultKind.TooEarlyAfter, one.Session.Id, [before.SessionId], sentence);
        }
    }

    // A day that is not among the problem's stands with the last one before it.
    private static int At(WeekProblem problem, DateOnly day) => problem.Days.Count(d => d <= day) - 1;

    private static IEnumerable<PlanFault> OfBound(Laid one)
    {
        if (one.Session.Bound is not { } bound)
            yield break;
        var hours = bound.Hours.On(one.Place.Day);
        if (!hours.Any(h => h.Holds(one.Body)) || one.Look is { } look && !hours.Any(h => h.Holds(look)))
            yield return new PlanFault(FaultKind.BoundHours, one.Session.Id, [], $"{one.At} {one.Title} would not be {bound.Because}.");
    }
}
