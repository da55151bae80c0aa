using CoopLessons.Core.Units;
using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// Some sessions over some days as a constraint model: whether and when each stands, beside a draft in which everything
/// else stays. Every session that the draft has on one of the days must be among the free ones.
/// </summary>
internal sealed partial class PlacingModel
{
    private readonly GridWeek _week;
    private readonly GridSession[] _free;
    private readonly int[] _days;
    private readonly Draft _rest;
    private readonly bool[] _isFree;
    private readonly BoolVar?[,] _on;
    private readonly IntVar?[,] _start;
    private readonly IntVar?[,] _look;
    private readonly BoolVar?[] _morning;
    private readonly List<IntervalVar>[,] _learner;

    /// <param name="days">Ascending.</param>
    /// <param name="all">Whether every free session must be placed.</param>
    public PlacingModel(GridWeek week, IEnumerable<GridSession> free, int[] days, Draft rest, bool all)
    {
        (_week, _days, _rest, _free) = (week, days, rest, [.. free.Where(s => s.Possible)]);
        _isFree = new bool[week.Sessions.Length];
        foreach (var s in _free)
            _isFree[s.Index] = true;
        (_on, _start, _look) = (new BoolVar?[week.Sessions.Length, week.Days], new IntVar?[week.Sessions.Length, week.Days], new IntVar?[week.Sessions.Length, week.Days]);
        _morning = new BoolVar?[week.Sessions.Length];
        _learner = new List<IntervalVar>[week.Learners, week.Days];
        _hands = new BoolVar?[week.Sessions.Length, week.Days, Math.Max(1, week.Adults)];
        _looker = new BoolVar?[week.Sessions.Length, week.Days, Math.Max(1, week.Adults)];
        for (var l = 0; l < week.Learners; l++)
            foreach (var d in days)
                _learner[l, d] = [];
        foreach (var s in _free)
            AddPlaces(s, all);
        for (var l = 0; l < week.Learners; l++)
            foreach (var d in days)
                if (_learner[l, d].Count > 1)
                    Model.AddNoOverlap(_learner[l, d]);
        foreach (var d in days)
            AddAdults(d);
        foreach (var s in _free)
            AddOrder(s);
    }

    public CpModel Model { get; } = new();

    /// <summary>Whether the session stands on the day; null where it cannot.</summary>
    public BoolVar? On(int session, int day) => _on[session, day];

    private void AddPlaces(GridSession s, bool all)
    {
        var places = new List<ILiteral>();
        foreach (var d in _days.Where(d => s.Starts[d].Length > 0))
        {
            var on = Model.NewBoolVar("");
            var start = Model.NewIntVarFromDomain(Google.OrTools.Util.Domain.FromValues(Array.ConvertAll(s.Starts[d], t => (long)t)), "");
            (_on[s.Index, d], _start[s.Index, d]) = (on, start);
            places.Add(on);
            // Learners with the same rest share an interval.
            foreach (var rest in s.Rests.Distinct())
            {
                var body = Model.NewOptionalFixedSizeIntervalVar(start, s.Length + rest, on, "");
                for (var i = 0; i < s.Learners.Length; i++)
                    if (s.Rests[i] == rest)
                        _learner[s.Learners[i], d].Add(body);
            }

            if (s.Looks)
                AddLook(s, d, on, start);
        }

        if (all)
            Model.AddExactlyOne(places);
        else
            Model.AddAtMostOne(places);
        if (!s.WishesMorning)
            return;
        var morning = _morning[s.Index] = Model.NewBoolVar("");
        Model.AddBoolOr(places.Append(morning.Not()));
        foreach (var d in _days)
            if (_on[s.Index, d] is { } on)
                Model.Add(_start[s.Index, d]! <= Slots.Noon - s.Length).OnlyEnforceIf([morning, on]);
    }

    private void AddLook(GridSession s, int d, BoolVar on, IntVar start)
    {
        var times = new List<long>();
        for (var k = 0; k < Slots.PerDay; k++)
            if (s.LookStarts[d][k])
                times.Add(k);
        var look = _look[s.Index, d] = Model.NewIntVarFromDomain(Google.OrTools.Util.Domain.FromValues([.. times]), "");
        Model.Add(look >= start + s.LookFrom).OnlyEnforceIf(on);
        Model.Add(look <= start + s.LookTo).OnlyEnforceIf(on);
        var interval = Model.NewOptionalFixedSizeIntervalVar(look, s.LookLength, on, "");
        foreach (var l in s.Learners)
            _learner[l, d].Add(interval);
    }

    private void AddOrder(GridSession s)
    {
        foreach (var (before, lag) in s.After)
        {
            if (!_isFree[before])
            {
                // Stands on another day, or nowhere.
                var day = _rest.Day[before];
                foreach (var d in _days.Where(d => day < 0 || d < day + lag))
                    Forbid(s.Index, d);
                continue;
            }

            foreach (var d in _days)
            {
                var here = Literals(s.Index, e => e <= d);
                if (here.Count > 0)
                    Model.Add(LinearExpr.Sum(here) <= LinearExpr.Sum(Literals(before, e => e <= d - lag)));
                if (lag > 0 || _on[s.Index, d] is not { } on || _on[before, d] is not { } onBefore)
                    continue;
                var q = _week.Sessions[before];
                var end = q.Looks ? _look[before, d]! + q.LookLength : _start[before, d]! + q.Length;
                Model.Add(_start[s.Index, d]! >= end).OnlyEnforceIf([on, onBefore]);
            }
        }

        foreach (var (next, lag) in s.Followers)
        {
            if (_isFree[next] || _rest.Day[next] is var day && day < 0)
                continue;
            foreach (var d in _days.Where(d => d > day - lag))
                Forbid(s.Index, d);
            Model.AddExactlyOne(Literals(s.Index, _ => true));
        }
    }

    private void Forbid(int session, int day)
    {
        if (_on[session, day] is { } on)
            Model.Add(on == 0);
    }

    private List<BoolVar> Literals(int session, Func<int, bool> day)
    {
        var literals = new List<BoolVar>();
        foreach (var d in _days)
            if (day(d) && _on[session, d] is { } on)
                literals.Add(on);
        return literals;
    }

    /// <summary>Makes those that are alike ascend by day; only where all of them are free.</summary>
    public void PutAlikeInOrder()
    {
        foreach (var s in _free.Where(s => s.NextAlike >= 0 && _isFree[s.NextAlike]))
            foreach (var d in _days)
            {
                var later = Literals(s.NextAlike, e => e <= d);
                if (later.Count > 0)
                    Model.Add(LinearExpr.Sum(later) <= LinearExpr.Sum(Literals(s.Index, e => e <= d)));
            }
    }

    /// <summary>Of these free sessions, those that wish for a morning get one if they stand at all.</summary>
    public void KeepMornings(IEnumerable<int> sessions)
    {
        foreach (var s in sessions.Where(s => _isFree[s] && _morning[s] is not null))
            foreach (var d in _days)
                if (_on[s, d] is { } on)
                    Model.AddImplication(on, _morning[s]!);
    }
}
