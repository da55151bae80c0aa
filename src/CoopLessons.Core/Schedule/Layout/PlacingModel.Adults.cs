using CoopLessons.Core.Units;
using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

internal sealed partial class PlacingModel
{
    private readonly BoolVar?[,,] _hands;
    private readonly BoolVar?[,,] _looker;

    private void AddAdults(int d)
    {
        if (_week.Adults == 1)
            AddOneAdult(d);
        else if (_week.Adults > 1)
            AddMoreAdults(d);
    }

    // What takes the one adult's hands excludes what wants the adult beside it; of the latter there may be many at once.
    // For each learner these exclude each other anyway, so that one clique a learner says it all.
    private void AddOneAdult(int d)
    {
        var hands = new List<IntervalVar>();
        var beside = new List<IntervalVar>[_week.Learners];
        foreach (var s in _free)
        {
            if (_on[s.Index, d] is not { } on)
                continue;
            if (s.Need == AdultNeed.HandsOn)
                hands.Add(Model.NewOptionalFixedSizeIntervalVar(_start[s.Index, d], s.Length, on, ""));
            if (s.Looks)
                hands.Add(Model.NewOptionalFixedSizeIntervalVar(_look[s.Index, d], s.LookLength, on, ""));
            if (s.Need != AdultNeed.Beside)
                continue;
            var body = Model.NewOptionalFixedSizeIntervalVar(_start[s.Index, d], s.Length, on, "");
            foreach (var l in s.Learners)
                (beside[l] ??= []).Add(body);
        }

        if (hands.Count == 0)
            return;
        if (hands.Count > 1 && beside.All(b => b is null))
            Model.AddNoOverlap(hands);
        foreach (var nearby in beside)
            if (nearby is not null)
                Model.AddNoOverlap(hands.Concat(nearby));
    }

    private void AddMoreAdults(int d)
    {
        var books = Enumerable.Range(0, _week.Adults).Select(_ => new List<IntervalVar>()).ToArray();
        var many = _week.Learners + 1;
        var taken = new List<(IntervalVar Interval, int Share)>();
        var besides = false;
        foreach (var s in _free)
        {
            if (_on[s.Index, d] is not { } on)
                continue;
            if (s.Need == AdultNeed.HandsOn)
                AddHands(s, d, on, _start[s.Index, d]!, s.Length, _hands, books, taken, many);
            if (s.Looks)
                AddHands(s, d, on, _look[s.Index, d]!, s.LookLength, _looker, books, taken, many);
            if (s.Need != AdultNeed.Beside)
                continue;
            besides = true;
            taken.Add((Model.NewOptionalFixedSizeIntervalVar(_start[s.Index, d], s.Length, on, ""), 1));
        }

        if (taken.Count == 0)
            return;
        for (var a = 0; a < _week.Adults; a++)
        {
            var absent = Array.ConvertAll(_week.AdultFree[a][d], free => !free);
            foreach (var (from, to) in Slots.Runs(absent))
            {
                var away = Model.NewFixedSizeIntervalVar(from, to - from, "");
                books[a].Add(away);
                taken.Add((away, many));
            }

            Model.AddNoOverlap(books[a]);
        }

        foreach (var (from, to) in Slots.Runs(_week.BesideFixed[d]))
        {
            besides = true;
            taken.Add((Model.NewFixedSizeIntervalVar(from, to - from, ""), 1));
        }

        if (besides)
            Model.AddCumulative((long)many * _week.Adults).AddDemands(taken.Select(t => t.Interval), taken.Select(t => (long)t.Share));
    }

    private void AddHands(GridSession s, int d, BoolVar on, IntVar at, int length, BoolVar?[,,] whose, List<IntervalVar>[] books, List<(IntervalVar Interval, int Share)> taken, int many)
    {
        var choices = new List<BoolVar>();
        for (var a = 0; a < _week.Adults; a++)
        {
            var takes = Model.NewBoolVar("");
            whose[s.Index, d, a] = takes;
            choices.Add(takes);
            books[a].Add(Model.NewOptionalFixedSizeIntervalVar(at, length, takes, ""));
        }

        Model.Add(LinearExpr.Sum(choices) == on);
        taken.Add((Model.NewOptionalFixedSizeIntervalVar(at, length, on, ""), many));
    }
}
