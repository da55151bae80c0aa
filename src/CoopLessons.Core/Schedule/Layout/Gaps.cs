using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>The time that is left for a session.</summary>
internal sealed class Gaps
{
    private readonly GridWeek _week;
    private readonly Draft _draft;
    private readonly DayBooks _books;

    [Flags]
    public enum Heed { Windows = 1, Adults = 2, Bound = 4, Plan = 8, All = 15 }

    public Gaps(GridWeek week, Draft draft)
    {
        (_week, _draft, _books) = (week, draft, new DayBooks(week));
        foreach (var s in week.Sessions.Where(s => draft.Day[s.Index] >= 0))
            _books.Enter(s, draft);
    }

    /// <summary>The longest stretch in slots, and the first day that has it; 0 on day 0 where there is none.</summary>
    public (int Day, int Slots) Longest(GridSession s, IEnumerable<int> days, Heed heed)
    {
        var best = (Day: 0, Slots: 0);
        foreach (var d in days)
        {
            var length = s.Need == AdultNeed.HandsOn && heed.HasFlag(Heed.Adults)
                ? Enumerable.Range(0, _week.Adults).Select(a => OnDay(s, d, heed, t => _books.HasHands(a, d, t, heed.HasFlag(Heed.Plan)))).DefaultIfEmpty(0).Max()
                : OnDay(s, d, heed, s.Need == AdultNeed.Beside && heed.HasFlag(Heed.Adults) ? t => _books.HasSomebody(d, t, heed.HasFlag(Heed.Plan)) : _ => true);
            if (length > best.Slots)
                best = (d, length);
        }

        return best;
    }

    private int OnDay(GridSession s, int d, Heed heed, Func<int, bool> adult)
    {
        var bound = heed.HasFlag(Heed.Bound) && s.Source.Bound is { } b ? Slots.Within(b.Hours.On(_week.Problem.Days[d])) : null;
        var open = new bool[Slots.Length];
        for (var t = 0; t < Slots.PerDay; t++)
            open[t] = (bound is null || bound[t]) && adult(t) && s.Learners.All(l => _week.Open[l][d][t] && !_week.Taken[l][d][t] && (!heed.HasFlag(Heed.Plan) || !_books.IsTaken(l, d, t)));
        if (heed.HasFlag(Heed.Plan))
        {
            foreach (var (before, lag) in s.After)
                for (var t = 0; t < Slots.PerDay; t++)
                    open[t] &= _draft.Day[before] >= 0 && d >= _draft.Day[before] + lag && (d > _draft.Day[before] || t >= End(_week.Sessions[before]));
        }

        var longest = 0;
        foreach (var (from, to) in Slots.Runs(open))
        {
            // The rest after it must be over when the next thing of its learners begins.
            var end = to;
            for (var i = 0; heed.HasFlag(Heed.Plan) && i < s.Learners.Length; i++)
                for (var t = to; t < Math.Min(to + s.Rests[i], Slots.Length); t++)
                    if (_books.IsTaken(s.Learners[i], d, t))
                        end = Math.Min(end, t - s.Rests[i]);
            longest = Math.Max(longest, end - from);
        }

        return longest;
    }

    /// <summary>Whether some start of the session on the day comes after another as it must.</summary>
    public bool IsAfter(GridSession s, GridSession other, int lag, int day) =>
        day >= _draft.Day[other.Index] + lag && (day > _draft.Day[other.Index] || s.Starts[day][^1] >= End(other));

    private int End(GridSession s) => s.Looks ? _draft.Look[s.Index] + s.LookLength : _draft.Start[s.Index] + s.Length;
}
