using CoopLessons.Core.Schedule.Layout;
using Google.OrTools.Sat;

namespace CoopLessons.Core.Coop.Rotas;

/// <summary>Makes one part after another as small as can be, each under all before it.</summary>
internal sealed class RotaThinking(RotaGrid grid, RotaBefore? before, double effort, CancellationToken ct)
{
    private readonly Thinking _thinking = new(effort, ct);
    private readonly List<RotaPart> _proven = [];
    private bool _all = true;

    public List<RotaTurn> Turns { get; private set; } = [];
    public IReadOnlyList<RotaPart> Proven => _proven;
    public bool CutShort => _thinking.CutShort;

    /// <summary>No rota with as few empty places has fewer changes; 0 where nothing is known.</summary>
    public int LeastChanges { get; private set; }

    public void Run()
    {
        var model = new RotaModel(grid, before);
        Turns = before is null ? [] : [.. grid.Problem.Meetings.Take(before.FirstFree).SelectMany((_, m) => Kept(m))];
        var steps = 5 + (before is null ? 0 : 1);
        foreach (var part in Enum.GetValues<RotaPart>())
        {
            var (price, unit) = model.Price(part);
            var floor = part is RotaPart.Wishes ? long.MinValue : 0;
            var least = Least(model, price, () => Now(part) / unit, floor, steps--);
            if (_all)
                _proven.Add(part);
            if (part != RotaPart.Filled || before is null)
                continue;
            least = Least(model, model.Changes(), () => RotaChanges.Count(before, grid, Turns), 0, steps--);
            LeastChanges = (int)Math.Max(0, least);
        }
    }

    private IEnumerable<RotaTurn> Kept(int m) =>
        from r in Enumerable.Range(0, grid.Roles.Length)
        from a in Enumerable.Range(0, grid.Adults.Length)
        let turn = grid.Turn(m, r, a)
        where before!.Had(turn)
        select turn;

    // Places of meetings that are over cannot be filled any longer; the model leaves them out, and so does the comparison.
    private long Now(RotaPart part) => part == RotaPart.Filled && before is not null
        ? RotaCheck.Cost(grid.Problem with { Meetings = [.. grid.Meetings.Skip(before.FirstFree)] }, [.. Turns.Where(t => grid.Meeting(t.Meeting) >= before.FirstFree)]).Unfilled
        : RotaCheck.Cost(grid.Problem, Turns)[part];

    /// <summary>The solver's bound, where it stopped before it had the least.</summary>
    private long Least(RotaModel model, LinearExpr price, Func<long> now, long floor, int steps)
    {
        var least = floor;
        if (now() == floor)
        {
            model.Model.Add(price <= floor);
            return floor;
        }

        model.Hint(Turns);
        model.Model.Minimize(price);
        // A first answer is wanted also where hardly any effort is allowed.
        var (status, solver) = _thinking.Solve(model.Model, Math.Max(0.02, _thinking.Left / steps), "linearization_level:2");
        if (Thinking.Found(status) && model.Read(solver) is var found)
            Turns = found;
        if (status == CpSolverStatus.Optimal)
            least = now();
        else
        {
            _all = false;
            if (solver.Response is not null && double.IsFinite(solver.BestObjectiveBound))
                least = Math.Max(least, (long)Math.Ceiling(Math.Max(solver.BestObjectiveBound, -1e15) - 1e-6));
        }

        model.Model.Add(price <= now());
        return least;
    }
}
