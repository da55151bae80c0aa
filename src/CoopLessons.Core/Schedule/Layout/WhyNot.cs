using CoopLessons.Core.Units;
using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// Why a session found no place, asked from the plainest reason to the least plain: time that it never had, what must come
/// before it, sums, the gaps that the plan leaves, and last a clash with the sessions of a day.
/// </summary>
internal sealed class WhyNot(GridWeek week, Draft draft, DayOrder order, Func<bool> mayAsk)
{
    private readonly Gaps _gaps = new(week, draft);

    public List<Misfit> Misfits() => [.. week.Sessions.Where(s => draft.Day[s.Index] < 0).Select(Of)];

    private Misfit Of(GridSession s) =>
        NoDay(s) ?? NoTime(s) ?? Waits(s) ?? NoLook(s) ?? TooMuch(s) ?? NoGap(s) ?? Clash(s)
        ?? new Misfit(s.Source.Id, "Why it finds no place was not found out; longer thinking may place it.", FoundOut: false, Choices(s, shorten: true));

    private static List<MisfitChoice> Choices(GridSession s, bool shorten, bool helper = false)
    {
        List<MisfitChoice> choices = [MisfitChoice.LeaveOut];
        if (shorten && s.Source.Minutes > 10)
            choices.Add(MisfitChoice.Shorten);
        choices.Add(MisfitChoice.NextWeek);
        if (helper)
            choices.Add(MisfitChoice.AskAHelper);
        return choices;
    }

    private static bool WantsAdult(GridSession s) => s.Need != AdultNeed.Alone || s.Looks;

    private string Names(GridSession s) => ClockWords.List([.. s.Learners.Select(l => week.Problem.Learners[l].Name)]);

    private string Weekday(int day) => ClockWords.Weekday(week.Problem.Days[day]);

    private IEnumerable<int> Days(GridSession s) =>
        Enumerable.Range(0, week.Days).Where(d => s.Source.OnlyOn is not { } only || only.Contains(week.Problem.Days[d]));

    private Misfit? NoDay(GridSession s) => Days(s).Any() ? null : new Misfit(
        s.Source.Id,
        s.Source.OnlyOn is { Count: > 0 } only
            ? $"May stand only on {ClockWords.List([.. only.Order().Select(ClockWords.Day)])}, which is not among these days."
            : "May stand on no day at all.",
        FoundOut: true, Choices(s, shorten: false));

    /// <summary>The windows alone, and what is fixed in them.</summary>
    private Misfit? NoTime(GridSession s)
    {
        var needs = $"Needs {ClockWords.Length(s.Source.Minutes)}";
        if (s.Source.Bound is { } bound)
        {
            var (at, most) = _gaps.Longest(s, Days(s), Gaps.Heed.Windows | Gaps.Heed.Bound | Gaps.Heed.Adults);
            return most >= s.Length ? null : Fault(most, helper: s.Need != AdultNeed.Alone, most == 0
                ? $"{needs} {bound.Because}; there is no such time on these days."
                : $"{needs} {bound.Because}; the longest stretch for it is {5 * most} on {Weekday(at)}.");
        }

        var (day, longest) = _gaps.Longest(s, Days(s), Gaps.Heed.Windows);
        if (longest < s.Length)
            return Fault(longest, helper: false, longest == 0
                ? $"{needs} with {Names(s)}, and there is no {(s.Learners.Length > 1 ? "time free for all of them" : "free time")} on these days."
                : s.Learners.Length > 1
                    ? $"{needs} with {Names(s)}; their longest shared free time is {5 * longest} on {Weekday(day)}."
                    : $"{needs} with {Names(s)}; the longest free time is {5 * longest} on {Weekday(day)}.");
        (day, longest) = _gaps.Longest(s, Days(s), Gaps.Heed.Windows | Gaps.Heed.Adults);
        return longest >= s.Length ? null : Fault(longest, helper: true, longest == 0
            ? $"{needs} with an adult, and no adult is there when {Names(s)} {(s.Learners.Length > 1 ? "are" : "is")} free."
            : $"{needs} with an adult; the longest time that an adult shares with {Names(s)} is {5 * longest} on {Weekday(day)}.");

        Misfit Fault(int most, bool helper, string reason) => new(s.Source.Id, reason, FoundOut: true, Choices(s, shorten: most >= 2, helper));
    }

    private Misfit? Waits(GridSession s)
    {
        foreach (var (before, lag) in s.After)
        {
            var other = week.Sessions[before];
            if (draft.Day[before] < 0)
                return Fault($"Comes after “{other.Source.Title}”, which found no place.");
            if (Enumerable.Range(0, week.Days).All(d => s.Starts[d].Length == 0 || !_gaps.IsAfter(s, other, lag, d)))
                return Fault($"Comes {(lag == 0 ? "after" : lag == 1 ? "a day after" : $"{lag} days after")} “{other.Source.Title}”, which is on {Weekday(draft.Day[before])}; no time is left behind it.");
        }

        var neighbours = week.Fixed.Where(f => s.Source.After.Any(a => a.SessionId == f.Session.Id) || f.Session.After.Any(a => a.SessionId == s.Source.Id)).ToList();
        return s.Possible || s.Looks || neighbours.Count == 0 ? null
            : Fault($"Belongs before or after “{neighbours[0].Session.Title}”, which is fixed on {ClockWords.Weekday(neighbours[0].Place.Day)}; no time is left for it there.");

        Misfit Fault(string reason) => new(s.Source.Id, reason, FoundOut: true, Choices(s, shorten: false));
    }

    private static Misfit? NoLook(GridSession s)
    {
        if (s.Possible || s.Source.Wait is not { } wait)
            return null;
        return new Misfit(s.Source.Id,
            $"Needs a look by an adult {ClockWords.Length(wait.Minutes)} after its end; on no day is there time for both{(s.Source.Bound is { } bound ? $" {bound.Because}" : "")}.", FoundOut: true, Choices(s, shorten: true, helper: true));
    }

    /// <summary>All that is asked of somebody, against all the time there is.</summary>
    private Misfit? TooMuch(GridSession s)
    {
        foreach (var l in s.Learners)
        {
            var work = week.Sessions.Where(o => o.Learners.Contains(l)).Sum(o => o.Load);
            var free = Enumerable.Range(0, week.Days).Sum(d => Enumerable.Range(0, Slots.PerDay).Count(t => week.Open[l][d][t] && !week.Taken[l][d][t]));
            if (work > free)
                return new Misfit(s.Source.Id, $"What is planned for {week.Problem.Learners[l].Name} takes {ClockWords.Length(5 * work)}; the free time is {ClockWords.Length(5 * free)}.", FoundOut: true, Choices(s, shorten: true));
        }

        if (s.HandsLoad == 0)
            return null;
        var hands = week.Sessions.Sum(o => o.HandsLoad);
        var there = Enumerable.Range(0, week.Days).Sum(d => Enumerable.Range(0, Slots.PerDay).Sum(t => week.AdultFree.Count(a => a[d][t])));
        return hands <= there ? null
            : new Misfit(s.Source.Id, $"What needs an adult’s hands takes {ClockWords.Length(5 * hands)}; the adults have {ClockWords.Length(5 * there)}.", FoundOut: true, Choices(s, shorten: true, helper: true));
    }

    private Misfit? NoGap(GridSession s)
    {
        var days = Enumerable.Range(0, week.Days).Where(d => s.Starts[d].Length > 0).ToList();
        var (day, longest) = _gaps.Longest(s, days, Gaps.Heed.All);
        if (longest >= s.Length)
            return null;
        var needs = $"Needs {ClockWords.Length(s.Source.Minutes)}{(s.Need == AdultNeed.Alone ? $" with {Names(s)}" : " with an adult")}";
        return new Misfit(s.Source.Id, longest <= 0 ? $"{needs}; no gap is left." : $"{needs}; the longest gap left is {5 * longest} on {Weekday(day)}.",
            FoundOut: true, Choices(s, shorten: longest >= 2, helper: s.Need != AdultNeed.Alone));
    }

    private Misfit? Clash(GridSession s)
    {
        (int Day, List<int> Core)? best = null;
        var none = new bool[week.Sessions.Length];
        for (var d = 0; d < week.Days; d++)
        {
            if (s.Starts[d].Length == 0 || !mayAsk())
                continue;
            var there = draft.Copy();
            there.Day[s.Index] = d;
            int[] here = [.. Enumerable.Range(0, week.Sessions.Length).Where(o => there.Day[o] == d)];
            var (status, _) = order.Place(there, d, here, none);
            if (Thinking.Found(status))
                return new Misfit(s.Source.Id, $"Would fit on {Weekday(d)} if that day were put in another order; longer thinking may place it.", FoundOut: true, Choices(s, shorten: true));
            if (status == CpSolverStatus.Infeasible && order.Clash(there, d, here, none) is { } core && (best is null || core.Count < best.Value.Core.Count))
                best = (d, core);
        }

        if (best is not { } found)
            return null;
        var others = found.Core.Where(o => o != s.Index).Select(o => $"“{week.Sessions[o].Source.Title}”").ToList();
        return new Misfit(s.Source.Id, others.Count == 0
            ? $"Finds no time on any day beside what is fixed."
            : $"Does not go together with what is planned: on {Weekday(found.Day)}, for example, it clashes with {ClockWords.List(others)}.",
            FoundOut: true, Choices(s, shorten: true, helper: WantsAdult(s)));
    }
}
