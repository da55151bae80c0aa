namespace CoopLessons.Core.Schedule.Layout;

/// <summary>The parts of a problem, put on the grid.</summary>
internal static class GridReading
{
    public static GridSession[] Sessions(WeekProblem problem, Dictionary<Guid, int> learnerAt)
    {
        var laid = problem.Sessions.Where(s => !s.Fixed).ToList();
        var at = laid.Select((s, i) => (s.Id, i)).ToDictionary(p => p.Id, p => p.i);
        var sessions = laid.Select((s, i) => new GridSession(i, s, [.. s.Learners.Select(id => learnerAt[id])])
        {
            Rests = [.. s.Learners.Select(id => Slots.Down(GridWeek.Rest(s, problem.Learners[learnerAt[id]])))],
            OldDay = s.Was is { } was ? GridWeek.IndexOf(problem.Days, was.Day) : -1,
            OldStart = s.Was is { } w && w.StartsAt % Slots.Minutes == 0 ? w.StartsAt / Slots.Minutes : -1,
            WishedDays = s.Wish?.Day is { } wish ? [.. problem.Days.Select(d => d.DayOfWeek == wish)] : null,
        }).ToArray();
        foreach (var session in sessions)
            foreach (var before in session.Source.After.Where(b => at.ContainsKey(b.SessionId)))
            {
                session.After.Add((at[before.SessionId], before.DaysBefore));
                sessions[at[before.SessionId]].Followers.Add((session.Index, before.DaysBefore));
            }

        // Those that nobody could tell apart but by their title, and that nothing else waits for.
        var awaited = problem.Sessions.SelectMany(s => s.After).Select(a => a.SessionId).ToHashSet();
        foreach (var group in sessions.Where(s => s.Source is { Alike: not null, Was: null } && !awaited.Contains(s.Source.Id)).GroupBy(Likeness, StringComparer.Ordinal))
            foreach (var (one, next) in group.Zip(group.Skip(1)))
                one.NextAlike = next.Index;
        return sessions;
    }

    private static string Likeness(GridSession session)
    {
        var s = session.Source;
        object?[] parts =
        [
            s.Alike, s.Subject, string.Join(" ", s.Learners), s.Minutes, s.Need, s.Weight, s.Wait, s.Wish,
            string.Join(" ", s.After.Select(a => $"{a.SessionId:N}:{a.DaysBefore}").Order(StringComparer.Ordinal)),
            s.OnlyOn is { } only ? string.Join(" ", only.Select(d => d.DayNumber).Order()) : null,
            s.Bound is { } bound ? string.Join(" ", bound.Hours.Days.OrderBy(d => d.Key).SelectMany(d => d.Value.Select(h => $"{d.Key.DayNumber}:{h.From}-{h.To}"))) : null,
        ];
        return string.Join("|", parts);
    }

    /// <summary>The share of a week's work that each day should hold: in proportion to its free slots, rounded to the nearest.</summary>
    public static int[] Targets(IReadOnlyList<DateOnly> days, IEnumerable<FreeTime> free, int work)
    {
        var times = free.ToList();
        int[] slots = [.. days.Select(d => times.Sum(f => Slots.Within(f.On(d)).Count(open => open)))];
        var all = slots.Sum();
        return [.. slots.Select(s => all == 0 ? 0 : (2 * work * s + all) / (2 * all))];
    }

    public static SubjectOfLearner[] Subjects(WeekProblem problem, List<(WeekSession Session, Placing Place)> places)
    {
        var laid = problem.Sessions.Where(s => !s.Fixed).Select((s, i) => (s, i)).ToList();
        return
        [
            .. from learner in problem.Learners.Select((l, i) => (l, i))
               let days = Math.Max(1, problem.Days.Count(d => Slots.Within(learner.l.Free.On(d)).Any(open => open)))
               from subject in problem.Sessions.Where(s => s.Subject is not null && s.Learners.Contains(learner.l.Id)).GroupBy(s => s.Subject!, StringComparer.Ordinal)
               select new SubjectOfLearner(
                   learner.i,
                   [.. laid.Where(p => p.s.Subject == subject.Key && p.s.Learners.Contains(learner.l.Id)).Select(p => p.i)],
                   [.. problem.Days.Select(d => places.Count(p => p.Place.Day == d && p.Session.Subject == subject.Key && p.Session.Learners.Contains(learner.l.Id)))],
                   (subject.Count() + days - 1) / days),
        ];
    }
}
