using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// Runs the solver, one worker with a fixed seed, and counts what it costs: in deterministic effort, which alone ends the
/// work, and in seconds, which only guard against a machine that hardly moves.
/// </summary>
internal sealed class Thinking(double budget, CancellationToken ct)
{
    private const double Net = 60;
    private double _wall;

    public double Spent { get; private set; }
    public double Left => Math.Max(0, budget - Spent);
    public bool CutShort { get; private set; }

    /// <param name="share">The most that this may cost; it is not cut to what is left.</param>
    /// <param name="how">More parameters, as text.</param>
    public (CpSolverStatus Status, CpSolver Solver) Solve(CpModel model, double share, string how = "")
    {
        ct.ThrowIfCancellationRequested();
        var left = Net - _wall;
        if (left <= 0)
        {
            CutShort = true;
            return (CpSolverStatus.Unknown, new CpSolver());
        }

        var solver = new CpSolver { StringParameters = Parameters(share, left, how) };
        using var stop = ct.Register(solver.StopSearch);
        var status = solver.Solve(model);
        ct.ThrowIfCancellationRequested();
        Spent += solver.Response!.DeterministicTime;
        _wall += solver.Response.WallTime;
        CutShort |= _wall >= Net;
        return (status, solver);
    }

    /// <summary>The solver ends the whole process when it cannot read this text, so a comma for a point must not get in.</summary>
    internal static string Parameters(double effort, double seconds, string how) => FormattableString.Invariant(
        $"num_workers:1 random_seed:7 max_deterministic_time:{Math.Clamp(effort, 0.001, 1000):0.######} max_time_in_seconds:{Math.Clamp(seconds, 0.001, Net):0.######} {how}");

    public static bool Found(CpSolverStatus status) => status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
}
