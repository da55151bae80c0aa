using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using CsCheck;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>Rotas of every kind, held against the rules by a checker that knows nothing of how they are found.</summary>
public class Any_rota
{
    private static void Holds(RotaProblem problem, Rota rota)
    {
        Assert.Empty(RotaCheck.Faults(problem, rota.Turns).Select(f => f.Sentence));
        Assert.Equal(RotaCheck.Cost(problem, rota.Turns), rota.Cost);
        Assert.Equal(rota.Cost.Unfilled, rota.Gaps.Sum(g => g.Places));
        Assert.All(rota.Gaps, g => Assert.True(g.Sentence.EndsWith('.') && g.Helps.All(h => h.Sentence.EndsWith('.'))));
        Assert.Equal(rota.Turns.Count, rota.Turns.Distinct().Count());
        Assert.Equal(rota.Turns.Count, rota.Balances.Sum(b => b.Turns));
        Assert.All(rota.Balances, b => Assert.Equal(b.Turns, b.ByRole.Sum()));
        Assert.All(rota.Assignments, a => Assert.EndsWith(".", CoopWords.Turn(problem, a), StringComparison.Ordinal));
        Assert.Equal(Enum.GetValues<RotaPart>().Take(rota.Proven.Count), rota.Proven);
    }

    [Fact]
    public void Breaks_no_rule_in_three_hundred() =>
        AnyRota.Of(5, 4, 6, 3, 2).Sample(problem => Holds(problem, RotaPlanning.Solve(problem, new Effort(0.05))), iter: 300, seed: "0000Kj8aHdf4");

    [Fact]
    public void Breaks_no_rule_without_any_effort() =>
        AnyRota.Of(4, 3, 5, 3, 2).Sample(problem => Holds(problem, RotaPlanning.Solve(problem, new Effort(0))), iter: 40, seed: "0000Kj8aHdf4");

    [Fact]
    public void Breaks_no_rule_when_it_is_healed_and_leaves_alone_what_is_over() =>
        Gen.Select(AnyRota.Of(5, 4, 6, 3, 2), Gen.Int[0, 4], Gen.Int[0, 5]).Sample((problem, first, ill) =>
        {
            var was = RotaPlanning.Solve(problem, new Effort(0.02)).Turns;
            var from = problem.Meetings[first];
            var now = problem with { Absences = [.. problem.Absences.Union(problem.Meetings.Where(m => m >= from).Select(m => new RotaAbsence(problem.Adults[ill].Id, m)))] };
            var healed = RotaHealing.Heal(now, was, from, new Effort(0.05));
            Assert.Empty(RotaCheck.Faults(now, healed.Rota.Turns).Select(f => f.Sentence));
            Assert.Equal(was.Where(t => t.Meeting < from), healed.Rota.Turns.Where(t => t.Meeting < from));
            Assert.True(healed.Least <= healed.Changes.Count);
            Assert.All(healed.Changes, c => Assert.EndsWith(".", CoopWords.Change(now, c), StringComparison.Ordinal));
            Assert.All(healed.Changes, c => Assert.True(c.Meeting >= from));
        }, iter: 150, seed: "0000Kj8aHdf4");
}
