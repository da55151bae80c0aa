namespace CoopLessons.Core.Schedule;

/// <summary>What is wrong with a problem itself, before anybody tries to lay it out.</summary>
public static class WeekFaults
{
    private const int Day = 24 * 60;

    /// <summary>One sentence for each fault, in the order of the problem's parts; nothing where all is well.</summary>
    public static IReadOnlyList<string> Of(WeekProblem problem) =>
        [.. OfDays(problem), .. OfPeople(problem), .. OfIds(problem), .. problem.Sessions.SelectMany(s => OfSession(problem, s)), .. OfOrder(problem)];

    private static IEnumerable<string> OfDays(WeekProblem problem)
    {
        if (problem.Days.Count is < 1 or > 7)
            yield return $"A week to be laid out has 1 to 7 days, not {problem.Days.Count}.";
        for (var i = 1; i < problem.Days.Count; i++)
            if (problem.Days[i] <= problem.Days[i - 1])
                yield return $"The days are to ascend; {ClockWords.Day(problem.Days[i])} stands after {ClockWords.Day(problem.Days[i - 1])}.";
    }

    private static IEnumerable<string> OfPeople(WeekProblem problem)
    {
        if (problem.Adults.Count > WeekProblem.MostAdults)
            yield return $"At most four adults can be in a week; these are {problem.Adults.Count}.";
        foreach (var learner in problem.Learners)
        {
            if (learner.LongestSitting is < 1 or > Day)
                yield return $"The longest sitting of {learner.Name} is to be from 1 minute to a day.";
            foreach (var fault in OfTime(learner.Free, $"The free time of {learner.Name}"))
                yield return fault;
        }

        foreach (var fault in problem.Adults.SelectMany(a => OfTime(a.Free, $"The free time of {a.Name}")))
            yield return fault;
    }

    private static IEnumerable<string> OfTime(FreeTime time, string whose)
    {
        foreach (var (day, stretches) in time.Days.OrderBy(d => d.Key))
        {
            if (stretches.Any(s => s.From < 0 || s.To > Day || s.From >= s.To))
                yield return $"{whose} on {ClockWords.Day(day)} does not lie within the day everywhere.";
            else if (stretches.Zip(stretches.Skip(1)).Any(pair => pair.Second.From <= pair.First.To))
                yield return $"{whose} on {ClockWords.Day(day)} does not ascend in stretches apart from each other.";
        }
    }

    private static IEnumerable<string> OfIds(WeekProblem problem)
    {
        if (Repeats(problem.Learners.Select(l => l.Id)))
            yield return "Two learners have the same id.";
        if (Repeats(problem.Adults.Select(a => a.Id)))
            yield return "Two adults have the same id.";
        if (Repeats(problem.Sessions.Select(s => s.Id)))
            yield return "Two sessions have the same id.";
    }

    private static bool Repeats(IEnumerable<Guid> ids) => ids.GroupBy(id => id).Any(g => g.Skip(1).Any());

    private static IEnumerable<string> OfSession(WeekProblem problem, WeekSession session)
    {
        var title = $"“{session.Title}”";
        if (session.Minutes is < 1 or > Day)
            yield return $"{title} is to take from 1 minute to a day.";
        if (session.Learners.Count == 0)
            yield return $"{title} has no learner.";
        if (Repeats(session.Learners))
            yield return $"{title} names a learner twice.";
        if (session.Learners.Any(id => problem.Learners.All(l => l.Id != id)))
            yield return $"{title} names a learner who is not in the week.";
        if (!Enum.IsDefined(session.Weight) || !Enum.IsDefined(session.Need))
            yield return $"{title} has a weight or a need that is not known.";
        if (session.Wait is { } wait && (wait.Minutes is < 0 or > Day || wait.LookMinutes is < 1 or > Day || wait.Patience is < 0 or > Day))
            yield return $"{title} waits less than nothing or more than a day.";
        if (session.Fixed && session.Was is null)
            yield return $"{title} is to stay where it was, and nothing says where that is.";
        if (session.Was is { } was && (was.StartsAt is < 0 or >= Day || was.LooksAt is < 0 or >= Day))
            yield return $"{title} stood at a time that is not within a day.";
        if (session.Was is { } place && new[] { place.Adult, place.Looker }.Any(id => id is { } adult && problem.Adults.All(a => a.Id != adult)))
            yield return $"{title} was with an adult who is not in the week.";
        if (session.Bound is { } bound)
            foreach (var fault in OfTime(bound.Hours, $"What {title} is bound to"))
                yield return fault;
        foreach (var before in session.After)
        {
            if (before.DaysBefore is < 0 or > 7)
                yield return $"{title} comes 0 to 7 days after another, not {before.DaysBefore}.";
            if (before.SessionId == session.Id)
                yield return $"{title} comes after itself.";
            else if (problem.Sessions.All(s => s.Id != before.SessionId))
                yield return $"{title} comes after a session that is not in the week.";
        }
    }

    // Sessions are taken away as long as nothing is left that must come before them; what then remains goes in a circle.
    private static IEnumerable<string> OfOrder(WeekProblem problem)
    {
        var left = problem.Sessions.DistinctBy(s => s.Id).ToList();
        while (true)
        {
            var ids = left.Select(s => s.Id).ToHashSet();
            var free = left.RemoveAll(s => !s.After.Any(a => a.SessionId != s.Id && ids.Contains(a.SessionId)));
            if (left.Count == 0)
                yield break;
            if (free > 0)
                continue;
            yield return $"“{left[0].Title}” comes after a session that in the end comes after it.";
            yield break;
        }
    }
}
