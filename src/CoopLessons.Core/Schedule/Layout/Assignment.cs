using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// Which session goes to which day and half of it, with all prices and with time counted only in sums: what no such
/// sharing-out can do, no plan can. Its bound is therefore one of the whole week.
/// </summary>
internal sealed class Assignment
{
    /// <summary>Over by noon, not over by noon, and, where nobody asks which, the one or the other.</summary>
    public const int Kinds = 3;
    private const int Either = 2;

    private readonly GridWeek _week;
    private readonly BoolVar?[,,] _half;
    private readonly CpModel _model = new();
    private IntVar _price = null!;

    public Assignment(GridWeek week, bool all)
    {
        _week = week;
        _half = new BoolVar?[week.Sessions.Length, week.Days, Kinds];
        foreach (var s in week.Sessions)
        {
            for (var d = 0; d < week.Days && s.Possible; d++)
            {
                var (early, late) = (s.Starts[d].Any(s.IsMorning), s.Starts[d].Any(t => !s.IsMorning(t)));
                var either = early && late && !s.WishesMorning;
                if (early && !either)
                    _half[s.Index, d, 0] = _model.NewBoolVar("");
                if (late && !either)
                    _half[s.Index, d, 1] = _model.NewBoolVar("");
                if (either)
                    _half[s.Index, d, Either] = _model.NewBoolVar("");
            }

            var places = Halves(s.Index, (_, _) => true);
            if (all && s.Possible)
                _model.AddExactlyOne(places);
            else
                _model.AddAtMostOne(places);
        }

        foreach (var s in week.Sessions)
            AddOrder(s);
        for (var d = 0; d < week.Days; d++)
            new AssignmentSums(week, _model, _half, d).Add();
        Price();
    }

    private List<BoolVar> Halves(int s, Func<int, int, bool> which)
    {
        var halves = new List<BoolVar>();
        for (var d = 0; d < _week.Days; d++)
            for (var h = 0; h < Kinds; h++)
                if (_half[s, d, h] is { } half && which(d, h))
                    halves.Add(half);
        return halves;
    }

    private LinearExpr Upto(int s, int day) => LinearExpr.Sum(Halves(s, (d, _) => d <= day));

    private void AddOrder(GridSession s)
    {
        for (var d = 0; d < _week.Days; d++)
        {
            foreach (var (before, lag) in s.After)
            {
                _model.Add(Upto(s.Index, d) <= Upto(before, d - lag));
                // What starts after noon has nothing after it that is over by noon.
                if (lag == 0 && _half[before, d, 1] is { } late && _half[s.Index, d, 0] is { } early)
                    _model.AddAtMostOne([late, early]);
            }

            if (s.NextAlike >= 0)
                _model.Add(Upto(s.NextAlike, d) <= Upto(s.Index, d));
        }
    }

    private void Price()
    {
        var terms = new List<LinearExpr> { LinearExpr.Constant(4 * _week.FixedUnmet) };
        foreach (var s in _week.Sessions)
        {
            terms.Add(400 * s.Worth * (1 - LinearExpr.Sum(Halves(s.Index, (_, _) => true))));
            if (s.HasOld)
                terms.Add(10 * (1 - LinearExpr.Sum(Halves(s.Index, (d, _) => d == s.OldDay))));
            if (s.WishedDays is { } wished)
                terms.Add(4 * (1 - LinearExpr.Sum(Halves(s.Index, (d, _) => wished[d]))));
            if (s.WishesMorning)
                terms.Add(4 * (1 - LinearExpr.Sum(Halves(s.Index, (_, h) => h == 0))));
        }

        for (var d = 0; d < _week.Days; d++)
        {
            for (var l = 0; l < _week.Learners; l++)
            {
                var learner = l;
                Uneven(terms, d, s => s.Learners.Contains(learner) ? s.Load : 0, _week.FixedLoad[l][d], _week.Target[l][d]);
            }

            Uneven(terms, d, s => s.HandsLoad, _week.FixedHands[d], _week.HandsTarget[d]);
            foreach (var subject in _week.Subjects)
            {
                var over = _model.NewIntVar(0, subject.Members.Length + subject.Fixed[d], "");
                _model.Add(over >= LinearExpr.Sum(subject.Members.SelectMany(m => Halves(m, (e, _) => e == d))) + (subject.Fixed[d] - subject.Share));
                terms.Add(6 * over);
            }
        }

        _price = _model.NewIntVar(0, int.MaxValue, "");
        _model.Add(_price == LinearExpr.Sum(terms));
        _model.Minimize(_price);
    }

    /// <summary>Only what is cheaper counts from now on; where there is nothing of the kind, the cost is the least there is.</summary>
    public void AskForLessThan(int cost) => _model.Add(_price <= cost - 1);

    private void Uneven(List<LinearExpr> terms, int d, Func<GridSession, int> load, int isFixed, int target)
    {
        var halves = _week.Sessions.Where(s => load(s) > 0).SelectMany(s => Halves(s.Index, (e, _) => e == d).Select(h => (h, load(s)))).ToList();
        var over = _model.NewIntVar(0, Math.Max(target, isFixed + halves.Sum(h => h.Item2)), "");
        var sum = halves.Count == 0 ? LinearExpr.Constant(0) : LinearExpr.WeightedSum(halves.Select(h => h.h), halves.Select(h => (long)h.Item2));
        _model.Add(over >= sum + (isFixed - target - GridWeek.Band));
        _model.Add(over >= target - GridWeek.Band - isFixed - sum);
        terms.Add(over);
    }

    public void Hint(Draft draft)
    {
        _model.ClearHints();
        foreach (var s in _week.Sessions)
            for (var d = 0; d < _week.Days; d++)
                for (var h = 0; h < Kinds; h++)
                    if (_half[s.Index, d, h] is { } half)
                        _model.AddHint(half, draft.Day[s.Index] == d && (h == Either || s.IsMorning(draft.Start[s.Index]) == (h == 0)) ? 1 : 0);
    }

    /// <summary>The bound, and where a sharing-out was found, the day of each session (-1 for none) and whether it promises a morning that was wished for.</summary>
    public (CpSolverStatus Status, int Bound, int[] Day, bool[] Morning) Solve(Thinking thinking, double share)
    {
        var (status, solver) = thinking.Solve(_model, share, "linearization_level:2 symmetry_level:3");
        var day = new int[_week.Sessions.Length];
        var morning = new bool[_week.Sessions.Length];
        Array.Fill(day, -1);
        var found = Thinking.Found(status);
        for (var s = 0; s < day.Length && found; s++)
            for (var d = 0; d < _week.Days; d++)
                for (var h = 0; h < Kinds; h++)
                    if (_half[s, d, h] is { } half && solver.BooleanValue(half))
                        (day[s], morning[s]) = (d, h == 0 && _week.Sessions[s].WishesMorning);
        var bound = status is CpSolverStatus.Infeasible or CpSolverStatus.ModelInvalid || solver.Response is null ? 0 : solver.BestObjectiveBound;
        return (status, (int)Math.Clamp(Math.Ceiling(bound - 1e-6), 0, int.MaxValue), day, morning);
    }

    /// <summary>These sessions do not all go together on that day, some of them in its morning.</summary>
    public void Cut(IReadOnlyList<(int Session, bool Morning)> core, int day)
    {
        var literals = new List<BoolVar>();
        foreach (var (s, morning) in core)
            for (var h = 0; h < (morning ? 1 : Kinds); h++)
                if (_half[s, day, h] is { } half)
                    literals.Add(half);
        _model.Add(LinearExpr.Sum(literals) <= core.Count - 1);
    }
}
