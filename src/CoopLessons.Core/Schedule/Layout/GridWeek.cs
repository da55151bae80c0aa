using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>Sessions of one subject of one learner: more than <paramref name="Share"/> of them on a day count.</summary>
/// <param name="Members">Indices of sessions to be placed.</param>
/// <param name="Fixed">How many fixed ones there are, day by day.</param>
internal sealed record SubjectOfLearner(int Learner, int[] Members, int[] Fixed, int Share);

/// <summary>A problem on the grid: indices in place of ids, slots in place of minutes, and the fixed sessions taken out of what is free.</summary>
internal sealed class GridWeek
{
    /// <summary>Unevenness of this many slots either way counts nothing: nobody feels half an hour, and without it no plan is ever proven.</summary>
    public const int Band = 6;

    private GridWeek(WeekProblem problem) => Problem = problem;

    public WeekProblem Problem { get; }
    public int Days => Problem.Days.Count;
    public int Adults => Problem.Adults.Count;
    public int Learners => Problem.Learners.Count;
    public required List<(WeekSession Session, Placing Place)> Fixed { get; init; }
    public required GridSession[] Sessions { get; init; }

    /// <summary>By learner and day: windows; and what fixed sessions take, rest included.</summary>
    public required bool[][][] Open { get; init; }
    public required bool[][][] Taken { get; init; }

    /// <summary>By adult and day: windows without the fixed sessions that the adult has in hand.</summary>
    public required bool[][][] AdultFree { get; init; }

    /// <summary>By day: slots in which a fixed session wants some adult beside it, and has one.</summary>
    public required bool[][] BesideFixed { get; init; }

    /// <summary>By learner and day, in slots: what the day should hold, and what of it is fixed.</summary>
    public required int[][] Target { get; init; }
    public required int[][] FixedLoad { get; init; }
    public required int[] HandsTarget { get; init; }
    public required int[] FixedHands { get; init; }
    public required SubjectOfLearner[] Subjects { get; init; }

    /// <summary>Wishes of fixed sessions that are not met.</summary>
    public required int FixedUnmet { get; init; }

    public static GridWeek Of(WeekProblem problem)
    {
        var places = FixedPlaces.Of(problem);
        var days = problem.Days;
        var learnerAt = problem.Learners.Select((l, i) => (l.Id, i)).ToDictionary(p => p.Id, p => p.i);
        var adultAt = problem.Adults.Select((a, i) => (a.Id, i)).ToDictionary(p => p.Id, p => p.i);
        bool[][][] open = [.. problem.Learners.Select(l => days.Select(d => Slots.Within(l.Free.On(d))).ToArray())];
        bool[][][] taken = [.. problem.Learners.Select(_ => days.Select(_ => new bool[Slots.Length]).ToArray())];
        bool[][][] adultFree = [.. problem.Adults.Select(a => days.Select(d => Slots.Within(a.Free.On(d))).ToArray())];
        bool[][] beside = [.. days.Select(_ => new bool[Slots.Length])];
        int[][] load = [.. problem.Learners.Select(_ => new int[days.Count])];
        var hands = new int[days.Count];
        foreach (var (session, place) in places)
        {
            var d = IndexOf(days, place.Day);
            if (d < 0)
                continue;
            var end = place.StartsAt + session.Minutes;
            var lookEnd = place.LooksAt + session.Wait?.LookMinutes ?? 0;
            var look = Slots.Up(session.Wait?.LookMinutes ?? 0);
            foreach (var l in session.Learners.Select(id => learnerAt[id]))
            {
                Slots.Take(taken[l][d], place.StartsAt, end + Rest(session, problem.Learners[l]));
                if (place.LooksAt is { } k)
                    Slots.Take(taken[l][d], k, lookEnd);
                load[l][d] += Slots.Up(session.Minutes) + look;
            }

            hands[d] += (session.Need == AdultNeed.HandsOn ? Slots.Up(session.Minutes) : 0) + look;
            Block(place.Adult, place.StartsAt, end);
            if (place.LooksAt is { } from)
                Block(place.Looker, from, lookEnd);

            void Block(Guid? adult, int fromMinute, int toMinute)
            {
                if (adult is not { } id)
                    return;
                var busy = new bool[Slots.Length];
                Slots.Take(busy, fromMinute, toMinute);
                var free = adultFree[adultAt[id]][d];
                for (var t = 0; t < Slots.Length; t++)
                    free[t] &= !busy[t];
            }
        }

        foreach (var (session, place) in places.Where(p => p.Session.Need == AdultNeed.Beside))
            if (IndexOf(days, place.Day) is var d and >= 0)
                Slots.Take(beside[d], place.StartsAt, place.StartsAt + session.Minutes);
        for (var d = 0; d < days.Count; d++)
            for (var t = 0; t < Slots.Length; t++)
                beside[d][t] &= adultFree.Any(a => a[d][t]);

        var week = new GridWeek(problem)
        {
            Fixed = places,
            Sessions = GridReading.Sessions(problem, learnerAt),
            Open = open,
            Taken = taken,
            AdultFree = adultFree,
            BesideFixed = beside,
            Target = [.. problem.Learners.Select(l => GridReading.Targets(days, [l.Free], problem.Sessions.Where(s => s.Learners.Contains(l.Id)).Sum(s => Slots.Up(s.Minutes) + Slots.Up(s.Wait?.LookMinutes ?? 0))))],
            FixedLoad = load,
            HandsTarget = GridReading.Targets(days, problem.Adults.Select(a => a.Free), problem.Sessions.Sum(s => (s.Need == AdultNeed.HandsOn ? Slots.Up(s.Minutes) : 0) + Slots.Up(s.Wait?.LookMinutes ?? 0))),
            FixedHands = hands,
            Subjects = GridReading.Subjects(problem, places),
            FixedUnmet = places.Sum(p => Unmet(p.Session, p.Place)),
        };
        GridDomains.Set(week);
        return week;
    }

    public static int IndexOf(IReadOnlyList<DateOnly> days, DateOnly day)
    {
        for (var i = 0; i < days.Count; i++)
            if (days[i] == day)
                return i;
        return -1;
    }

    /// <summary>Minutes of change and rest after a session, for one of its learners.</summary>
    public static int Rest(WeekSession session, WeekLearner learner)
    {
        var rest = session.Minutes > learner.LongestSitting ? 15 : session.Minutes > 30 ? 10 : 5;
        return session.Wait is { } wait ? Math.Min(rest, Slots.Minutes * Slots.Down(wait.Minutes)) : rest;
    }

    private static int Unmet(WeekSession session, Placing place) =>
        (session.Wish?.Day is { } day && day != place.Day.DayOfWeek ? 1 : 0)
        + (session.Wish is { Morning: true } && place.StartsAt + session.Minutes > 12 * 60 ? 1 : 0);
}
