using CoopLessons.Core.Hours;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>What a way on costs: everything that it moves and lets go, held against the plan as it stands.</summary>
/// <param name="open">What is planned and not done, from the upset on.</param>
internal sealed class FutureCost(IReadOnlyList<PlannedWork> open, IReadOnlyList<Unit> units)
{
    private readonly Dictionary<Guid, PlannedWork> _work = open.ToDictionary(w => w.Session.Id);

    /// <summary>Whether it goes on by itself where it stopped, so that no lesson of it is lost.</summary>
    public static bool Resumes(PlannedWork work) => work.Session.ActivityId is null;

    /// <param name="title">What upset the plan.</param>
    /// <param name="ends">When a unit would end, given when it ends now and the last of its sessions as they would stand.</param>
    public Future Of(FutureKind kind, string title, IReadOnlyList<PlanChange> changes, IReadOnlyList<UnitMove> moves, IReadOnlyList<Activity> leftOut, Proof? proof, Func<Unit, DateOnly, DateOnly> ends)
    {
        var letGo = changes.Where(c => c.To is null).Select(c => _work[c.SessionId]).ToList();
        var kept = changes.Where(c => c.To is not null).ToList();
        return new Future(
            kind,
            new PlanProposal($"{title}: {Words(kind)}", changes, [], moves, [.. leftOut.Select(a => a.Id)]),
            [.. letGo.Where(w => !Resumes(w)).Select(w => w.Title).Concat(leftOut.Select(a => a.Title)).Distinct()],
            [.. letGo.Where(Resumes).Select(w => w.Course?.Title ?? w.Loop?.Title ?? w.Title).Distinct()],
            kept.Count(c => c.To!.Date != c.From.Date),
            [.. kept.Where(c => c.To!.StartsAt is null && c.From.StartsAt is not null).Select(c => _work[c.SessionId].Title)],
            Minutes(letGo),
            Ends(changes, moves, ends),
            proof);
    }

    public static DateOnly LastDay(Unit unit) => unit.StartsOn!.Value.AddDays(7 * unit.Weeks - 3);

    private static string Words(FutureKind kind) => kind switch { FutureKind.Shift => "shifted", FutureKind.Thin => "thinned out", _ => "let go" };

    private static List<LostMinutes> Minutes(List<PlannedWork> letGo) =>
    [
        .. letGo.Where(w => w.Split.Split.Count > 0).SelectMany(w => w.Split.Split
                .Zip(LargestRemainder.Divide(w.Minutes, [.. w.Split.Split.Select(s => s.Weight)]), (s, minutes) => (s.SubjectId, minutes))
                .SelectMany(p => w.Session.Learners.Distinct().Select(l => (Learner: l, p.SubjectId, p.minutes))))
            .GroupBy(p => (p.Learner, p.SubjectId)).Select(g => new LostMinutes(g.Key.Learner, g.Key.SubjectId, g.Sum(p => p.minutes))).Where(l => l.Minutes > 0),
    ];

    private List<UnitEnd> Ends(IReadOnlyList<PlanChange> changes, IReadOnlyList<UnitMove> moves, Func<Unit, DateOnly, DateOnly> ends)
    {
        var to = changes.ToDictionary(c => c.SessionId, c => c.To);
        return
        [
            .. units.Select(unit =>
            {
                var own = open.Where(w => w.Doing.Activity?.UnitId == unit.Id).ToList();
                var before = own.Select(w => w.Session.Date).Append(LastDay(unit)).Max();
                var after = own.Select(w => to.TryGetValue(w.Session.Id, out var place) ? place?.Date : w.Session.Date).OfType<DateOnly>().Append(LastDay(unit)).Max();
                var touched = own.Any(w => to.ContainsKey(w.Session.Id)) || moves.Any(m => m.UnitId == unit.Id);
                return (Touched: touched, End: new UnitEnd(unit.Id, unit.Title, before, ends(unit, after)));
            }).Where(e => e.Touched).Select(e => e.End),
        ];
    }
}
