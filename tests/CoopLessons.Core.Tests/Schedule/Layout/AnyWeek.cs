using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>How big an invented week is: children, sessions, adults.</summary>
public enum WeekSize { Tiny, Small, Usual, Tight, Large }

/// <summary>
/// Invented weeks, the same for the same size and seed on every machine (SplitMix64 by Steele, Lea and Flood, 2014).
/// Windows, ages and shares are made up to be like a family's week; they claim nothing about families.
/// </summary>
public sealed class AnyWeek
{
    public static readonly DateOnly Monday = new(2026, 3, 2);
    private static readonly string[] Birds = ["Wren", "Lark", "Heron", "Finch", "Robin"];
    private static readonly string[] Grown = ["Iris", "Basil"];
    private static readonly int[] Ages = [14, 12, 10, 8, 6];
    private readonly WeekSize _size;
    private readonly int _children;
    private readonly List<WeekSession> _sessions = [];
    private ulong _state;
    private int _ids;

    private AnyWeek(WeekSize size, int seed, int children)
    {
        (_size, _children) = (size, children);
        _state = unchecked((ulong)seed * 1_000_003 + (ulong)size);
    }

    public static WeekProblem Of(WeekSize size, int seed)
    {
        var (children, sessions, adults) = size switch
        {
            WeekSize.Tiny => (2, 9, 1 + seed % 2),
            WeekSize.Small => (2, 25, 1),
            WeekSize.Usual => (3, 45, 1),
            WeekSize.Tight => (3, 60, 1),
            _ => (5, 90, 2),
        };
        var week = new AnyWeek(size, seed, children);
        var learners = Enumerable.Range(0, children).Select(week.Learner).ToList();
        var grown = Enumerable.Range(0, adults).Select(week.Adult).ToList();
        week.Courses(learners, size == WeekSize.Tiny ? 2 : 5);
        week.Unit(learners, sessions - week._sessions.Count);
        return new WeekProblem(Days, learners, grown, week._sessions);
    }

    private static DateOnly[] Days => [.. Enumerable.Range(0, 5).Select(Monday.AddDays)];

    /// <summary>The same week on Tuesday morning when Tuesday is lost: Monday is done, and nobody has time on Tuesday.</summary>
    public static WeekProblem WithoutTuesday(WeekProblem week, WeekPlan plan)
    {
        var tuesday = Monday.AddDays(1);
        var places = plan.Places.ToDictionary(p => p.SessionId);
        return week with
        {
            Learners = [.. week.Learners.Select(l => l with { Free = Without(l.Free) })],
            Adults = [.. week.Adults.Select(a => a with { Free = Without(a.Free) })],
            Sessions = [.. week.Sessions.Select(s => places.TryGetValue(s.Id, out var p)
                ? s with { Was = new OldPlace(p.Day, p.StartsAt, p.LooksAt, p.Adult, p.Looker), Fixed = p.Day == Monday }
                : s)],
        };

        FreeTime Without(FreeTime free) => new(free.Days.Where(d => d.Key != tuesday).ToDictionary());
    }

    private ulong Draw()
    {
        unchecked
        {
            var z = _state += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    private int Draw(int from, int upTo) => from + (int)(Draw() % (ulong)(upTo - from + 1));

    private bool Chance(int percent) => Draw(1, 100) <= percent;

    private Guid NextId() => new(++_ids, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);

    private static int AgeOf(int child, int children) => children == 1 ? 10 : Ages[child * (Ages.Length - 1) / (children - 1)];

    private static int SittingOf(int age) => age < 8 ? 30 : age < 10 ? 45 : age < 13 ? 60 : 90;

    // Mornings and afternoons, Wednesday without the latter and Friday until two.
    private static List<Stretch> School(int day) => day switch
    {
        2 => [new(510, 720)],
        4 => [new(510, 720), new(780, 840)],
        _ => [new(510, 720), new(780, 900)],
    };

    private WeekLearner Learner(int child)
    {
        var days = Enumerable.Range(0, 5).Select(School).ToArray();
        for (var appointments = Draw(1, 2); appointments > 0; appointments--)
            Miss(days, Draw(0, 4), 5 * Draw(9, 12));
        return new WeekLearner(NextId(), Birds[child], SittingOf(AgeOf(child, _children)), Time(days));
    }

    private WeekAdult Adult(int adult)
    {
        var days = Enumerable.Range(0, 5).Select(School).ToArray();
        if (adult == 0)
            for (var i = 0; i < 2; i++)
                Miss(days, Draw(0, 4), 45);
        else
            foreach (var d in new[] { 0, 2, 4 })
                days[d].RemoveAt(0);
        return new WeekAdult(NextId(), Grown[adult], Time(days));
    }

    private void Miss(List<Stretch>[] days, int day, int minutes)
    {
        var at = Draw(0, days[day].Count - 1);
        var whole = days[day][at];
        if (whole.Minutes <= minutes)
            return;
        var from = whole.From + 5 * Draw(0, (whole.Minutes - minutes) / 5);
        days[day].RemoveAt(at);
        days[day].InsertRange(at, new[] { new Stretch(whole.From, from), new Stretch(from + minutes, whole.To) }.Where(s => s.Minutes > 0));
    }

    private static FreeTime Time(List<Stretch>[] days) =>
        new(days.Select((d, i) => (Monday.AddDays(i), (IReadOnlyList<Stretch>)d)).ToDictionary(p => p.Item1, p => p.Item2));

    private void Courses(List<WeekLearner> learners, int times)
    {
        for (var c = 0; c < learners.Count; c++)
        {
            var age = AgeOf(c, learners.Count);
            var numbers = age < 9 ? AdultNeed.HandsOn : age < 12 ? AdultNeed.Beside : AdultNeed.Alone;
            var reading = age < 9 ? AdultNeed.Beside : AdultNeed.Alone;
            for (var i = 1; i <= times; i++)
                _sessions.Add(new WeekSession(NextId(), $"Numbers {i} of {learners[c].Name}", "Mathematics", [learners[c].Id], 30, numbers) { Alike = $"numbers {c}", Weight = Weight.AboveAll });
            for (var i = 1; i <= times && _size > WeekSize.Small; i++)
                _sessions.Add(new WeekSession(NextId(), $"Reading {i} of {learners[c].Name}", "Reading", [learners[c].Id], 20, reading) { Alike = $"reading {c}" });
        }
    }

    private void Unit(List<WeekLearner> learners, int count)
    {
        Guid? last = null;
        for (var i = 1; i <= count; i++)
        {
            int[] who = Chance(45) ? [.. Enumerable.Range(0, learners.Count)] : Chance(50) ? [.. Pair(learners.Count)] : [Draw(0, learners.Count - 1)];
            var longest = who.Min(c => learners[c].LongestSitting);
            var need = Draw(1, 100) switch { <= 30 => AdultNeed.Alone, <= 68 => AdultNeed.Beside, _ => AdultNeed.HandsOn };
            var session = new WeekSession(NextId(), $"Grain {i}", Draw(0, 3) switch { 0 => "Science", 1 => "History", 2 => "Writing", _ => null },
                [.. who.Select(c => learners[c].Id)], Math.Min(longest, 5 * Draw(3, 12)), need)
            {
                Wait = Chance(14) ? new WaitAndLook(5 * Draw(4, 12), 5 * Draw(1, 2), 5 * Draw(3, 6)) : null,
                After = last is { } before && Chance(45) ? [new Precedence(before, Chance(35) ? 1 : 0)] : [],
                Wish = (Chance(20), Chance(25)) switch
                {
                    (false, false) => null,
                    var (day, morning) => new SessionWish(day ? (DayOfWeek)Draw(1, 5) : null, morning),
                },
                Weight = (Weight)Draw(1, 3),
            };
            _sessions.Add(session);
            last = session.Id;
        }
    }

    private IEnumerable<int> Pair(int children)
    {
        var one = Draw(0, children - 1);
        return new[] { one, (one + Draw(1, children - 1)) % children }.Order();
    }
}
