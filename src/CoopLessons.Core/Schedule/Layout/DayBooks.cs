using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>Who is taken when, while sessions are put into days one after another.</summary>
internal sealed class DayBooks
{
    private readonly GridWeek _week;
    private readonly bool[][][] _taken;
    private readonly bool[][][] _free;
    private readonly int[][] _beside;

    public DayBooks(GridWeek week)
    {
        _week = week;
        _taken = [.. week.Taken.Select(l => l.Select(d => d.ToArray()).ToArray())];
        _free = [.. week.AdultFree.Select(a => a.Select(d => d.ToArray()).ToArray())];
        _beside = [.. week.BesideFixed.Select(d => d.Select(b => b ? 1 : 0).ToArray())];
    }

    /// <summary>Whether a session may start there beside what is entered already; the look and the hands that it would take.</summary>
    public bool Fits(GridSession s, int day, int start, out int look, out int hands, out int looker)
    {
        look = hands = looker = -1;
        for (var i = 0; i < s.Learners.Length; i++)
            if (Slots.Any(_taken[s.Learners[i]][day], start, start + s.Length + s.Rests[i]))
                return false;
        if (s.Need == AdultNeed.HandsOn && (hands = Hands(day, start, start + s.Length)) < 0)
            return false;
        if (s.Need == AdultNeed.Beside)
            for (var t = start; t < start + s.Length; t++)
                if (!SomebodyIsFree(day, t, but: -1))
                    return false;
        if (!s.Looks)
            return true;
        for (var k = start + s.LookFrom; k <= start + s.LookTo && k < Slots.PerDay; k++)
        {
            if (!s.LookStarts[day][k] || s.Learners.Any(l => Slots.Any(_taken[l][day], k, k + s.LookLength)))
                continue;
            looker = Hands(day, k, k + s.LookLength);
            look = k;
            if (looker >= 0)
                return true;
        }

        return false;
    }

    public void Enter(GridSession s, Draft draft)
    {
        var (d, start, look) = (draft.Day[s.Index], draft.Start[s.Index], draft.Look[s.Index]);
        for (var i = 0; i < s.Learners.Length; i++)
        {
            Array.Fill(_taken[s.Learners[i]][d], true, start, s.Length + s.Rests[i]);
            if (look >= 0)
                Array.Fill(_taken[s.Learners[i]][d], true, look, s.LookLength);
        }

        if (draft.Hands[s.Index] is var hands and >= 0)
            Array.Fill(_free[hands][d], false, start, s.Length);
        if (draft.Looker[s.Index] is var looker and >= 0)
            Array.Fill(_free[looker][d], false, look, s.LookLength);
        if (s.Need == AdultNeed.Beside)
            for (var t = start; t < start + s.Length; t++)
                _beside[d][t]++;
    }

    public bool IsTaken(int learner, int day, int slot) => _taken[learner][day][slot];

    /// <summary>Whether an adult may take something in hand; without the plan, as far as what is fixed alone goes.</summary>
    public bool HasHands(int adult, int day, int slot, bool planned) => planned
        ? _free[adult][day][slot] && (_beside[day][slot] == 0 || SomebodyIsFree(day, slot, but: adult))
        : _week.AdultFree[adult][day][slot];

    /// <summary>Whether some adult may be near.</summary>
    public bool HasSomebody(int day, int slot, bool planned) => planned ? SomebodyIsFree(day, slot, but: -1) : _week.AdultFree.Any(a => a[day][slot]);

    private int Hands(int day, int from, int to)
    {
        for (var a = 0; a < _free.Length; a++)
        {
            if (!Slots.All(_free[a][day], from, to))
                continue;
            var alone = false;
            for (var t = from; t < to && !alone; t++)
                alone = _beside[day][t] > 0 && !SomebodyIsFree(day, t, but: a);
            if (!alone)
                return a;
        }

        return -1;
    }

    private bool SomebodyIsFree(int day, int slot, int but)
    {
        for (var a = 0; a < _week.Adults; a++)
            if (a != but && _free[a][day][slot])
                return true;
        return false;
    }
}
