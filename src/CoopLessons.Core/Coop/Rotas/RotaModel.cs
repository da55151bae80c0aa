using Google.OrTools.Sat;

namespace CoopLessons.Core.Coop.Rotas;

/// <summary>
/// The rules of a rota for the solver. All of them lie within one meeting; only the prices join the meetings. Prices of
/// single families are convex, so that each is the highest of the lines through its neighbouring whole values: thereby
/// the solver's bound is sharp where shares do not come out whole.
/// </summary>
internal sealed class RotaModel
{
    private readonly RotaGrid _grid;
    private readonly BoolVar?[,,] _turn;
    private readonly RotaBefore? _before;

    public RotaModel(RotaGrid grid, RotaBefore? before = null)
    {
        (_grid, _before) = (grid, before);
        _turn = new BoolVar?[grid.Meetings.Length, grid.Roles.Length, grid.Adults.Length];
        for (var m = 0; m < grid.Meetings.Length; m++)
        {
            if (before is not null && m < before.FirstFree)
            {
                Keep(m);
                continue;
            }

            Open(m);
            foreach (var (room, roles) in grid.Rooms)
                AddRoom(m, room, roles);
        }
    }

    public CpModel Model { get; } = new();

    private void Keep(int m)
    {
        for (var r = 0; r < _grid.Roles.Length; r++)
            for (var a = 0; a < _grid.Adults.Length; a++)
                if (_before!.Had(_grid.Turn(m, r, a)))
                    Model.Add((_turn[m, r, a] = Model.NewBoolVar("")) == 1);
    }

    private void Open(int m)
    {
        for (var a = 0; a < _grid.Adults.Length; a++)
        {
            for (var r = 0; r < _grid.Roles.Length; r++)
                if (_grid.Roles[r].Places > 0 && _grid.Can(m, r, a))
                    _turn[m, r, a] = Model.NewBoolVar("");
            Model.AddAtMostOne(Turns(m, (_, b) => b == a));
        }

        for (var r = 0; r < _grid.Roles.Length; r++)
            Model.Add(LinearExpr.Sum(Turns(m, r)) <= _grid.Roles[r].Places);
    }

    private void AddRoom(int m, RotaRoom room, int[] roles)
    {
        if (room.LeastUnrelated == 0 && room.LeastAdults == 0)
            return;
        var inside = roles.SelectMany(r => Turns(m, r)).ToList();
        var open = Model.NewBoolVar("");
        foreach (var turn in inside)
            Model.AddImplication(turn, open);
        if (room.LeastAdults > 0)
            Model.Add(LinearExpr.Sum(inside) >= room.LeastAdults * open);
        if (room.LeastUnrelated == 0)
            return;
        var households = new List<BoolVar>();
        for (var h = 0; h < _grid.Adults.Length; h++)
        {
            var own = Turns(m, (r, a) => roles.Contains(r) && _grid.Household[a] == h);
            if (own.Count == 0)
                continue;
            var present = Model.NewBoolVar("");
            Model.Add(present <= LinearExpr.Sum(own));
            households.Add(present);
        }

        Model.Add(LinearExpr.Sum(households) >= room.LeastUnrelated * open);
    }

    private List<BoolVar> Turns(int m, int r) => Turns(m, (q, _) => q == r);

    private List<BoolVar> Turns(int m, Func<int, int, bool> which) => [.. At(m, which).Select(t => t.Turn)];

    private IEnumerable<(int M, int R, int A, BoolVar Turn)> All(Func<int, int, bool>? which = null) =>
        Enumerable.Range(0, _grid.Meetings.Length).SelectMany(m => At(m, which));

    private IEnumerable<(int M, int R, int A, BoolVar Turn)> At(int m, Func<int, int, bool>? which = null)
    {
        for (var r = 0; r < _grid.Roles.Length; r++)
            for (var a = 0; a < _grid.Adults.Length; a++)
                if (_turn[m, r, a] is { } turn && which?.Invoke(r, a) != false)
                    yield return (m, r, a, turn);
    }

    /// <summary>What a part costs, as the solver may make it small; divided by the second.</summary>
    public (LinearExpr Price, long Unit) Price(RotaPart part) => part switch
    {
        RotaPart.Filled => (Unfilled(), 1),
        RotaPart.Turns => Convex(Enumerable.Range(0, _grid.Families.Length).Select(f => (
            All((_, a) => _grid.Family[a] == f).Select(t => (t.Turn, (long)_grid.Roles[t.R].Weight)).ToList(), (Func<long, long>)(w => _grid.PriceOfTurns(f, w))))),
        RotaPart.Roles => Convex(
            from f in Enumerable.Range(0, _grid.Families.Length)
            from r in Enumerable.Range(0, _grid.Roles.Length)
            select (All((q, a) => q == r && _grid.Family[a] == f).Select(t => (t.Turn, 1L)).ToList(), (Func<long, long>)(n => _grid.PriceOfRole(f, r, n)))),
        RotaPart.Wishes => (Weighted([.. All().Select(t => (t.Turn, _grid.WishPrice(t.M, t.R, t.A))).Where(t => t.Item2 != 0)]), 1),
        _ => (Pace(), 1),
    };

    // A meeting before the first that is free may hold more turns than places; what is fixed there costs nobody a choice.
    private LinearExpr Unfilled()
    {
        var from = _before?.FirstFree ?? 0;
        var places = (_grid.Meetings.Length - from) * _grid.Roles.Sum(r => r.Places);
        return places - LinearExpr.Sum(All().Where(t => t.M >= from).Select(t => t.Turn));
    }

    /// <summary>Turns that somebody has who did not have them, or that nobody has who did, the larger of both for each role at each meeting.</summary>
    public LinearExpr Changes()
    {
        var terms = new List<LinearExpr>();
        for (var m = _before!.FirstFree; m < _grid.Meetings.Length; m++)
            for (var r = 0; r < _grid.Roles.Length; r++)
            {
                var had = _before.Count(_grid.Meetings[m], _grid.Roles[r].Id);
                var turns = At(m, (q, _) => q == r).ToList();
                var changes = Model.NewIntVar(0, Math.Max(had, turns.Count), "");
                Model.Add(changes >= LinearExpr.Sum(turns.Where(t => !_before.Had(_grid.Turn(m, r, t.A))).Select(t => t.Turn)));
                Model.Add(changes >= had - LinearExpr.Sum(turns.Where(t => _before.Had(_grid.Turn(m, r, t.A))).Select(t => t.Turn)));
                terms.Add(changes);
            }

        return LinearExpr.Sum(terms);
    }

    private (LinearExpr Price, long Unit) Convex(IEnumerable<(List<(BoolVar Turn, long Weight)> Turns, Func<long, long> Price)> parts)
    {
        var tables = parts.Select(p => (p.Turns, Price: Enumerable.Range(0, (int)p.Turns.Sum(t => t.Weight) + 1).Select(n => p.Price(n)).ToArray())).ToList();
        var unit = Math.Max(1, tables.SelectMany(t => t.Price).Aggregate(0L, Divisor));
        var terms = new List<LinearExpr>();
        foreach (var (turns, table) in tables)
        {
            if (table.Length == 1)
            {
                terms.Add(LinearExpr.Constant(table[0] / unit));
                continue;
            }

            var price = Model.NewIntVar(table.Min() / unit, table.Max() / unit, "");
            var sum = Model.NewIntVar(0, table.Length - 1, "");
            Model.Add(sum == Weighted(turns));
            terms.Add(price);
            for (var n = 0; n + 1 < table.Length; n++)
                if (n == 0 || table[n + 1] - table[n] != table[n] - table[n - 1])
                    Model.Add(price >= (table[n + 1] - table[n]) / unit * sum + (table[n] - n * (table[n + 1] - table[n])) / unit);
        }

        return (LinearExpr.Sum(terms), unit);
    }

    private static long Divisor(long a, long b) => b == 0 ? a : Divisor(b, a % b);

    private static LinearExpr Weighted(List<(BoolVar Turn, long Weight)> turns) => turns.Count == 0
        ? LinearExpr.Constant(0)
        : LinearExpr.WeightedSum(turns.Select(t => t.Turn), turns.Select(t => t.Weight));

    private LinearExpr Pace()
    {
        var all = _grid.Meetings.Length;
        var terms = new List<LinearExpr>();
        for (var f = 0; f < _grid.Families.Length; f++)
        {
            var turns = All((_, a) => _grid.Family[a] == f).ToList();
            if (turns.Count == 0)
                continue;
            for (var m = 0; m + 1 < all; m++)
            {
                var off = Model.NewIntVar(0, (long)all * turns.Count, "");
                // Up to the meeting a turn counts by all meetings less those so far; afterwards it counts against by those so far.
                var pace = LinearExpr.WeightedSum(turns.Select(t => t.Turn), turns.Select(t => t.M <= m ? (long)(all - m - 1) : -(m + 1L)));
                Model.Add(off >= pace - all);
                Model.Add(off >= -1 * pace - all);
                terms.Add(off);
            }
        }

        return terms.Count == 0 ? LinearExpr.Constant(0) : LinearExpr.Sum(terms);
    }

    public void Hint(IReadOnlyCollection<RotaTurn> turns)
    {
        var hinted = turns.ToHashSet();
        Model.ClearHints();
        foreach (var (m, r, a, turn) in All())
            Model.AddHint(turn, hinted.Contains(_grid.Turn(m, r, a)) ? 1 : 0);
    }

    public List<RotaTurn> Read(CpSolver solver) =>
        [.. All().Where(t => solver.BooleanValue(t.Turn)).Select(t => _grid.Turn(t.M, t.R, t.A))];
}
