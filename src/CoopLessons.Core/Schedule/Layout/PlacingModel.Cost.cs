using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

internal sealed partial class PlacingModel
{
    // Where the draft holds more than a part of the price as a variable, its value is hinted: without it a hint is no whole plan.
    private readonly List<(IntVar Variable, Func<Draft, long> Value)> _parts = [];

    /// <summary>The price of the week, but for what these sessions and days cannot change.</summary>
    public void MinimizePrice()
    {
        var terms = new List<LinearExpr>();
        foreach (var s in _free)
        {
            var all = LinearExpr.Sum(Literals(s.Index, _ => true));
            terms.Add(400 * s.Worth * (1 - all));
            if (s.HasOld)
                terms.Add(s.OldDay >= 0 && _on[s.Index, s.OldDay] is { } old ? 10 * (1 - (LinearExpr)old) : LinearExpr.Constant(10));
            if (s.WishedDays is { } wished)
                terms.Add(4 * (1 - LinearExpr.Sum(Literals(s.Index, d => wished[d]))));
            if (_morning[s.Index] is { } morning)
                terms.Add(4 * (1 - (LinearExpr)morning));
        }

        foreach (var d in _days)
        {
            for (var l = 0; l < _week.Learners; l++)
            {
                var learner = l;
                AddUneven(terms, d, s => s.Learners.Contains(learner) ? s.Load : 0, _week.FixedLoad[l][d], _week.Target[l][d]);
            }

            AddUneven(terms, d, s => s.HandsLoad, _week.FixedHands[d], _week.HandsTarget[d]);
            foreach (var subject in _week.Subjects)
                AddSubject(terms, d, subject);
        }

        Model.Minimize(LinearExpr.Sum(terms));
    }

    /// <summary>Nothing but the weight of what finds no place.</summary>
    public void MinimizeLeftOut() =>
        Model.Minimize(LinearExpr.Sum(_free.Select(s => s.Worth * (1 - LinearExpr.Sum(Literals(s.Index, _ => true))))));

    private void AddUneven(List<LinearExpr> terms, int d, Func<GridSession, int> load, int isFixed, int target)
    {
        var here = _free.Where(s => _on[s.Index, d] is not null && load(s) > 0).ToList();
        if (here.Count == 0)
            return;
        var most = Math.Max(target, isFixed + here.Sum(load));
        var over = Model.NewIntVar(0, most, "");
        var sum = LinearExpr.WeightedSum(here.Select(s => _on[s.Index, d]!), here.Select(s => (long)load(s)));
        Model.Add(over >= sum + (isFixed - target - GridWeek.Band));
        Model.Add(over >= target - GridWeek.Band - isFixed - sum);
        terms.Add(over);
        _parts.Add((over, draft => Math.Max(0, Math.Abs(isFixed + here.Where(s => draft.Day[s.Index] == d).Sum(load) - target) - GridWeek.Band)));
    }

    private void AddSubject(List<LinearExpr> terms, int d, SubjectOfLearner subject)
    {
        var here = subject.Members.Where(m => _isFree[m] && _on[m, d] is not null).ToList();
        if (here.Count + subject.Fixed[d] <= subject.Share || here.Count == 0)
            return;
        var over = Model.NewIntVar(0, here.Count + subject.Fixed[d], "");
        Model.Add(over >= LinearExpr.Sum(here.Select(m => _on[m, d]!)) + (subject.Fixed[d] - subject.Share));
        terms.Add(6 * over);
        _parts.Add((over, draft => Math.Max(0, subject.Fixed[d] + here.Count(m => draft.Day[m] == d) - subject.Share)));
    }

    /// <summary>Old minutes kept, and everybody done early: twelve slots of somebody's end for a session that stays.</summary>
    public void MinimizeUnrest(Draft draft)
    {
        var terms = new List<LinearExpr>();
        foreach (var d in _days)
        {
            var ends = new IntVar?[_week.Learners];
            foreach (var s in _free)
            {
                if (_on[s.Index, d] is null || draft.Day[s.Index] != d)
                    continue;
                if (s.OldDay == d && Array.BinarySearch(s.Starts[d], s.OldStart) >= 0)
                {
                    var stays = Model.NewBoolVar("");
                    Model.Add(_start[s.Index, d]! == s.OldStart).OnlyEnforceIf(stays);
                    terms.Add(12 * (1 - (LinearExpr)stays));
                    _parts.Add((stays, plan => plan.Start[s.Index] == s.OldStart ? 1 : 0));
                }

                foreach (var l in s.Learners)
                {
                    if (ends[l] is null)
                    {
                        var learner = l;
                        ends[l] = Model.NewIntVar(0, Slots.PerDay, "");
                        _parts.Add((ends[l]!, plan => _free.Where(f => plan.Day[f.Index] == d && f.Learners.Contains(learner))
                            .Max(f => f.Looks ? plan.Look[f.Index] + f.LookLength : plan.Start[f.Index] + f.Length)));
                        terms.Add(ends[l]!);
                    }

                    Model.Add(ends[l]! >= (s.Looks ? _look[s.Index, d]! + s.LookLength : _start[s.Index, d]! + s.Length));
                }
            }
        }

        Model.Minimize(LinearExpr.Sum(terms));
    }

    /// <summary>Hints the whole draft, prices included.</summary>
    public void Hint(Draft draft)
    {
        foreach (var s in _free)
        {
            foreach (var d in _days)
            {
                if (_on[s.Index, d] is not { } on)
                    continue;
                var here = draft.Day[s.Index] == d;
                Model.AddHint(on, here ? 1 : 0);
                Model.AddHint(_start[s.Index, d]!, here ? draft.Start[s.Index] : s.Starts[d][0]);
                if (_look[s.Index, d] is { } look)
                    Model.AddHint(look, here ? draft.Look[s.Index] : Array.IndexOf(s.LookStarts[d], true));
                for (var a = 0; a < _week.Adults; a++)
                {
                    if (_hands[s.Index, d, a] is { } hands)
                        Model.AddHint(hands, here && draft.Hands[s.Index] == a ? 1 : 0);
                    if (_looker[s.Index, d, a] is { } looker)
                        Model.AddHint(looker, here && draft.Looker[s.Index] == a ? 1 : 0);
                }
            }

            if (_morning[s.Index] is { } morning)
                Model.AddHint(morning, draft.Day[s.Index] >= 0 && s.IsMorning(draft.Start[s.Index]) ? 1 : 0);
        }

        foreach (var (variable, value) in _parts)
            Model.AddHint(variable, value(draft));
    }

    /// <summary>The rest of the draft with what the solver found.</summary>
    public Draft Read(CpSolver solver)
    {
        var draft = _rest.Copy();
        foreach (var s in _free)
        {
            draft.Remove(s.Index);
            foreach (var d in _days)
            {
                if (_on[s.Index, d] is not { } on || !solver.BooleanValue(on))
                    continue;
                draft.Day[s.Index] = d;
                draft.Start[s.Index] = (int)solver.Value(_start[s.Index, d]!);
                draft.Look[s.Index] = _look[s.Index, d] is { } look ? (int)solver.Value(look) : -1;
                draft.Hands[s.Index] = Chosen(_hands, s, d, s.Need == Units.AdultNeed.HandsOn);
                draft.Looker[s.Index] = Chosen(_looker, s, d, s.Looks);
            }
        }

        return draft;

        int Chosen(BoolVar?[,,] whose, GridSession s, int d, bool needed)
        {
            for (var a = 0; a < _week.Adults; a++)
                if (whose[s.Index, d, a] is { } takes && solver.BooleanValue(takes))
                    return a;
            return needed ? 0 : -1;
        }
    }
}
