using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>
/// Weeks so small that every plan can be tried: sharings-out of sessions over days from the cheapest on, every start in
/// each, held against the rules by the checker. The first that works is the best there is.
/// </summary>
public class Every_way_there_is
{
    private static DateOnly[] Days(int count) => [.. Enumerable.Range(0, count).Select(AnyWeek.Monday.AddDays)];

    private static Guid Id(int kind, int number) => new(kind, (short)number, 0, [0, 0, 0, 0, 0, 0, 0, 3]);

    private static FreeTime Time(params (int From, int To)[] days) =>
        new(days.Select((d, i) => (AnyWeek.Monday.AddDays(i), (IReadOnlyList<Stretch>)(d.From < 720 && d.To > 725 ? [new(d.From, 720), new(725, d.To)] : [new(d.From, d.To)]))).ToDictionary(p => p.Item1, p => p.Item2));

    private static readonly Gen<(int, int)> Window = Gen.Select(Gen.Int[133, 139], Gen.Int[8, 16], (from, length) => (5 * from, 5 * (from + length)));

    private static Gen<FreeTime> Free(int days) => Window.Array[days].Select(Time);

    private static Gen<T> AnyOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Gen<WeekSession> Session(int i, int learners, int adults) =>
        from who in Gen.Int[1, (1 << learners) - 1]
        from minutes in AnyOf(10, 15, 20, 25, 30, 35)
        from need in AnyOf(adults == 0 ? new[] { AdultNeed.Alone } : Enum.GetValues<AdultNeed>())
        from waits in Gen.Int[0, 7]
        from wait in Gen.Select(AnyOf(0, 5, 10, 20), AnyOf(5, 10), AnyOf(0, 10), (w, l, p) => new WaitAndLook(w, l, p))
        from after in Gen.Int[-3, i - 1]
        from lag in AnyOf(0, 0, 1)
        from wish in Gen.Int[0, 3]
        from weight in Gen.Enum<Weight>()
        from was in Gen.Int[0, 5]
        from subject in AnyOf<string?>(null, "Reading", "Science")
        select new WeekSession(Id(3, i), $"Thing {i}", subject, [.. Enumerable.Range(0, learners).Where(l => (who >> l & 1) == 1).Select(l => Id(1, l))], minutes, need)
        {
            Weight = weight,
            Wait = waits == 0 && adults > 0 ? wait : null,
            After = after < 0 ? [] : [new Precedence(Id(3, after), lag)],
            Wish = wish switch { 1 => new SessionWish(DayOfWeek.Tuesday, false), 2 => new SessionWish(null, true), _ => null },
            Was = was < 2 ? new OldPlace(AnyWeek.Monday.AddDays(was), 690) : null,
        };

    private static Gen<WeekProblem> Weeks(int days) =>
        from learners in Gen.Int[1, 2]
        from adults in Gen.Int[0, 2]
        from free in Free(days).Array[learners]
        from present in Free(days).Array[adults]
        from a in Session(0, learners, adults)
        from b in Session(1, learners, adults)
        from c in Session(2, learners, adults)
        from d in Session(3, learners, adults)
        select new WeekProblem(
            Days(days),
            [.. free.Select((f, i) => new WeekLearner(Id(1, i), i == 0 ? "Wren" : "Lark", 25, f))],
            [.. present.Select((f, i) => new WeekAdult(Id(2, i), i == 0 ? "Iris" : "Basil", f))],
            [a, b, c, d]);

    // With two days the solver sees the whole week at once; from three on the bound comes from sharing out in sums.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Finds_nothing_better_than_the_plan_of_a_hundred_weeks(int days) => Weeks(days).Sample(
        week =>
        {
            var plan = WeekLayout.Solve(week, Effort.Usual);
            Assert.Empty(PlanCheck.Faults(week, plan.Places));
            Assert.Equal(Proof.Best, plan.Proof);
            Assert.Equal(Least(week), plan.Cost.Total);
            Assert.Equal(plan.Cost.Total, plan.Bound);
        },
        iter: 100, threads: 1, seed: "0000Kj8aHdf4");

    private static int Least(WeekProblem week)
    {
        // For each session: nowhere, on a day before noon where it wishes for that, on a day whenever.
        var (ways, days) = (week.Sessions.Count, week.Days.Count);
        IEnumerable<int[]> all = [[]];
        foreach (var session in week.Sessions)
            all = all.SelectMany(c => Enumerable.Range(0, 2 * days + 1).Where(o => o == 0 || o > days || session.Wish is { Morning: true }).Select(o => (int[])[.. c, o]));
        // The cost asks for the day and for whether it is over by noon; the minute does not matter.
        var choices = all.Where(c => InOrder(week, c)).Select(choice => (
            PlanCheck.Cost(week, [.. week.Sessions.Select((s, i) => choice[i] == 0 ? null : new Placing(s.Id, DayOf(week, choice[i]), choice[i] <= days ? 0 : 1000, null, null, null)).OfType<Placing>()]).Total,
            Choice: choice)).ToList();

        var known = new Dictionary<string, bool>();
        return choices.OrderBy(c => c.Total).First(c => week.Days.All(day => Works(day, c.Choice))).Total;

        bool Works(DateOnly day, int[] choice)
        {
            var here = Enumerable.Range(0, ways).Where(i => choice[i] > 0 && DayOf(week, choice[i]) == day).ToList();
            var key = $"{day}:{string.Join(",", here.Select(i => $"{i}{choice[i] <= days}"))}";
            if (!known.TryGetValue(key, out var works))
                known[key] = works = Fits(week, day, [.. here.Select(i => (week.Sessions[i], choice[i] <= days))], []);
            return works;
        }
    }

    private static DateOnly DayOf(WeekProblem week, int choice) => week.Days[(choice - 1) % week.Days.Count];

    private static bool InOrder(WeekProblem week, int[] choice) => week.Sessions.Select((s, i) => (s, i)).Where(p => choice[p.i] > 0).All(p => p.s.After.All(a =>
    {
        var before = week.Sessions.ToList().FindIndex(s => s.Id == a.SessionId);
        return choice[before] > 0 && DayOf(week, choice[p.i]).DayNumber - DayOf(week, choice[before]).DayNumber >= a.DaysBefore;
    }));

    private static bool Fits(WeekProblem week, DateOnly day, (WeekSession Session, bool Morning)[] left, List<Placing> placed)
    {
        if (left.Length == 0)
            return true;
        var (session, morning) = left[0];
        var hands = session.Need == AdultNeed.HandsOn ? week.Adults.Select(a => (Guid?)a.Id).ToArray() : [null];
        foreach (var free in week.Learners.First(l => l.Id == session.Learners[0]).Free.On(day))
            for (var t = free.From; t + session.Minutes <= (morning ? Math.Min(720, free.To) : free.To); t += 5)
                foreach (var place in Looks(week, session, t).SelectMany(look => hands.Select(h => new Placing(session.Id, day, t, look.At, h, look.Who))))
                {
                    List<Placing> more = [.. placed, place];
                    // What stands on another day was looked at before.
                    if (PlanCheck.Faults(week, more).All(f => f.Kind == FaultKind.TooEarlyAfter && more.All(p => !f.With.Contains(p.SessionId)))
                        && Fits(week, day, left[1..], more))
                        return true;
                }

        return false;
    }

    private static IEnumerable<(int? At, Guid? Who)> Looks(WeekProblem week, WeekSession session, int start)
    {
        if (session.Wait is not { } wait)
            return [(null, null)];
        return from late in Enumerable.Range(0, wait.Patience / 5 + 1)
               from adult in week.Adults
               select ((int?)(start + session.Minutes + wait.Minutes + 5 * late), (Guid?)adult.Id);
    }
}
