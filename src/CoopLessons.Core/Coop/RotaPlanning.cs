using CoopLessons.Core.Coop.Rotas;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Schedule.Layout;

namespace CoopLessons.Core.Coop;

/// <summary>Gives the turns of a term: what must hold holds, and of all rotas that are left it looks for a cheap one by <see cref="RotaCost"/>.</summary>
public static class RotaPlanning
{
    /// <summary>
    /// The same problem and effort give the same rota, on the same build and kind of machine, unless it was cut short. It
    /// blocks for as long as it takes.
    /// </summary>
    /// <exception cref="ArgumentException">The problem has a fault; the message is the first of <see cref="RotaProblemFaults.Of"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The effort is below nothing, or no number.</exception>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public static Rota Solve(RotaProblem problem, Effort effort, CancellationToken ct = default)
    {
        var grid = Grid(problem, effort);
        var thinking = new RotaThinking(grid, before: null, effort.Units, ct);
        thinking.Run();
        return Written(grid, thinking, 0, ct);
    }

    internal static RotaGrid Grid(RotaProblem problem, Effort effort)
    {
        if (RotaProblemFaults.Of(problem) is [var first, ..])
            throw new ArgumentException(first, nameof(problem));
        if (!double.IsFinite(effort.Units) || effort.Units < 0)
            throw new ArgumentOutOfRangeException(nameof(effort), "An effort is a number of units from 0.");
        return new RotaGrid(problem);
    }

    /// <param name="from">The first meeting, by number, whose empty places are told.</param>
    internal static Rota Written(RotaGrid grid, RotaThinking thinking, int from, CancellationToken ct)
    {
        var turns = grid.InOrder(thinking.Turns);
        var asking = new Thinking(1, ct);
        var gaps = new WhyOpen(grid, asking).Gaps(turns, from);
        return new Rota(RotaReasons.Of(grid, turns), gaps, RotaCheck.Balances(grid.Problem, turns), RotaCheck.Cost(grid.Problem, turns), thinking.Proven, thinking.CutShort || asking.CutShort);
    }
}
