using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// Makes a plan cheaper two days at a time: everything on them, and everything without a place, is free; the rest stays.
/// One worker of the solver has no search of this kind by itself.
/// </summary>
internal sealed class DayPairs(GridWeek week, Thinking thinking)
{
    private const double Share = 0.04;

    // The state of the two days when they were last found to be as good as they can be.
    private readonly Dictionary<(int, int), string> _done = [];

    /// <summary>Whether a draft was found that nothing beats, since the two days were all there are.</summary>
    public bool Proven { get; private set; }

    /// <summary>Rounds over all pairs until a whole round changes nothing, or the effort or the cost is where it should be.</summary>
    public Draft Improve(Draft draft, double spentAtMost, int costAtLeast, Action<Draft> found)
    {
        var cost = draft.Price(week).Total;
        for (var better = true; better;)
        {
            better = false;
            foreach (var days in Pairs())
            {
                if (cost <= costAtLeast || thinking.Spent >= spentAtMost || thinking.CutShort)
                    return draft;
                if (Improved(draft, days) is not { } next)
                    continue;
                var price = next.Price(week).Total;
                if (price > cost)
                    continue;
                next.PutAlikeInOrder(week);
                better |= price < cost;
                if (price < cost)
                    found(next);
                (draft, cost) = (next, price);
            }
        }

        return draft;
    }

    private IEnumerable<int[]> Pairs()
    {
        if (week.Days == 1)
            yield return [0];
        for (var one = 0; one < week.Days; one++)
            for (var other = one + 1; other < week.Days; other++)
                yield return [one, other];
    }

    private Draft? Improved(Draft draft, int[] days)
    {
        var key = (days[0], days[^1]);
        var state = State(draft, days);
        if (_done.GetValueOrDefault(key) == state)
            return null;
        var free = week.Sessions.Where(s => s.Possible && (draft.Day[s.Index] < 0 || days.Contains(draft.Day[s.Index]))).ToList();
        if (free.Count == 0)
            return null;
        var missing = free.Any(s => draft.Day[s.Index] < 0);
        var model = new PlacingModel(week, free, days, draft, all: false);
        model.MinimizePrice();
        model.Hint(draft);
        var (status, solver) = thinking.Solve(model.Model, Share, missing ? "cp_model_probing_level:0" : "cp_model_presolve:false");
        if (!Thinking.Found(status))
            return null;
        var next = model.Read(solver);
        if (status == CpSolverStatus.Optimal)
        {
            _done[key] = State(next, days);
            Proven |= days.Length == week.Days;
        }

        return next;
    }

    // What is free depends on the days alone; what stays elsewhere matters by its order only, which its days tell.
    private static string State(Draft draft, int[] days) =>
        string.Join(',', draft.Day.Select(d => d < 0 || days.Contains(d) ? -1 : d));
}
