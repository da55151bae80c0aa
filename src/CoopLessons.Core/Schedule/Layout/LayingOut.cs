using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// The steps from a problem to a plan: put one after another; place everything, without a price; make days cheaper in
/// pairs; share out over days and halves, which gives the bound; order each day; at last calm the days.
/// </summary>
internal sealed class LayingOut
{
    private readonly GridWeek _week;
    private readonly double _effort;
    private readonly Thinking _thinking;
    private readonly Action<LayoutProgress>? _progress;
    private readonly DayPairs _pairs;
    private readonly DayOrder _order;
    private readonly CancellationToken _ct;
    private double _share;

    public LayingOut(GridWeek week, double effort, Action<LayoutProgress>? progress, CancellationToken ct)
    {
        (_week, _effort, _progress, _ct) = (week, effort, progress, ct);
        _thinking = new Thinking(effort, ct);
        (_pairs, _order) = (new DayPairs(week, _thinking), new DayOrder(week, _thinking));
        Best = new Draft(week.Sessions.Length);
    }

    public Draft Best { get; private set; }
    public int Cost { get; private set; }
    public PlanCost Price => Best.Price(_week);

    /// <summary>No plan costs less.</summary>
    public int Bound { get; private set; }

    /// <summary>Whether the bound says more than what could never be placed costs.</summary>
    public bool HasBound { get; private set; }
    public bool CutShort => _thinking.CutShort;
    public Thinking Thinking => _thinking;
    public DayOrder Order => _order;

    public void Run()
    {
        Tell("Putting one after another", 0);
        Best = FirstPlans.Best(_week, _ct);
        Cost = Best.Price(_week).Total;
        Bound = CostOfTheImpossible();
        Tell("Placing everything", 0.05);
        if (Cost > Bound && _effort > 0)
        {
            PlaceEverything();
            if (!Everything)
                SaveWhatCanBeSaved();
            var whole = Everything;
            Pair("Evening out the days", whole ? 0.1 : 0.75);
            ShareOut(whole ? 0.4 : 0.88);
            Pair("Evening out the days", 0.6);
            ShareOut(0.9);
            Pair("Trying what else would do", 1);
        }

        HasBound |= Cost == Bound;
        Calm();
        Tell("Done", 1);
    }

    private int CostOfTheImpossible() => 4 * _week.FixedUnmet + _week.Sessions.Where(s => !s.Possible)
        .Sum(s => 400 * s.Worth + (s.HasOld ? 10 : 0) + (s.WishedDays is null ? 0 : 4) + (s.WishesMorning ? 4 : 0));

    private bool Everything => _week.Sessions.All(s => !s.Possible || Best.Day[s.Index] >= 0);

    private void PlaceEverything()
    {
        if (Everything)
            return;
        var model = new PlacingModel(_week, _week.Sessions, [.. Enumerable.Range(0, _week.Days)], Best, all: true);
        model.PutAlikeInOrder();
        model.Hint(Best);
        var (status, solver) = _thinking.Solve(model.Model, Math.Max(0.06, 0.1 * _effort));
        if (Thinking.Found(status))
            Take(model.Read(solver));
        else if (status == CpSolverStatus.Infeasible)
            (Bound, HasBound) = (Bound + 400 * _week.Sessions.Where(s => s.Possible).Min(s => s.Worth), true);
    }

    /// <summary>Where not everything found a place, as much as can be by weight, whatever else it costs.</summary>
    private void SaveWhatCanBeSaved()
    {
        var model = new PlacingModel(_week, _week.Sessions, [.. Enumerable.Range(0, _week.Days)], Best, all: false);
        model.PutAlikeInOrder();
        model.MinimizeLeftOut();
        model.Hint(Best);
        var (status, solver) = _thinking.Solve(model.Model, 0.35 * _effort);
        if (Thinking.Found(status))
            Take(model.Read(solver));
    }

    private void Pair(string step, double until)
    {
        if (Cost <= Bound || _thinking.Spent >= until * _effort)
            return;
        Tell(step, Spent);
        Best = _pairs.Improve(Best, until * _effort, Bound, Take);
        Cost = Best.Price(_week).Total;
        if (_pairs.Proven)
            (Bound, HasBound) = (Cost, true);
    }

    private void ShareOut(double until)
    {
        if (Cost <= Bound || _thinking.Spent >= until * _effort)
            return;
        Tell("Sharing out over the days", Spent);
        // A plan without one of the possible sessions costs more than the best so far: only then may it be left out of sight.
        var all = Everything && Cost <= CostOfTheImpossible() + 400 * _week.Sessions.Where(s => s.Possible).Select(s => s.Worth).DefaultIfEmpty(1).Min();
        var assignment = new Assignment(_week, all);
        while (Cost > Bound && _thinking.Spent < until * _effort && !_thinking.CutShort)
        {
            assignment.Hint(Best);
            assignment.AskForLessThan(Cost);
            var (status, bound, day, morning) = assignment.Solve(_thinking, until * _effort - _thinking.Spent);
            if (status == CpSolverStatus.Infeasible)
                (Bound, HasBound) = (Cost, true);
            else
                (Bound, HasBound) = (Math.Max(Bound, Math.Min(bound, Cost)), HasBound || bound > 0 || Thinking.Found(status));
            if (Cost <= Bound || !Thinking.Found(status) || !OrderDays(assignment, day, morning))
                return;
        }
    }

    /// <summary>Whether something was learned that makes another sharing-out worth while.</summary>
    private bool OrderDays(Assignment assignment, int[] day, bool[] morning)
    {
        var draft = new Draft(_week.Sessions.Length);
        Array.Copy(day, draft.Day, day.Length);
        bool whole = true, cut = false;
        for (var d = 0; d < _week.Days; d++)
        {
            int[] here = [.. Enumerable.Range(0, day.Length).Where(s => day[s] == d)];
            var (status, placed) = _order.Place(draft, d, here, morning);
            if (Thinking.Found(status))
            {
                draft = placed;
                continue;
            }

            whole = false;
            if (status == CpSolverStatus.Infeasible && _order.Clash(draft, d, here, morning) is { } core)
                cut |= Cut(assignment, core, morning, d);
        }

        if (whole)
            Take(draft);
        return cut;
    }

    private bool Cut(Assignment assignment, List<int> core, bool[] morning, int day)
    {
        for (var d = 0; d < _week.Days; d++)
            if (d == day || Same(core, day, d))
                assignment.Cut([.. core.Select(s => (s, morning[s]))], d);
        return true;
    }

    private bool Same(List<int> core, int one, int other) =>
        core.All(s => _week.Sessions[s].Starts[one].AsSpan().SequenceEqual(_week.Sessions[s].Starts[other])
            && _week.Sessions[s].LookStarts[one].AsSpan().SequenceEqual(_week.Sessions[s].LookStarts[other]))
        && _week.AdultFree.All(a => a[one].AsSpan().SequenceEqual(a[other]))
        && _week.BesideFixed[one].AsSpan().SequenceEqual(_week.BesideFixed[other]);

    private void Take(Draft draft)
    {
        draft.PutAlikeInOrder(_week);
        var cost = draft.Price(_week).Total;
        if (cost >= Cost)
            return;
        (Best, Cost) = (draft, cost);
        Tell(Everything ? "Evening out the days" : "Placing everything", Spent);
    }

    private void Calm()
    {
        if (_effort <= 0)
            return;
        Tell("Calming the days", 0.95);
        for (var d = 0; d < _week.Days && !CutShort; d++)
        {
            int[] here = [.. Enumerable.Range(0, _week.Sessions.Length).Where(s => Best.Day[s] == d)];
            if (here.Length == 0)
                continue;
            var model = new PlacingModel(_week, here.Select(s => _week.Sessions[s]), [d], Best, all: true);
            model.KeepMornings(here.Where(s => _week.Sessions[s].IsMorning(Best.Start[s])));
            model.MinimizeUnrest(Best);
            model.Hint(Best);
            var (status, solver) = _thinking.Solve(model.Model, Math.Min(0.02, _effort / 30));
            if (!Thinking.Found(status))
                continue;
            Best = model.Read(solver);
        }

        Best.PutAlikeInOrder(_week);
        Cost = Best.Price(_week).Total;
    }

    private double Spent => _effort <= 0 ? 0 : Math.Min(0.94, 0.05 + 0.9 * _thinking.Spent / _effort);

    private void Tell(string step, double share)
    {
        if (_progress is null)
            return;
        _share = Math.Max(_share, share);
        var left = step == "Putting one after another" ? (int?)null : _week.Sessions.Count(s => Best.Day[s.Index] < 0);
        _progress(new LayoutProgress(step, _share, left));
    }
}
