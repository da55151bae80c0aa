using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using CsCheck;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>
/// Rotas so small that every one can be tried: at each meeting every way to fill the places that the checker lets pass, and
/// of these all that leave as few places empty as can be, put together in every way over the meetings.
/// </summary>
public class Every_rota_there_is
{
    private static IEnumerable<List<RotaTurn>> At(RotaProblem problem, DateOnly meeting)
    {
        IEnumerable<List<RotaTurn>> ways = [[]];
        foreach (var role in problem.Roles)
            for (var place = 0; place < role.Places; place++)
                ways = ways.SelectMany(w => problem.Adults.Where(a => w.All(t => t.Adult != a.Id)).Select(a => (List<RotaTurn>)[.. w, new RotaTurn(meeting, role.Id, a.Id)]).Prepend(w));
        var valid = ways.DistinctBy(w => string.Join(' ', w.Select(t => $"{t.Role}{t.Adult}").Order(StringComparer.Ordinal))).Where(w => RotaCheck.Faults(problem, w).Count == 0).ToList();
        return valid.Where(w => w.Count == valid.Max(v => v.Count));
    }

    private static IEnumerable<List<RotaTurn>> All(RotaProblem problem) => problem.Meetings.Select(m => At(problem, m).ToList())
        .Aggregate((IEnumerable<List<RotaTurn>>)[[]], (all, here) => all.SelectMany(w => here.Select(h => (List<RotaTurn>)[.. w, .. h])));

    [Fact]
    public void Holds_none_that_costs_less_than_the_one_that_is_found() => AnyRota.Of(3, 3, 4, 2, 1).Sample(problem =>
    {
        var rota = RotaPlanning.Solve(problem, Effort.Usual);
        Assert.True(rota.IsBest);
        Assert.Equal(All(problem).Select(w => RotaCheck.Cost(problem, w)).Min(), rota.Cost);
    }, iter: 60, seed: "0000Kj8aHdf4");

    [Fact]
    public void Holds_none_with_three_places_that_costs_less() => AnyRota.Of(2, 3, 4, 2, 2).Sample(problem =>
    {
        var rota = RotaPlanning.Solve(problem, Effort.Usual);
        Assert.True(rota.IsBest);
        Assert.Equal(All(problem).Select(w => RotaCheck.Cost(problem, w)).Min(), rota.Cost);
    }, iter: 60, seed: "0000Kj8aHdf4");

    /// <summary>Two of four are ill, at one meeting or from it on; what was before is any rota, also one that broke rules.</summary>
    [Fact]
    public void Holds_none_that_heals_with_fewer_changes_or_as_fairly() => Gen.Select(AnyRota.Of(3, 3, 4, 2, 1), Gen.Int[0, 4].Array[6], Gen.Int[0, 1], Gen.Int[0, 3], Gen.Int[0, 3]).Sample((problem, drawn, first, one, other) =>
    {
        var from = problem.Meetings[first];
        var now = problem with { Absences = [.. problem.Absences.Union(problem.Adults.Where((_, i) => i == one || i == other).Select(a => new RotaAbsence(a.Id, from)))] };
        var was = drawn.Select((a, i) => (a, i)).Where(d => d.a < 4).Select(d => new RotaTurn(problem.Meetings[d.i / 2], problem.Roles[d.i % 2].Id, problem.Adults[d.a].Id)).ToList();
        var healed = RotaHealing.Heal(now, was, from, Effort.Usual);
        var later = now with { Meetings = [.. now.Meetings.Where(m => m >= from)] };
        var over = was.Where(t => t.Meeting < from).ToList();
        var best = All(later).Select(w => (Changes: Changes(later, was, w), Cost: RotaCheck.Cost(now, [.. over, .. w]))).Min();
        Assert.Equal((best.Changes, best.Changes), (healed.Changes.Count, healed.Least));
        Assert.True(healed.IsLeast && healed.Rota.IsBest);
        Assert.Equal(best.Cost, healed.Rota.Cost);
    }, iter: 60, seed: "0000Kj8aHdf4");

    private static int Changes(RotaProblem later, List<RotaTurn> was, List<RotaTurn> now) => later.Meetings.Sum(m => later.Roles.Sum(r =>
    {
        var had = was.Where(t => t.Meeting == m && t.Role == r.Id).ToHashSet();
        var have = now.Where(t => t.Meeting == m && t.Role == r.Id).ToHashSet();
        return Math.Max(had.Except(have).Count(), have.Except(had).Count());
    }));
}
