using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

public static partial class PlanCheck
{
    private static IEnumerable<PlanFault> Clashes(WeekProblem problem, List<Laid> laid)
    {
        foreach (var learner in problem.Learners)
        {
            var own = laid.Where(l => l.Session.Learners.Contains(learner.Id)).ToList();
            for (var i = 0; i < own.Count; i++)
            {
                if (own[i].Look is { } look && look.Meets(own[i].Body))
                    yield return new PlanFault(FaultKind.TwoPlaces, own[i].Session.Id, [], $"{own[i].At} {learner.Name} would be at {own[i].Title} and looking after it at once.");
                for (var j = i + 1; j < own.Count; j++)
                    if (own[i].Place.Day == own[j].Place.Day && Clash(learner, own[i], own[j]) is { } fault)
                        yield return fault;
            }
        }
    }

    private static PlanFault? Clash(WeekLearner learner, Laid one, Laid other)
    {
        Stretch[] ones = [one.Body, .. one.Look is { } l ? [l] : Array.Empty<Stretch>()];
        Stretch[] others = [other.Body, .. other.Look is { } k ? [k] : Array.Empty<Stretch>()];
        foreach (var a in ones)
            foreach (var b in others)
                if (a.Meets(b))
                    return new PlanFault(FaultKind.TwoPlaces, one.Session.Id, [other.Session.Id],
                        $"On {ClockWords.Weekday(one.Place.Day)} at {ClockWords.Time(Math.Max(a.From, b.From))} {learner.Name} would be in two places: {one.Title} and {other.Title}.");
        return NoRest(learner, one, other, others) ?? NoRest(learner, other, one, ones);
    }

    private static PlanFault? NoRest(WeekLearner learner, Laid one, Laid other, Stretch[] others)
    {
        var tooLong = one.Session.Minutes > learner.LongestSitting;
        var rest = tooLong ? 15 : one.Session.Minutes > 30 ? 10 : 5;
        if (one.Session.Wait is { } wait)
            rest = Math.Min(rest, wait.Minutes / 5 * 5);
        if (!others.Any(o => o.From >= one.Body.To && o.From < one.Body.To + rest))
            return null;
        var until = ClockWords.Time(one.Body.To + rest);
        return tooLong
            ? new PlanFault(FaultKind.TooLong, one.Session.Id, [other.Session.Id],
                $"{one.At} {one.Title} is longer than {learner.Name} sits at a time; a rest until {until} comes before {other.Title}.")
            : new PlanFault(FaultKind.TwoPlaces, one.Session.Id, [other.Session.Id],
                $"On {ClockWords.Weekday(one.Place.Day)} {learner.Name} changes over from {one.Title} until {until}, before {other.Title}.");
    }

    /// <summary>Hands taken at a time, and for what: a session or its look.</summary>
    private sealed record Hold(Laid Of, Stretch When, Guid? Adult)
    {
        public bool Meets(Hold other) => Of.Place.Day == other.Of.Place.Day && When.Meets(other.When);
        public string Day => ClockWords.Weekday(Of.Place.Day);
    }

    private static IEnumerable<PlanFault> OfAdults(WeekProblem problem, List<Laid> laid)
    {
        var asked = laid.SelectMany(l => (Hold[])
        [
            .. l.Session.Need == AdultNeed.HandsOn ? [new Hold(l, l.Body, l.Place.Adult)] : Array.Empty<Hold>(),
            .. l.Look is { } look ? [new Hold(l, look, l.Place.Looker)] : Array.Empty<Hold>(),
        ]).ToList();
        foreach (var hold in asked.Where(h => h.Adult is { } id && problem.Adults.All(a => a.Id != id)))
            yield return new PlanFault(FaultKind.Unknown, hold.Of.Session.Id, [], $"{hold.Of.Title} names an adult who is not in this week.");

        var held = asked.Where(h => h.Adult is not null && problem.Adults.Any(a => a.Id == h.Adult)).ToList();
        for (var i = 0; i < held.Count; i++)
        {
            var adult = problem.Adults.First(a => a.Id == held[i].Adult);
            if (!There(adult, held[i]))
                yield return new PlanFault(FaultKind.NoAdult, held[i].Of.Session.Id, [], $"On {held[i].Day} at {ClockWords.Time(held[i].When.From)} {adult.Name} is not there for {held[i].Of.Title}.");
            for (var j = i + 1; j < held.Count; j++)
                if (held[j].Adult == adult.Id && held[i].Meets(held[j]) && held[i].Of != held[j].Of)
                    yield return new PlanFault(FaultKind.NoAdult, held[i].Of.Session.Id, [held[j].Of.Session.Id],
                        $"On {held[i].Day} at {ClockWords.Time(Math.Max(held[i].When.From, held[j].When.From))} {adult.Name} would have {held[i].Of.Title} and {held[j].Of.Title} in hand at once.");
        }

        foreach (var hold in asked.Where(h => h.Adult is null).OrderBy(h => h.Of.Place.Day).ThenBy(h => h.When.From))
        {
            var adult = problem.Adults.FirstOrDefault(a => There(a, hold) && !held.Any(h => h.Adult == a.Id && h.Meets(hold)));
            if (adult is null)
                yield return new PlanFault(FaultKind.NoAdult, hold.Of.Session.Id, [.. held.Where(h => h.Meets(hold)).Select(h => h.Of.Session.Id).Distinct()],
                    $"On {hold.Day} at {ClockWords.Time(hold.When.From)} no adult has hands free for {hold.Of.Title}.");
            else
                held.Add(hold with { Adult = adult.Id });
        }

        foreach (var one in laid.Where(l => l.Session.Need == AdultNeed.Beside))
            if (Deserted(problem, held, one) is { } fault)
                yield return fault;
    }

    private static bool There(WeekAdult adult, Hold hold) => adult.Free.On(hold.Of.Place.Day).Any(s => s.Holds(hold.When));

    // Whether somebody is near can change only where somebody comes or goes, or where hands are taken or freed.
    private static PlanFault? Deserted(WeekProblem problem, List<Hold> held, Laid one)
    {
        var day = one.Place.Day;
        var meeting = held.Where(h => h.Of.Place.Day == day && h.When.Meets(one.Body)).ToList();
        var turns = meeting.SelectMany(h => new[] { h.When.From, h.When.To })
            .Concat(problem.Adults.SelectMany(a => a.Free.On(day)).SelectMany(s => new[] { s.From, s.To }))
            .Append(one.Body.From).Where(t => one.Body.From <= t && t < one.Body.To).Distinct().Order();
        foreach (var t in turns)
        {
            var there = problem.Adults.Where(a => a.Free.On(day).Any(s => s.From <= t && t < s.To)).ToList();
            if (there.Any(a => !meeting.Any(h => h.Adult == a.Id && h.When.From <= t && t < h.When.To)))
                continue;
            var busy = meeting.Where(h => h.When.From <= t && t < h.When.To && there.Any(a => a.Id == h.Adult)).ToList();
            var when = $"On {ClockWords.Weekday(day)} at {ClockWords.Time(t)}";
            return new PlanFault(FaultKind.NoAdult, one.Session.Id, [.. busy.Select(h => h.Of.Session.Id).Distinct()], busy.Count == 0
                ? $"{when} no adult is there to be near {one.Title}."
                : $"{when} nobody is free to be near {one.Title}: {ClockWords.List([.. busy.Select(h => $"{there.First(a => a.Id == h.Adult).Name} is at {h.Of.Title}")])}.");
        }

        return null;
    }
}
