using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>Puts given sessions of one day in order, or says which of them do not go together.</summary>
internal sealed class DayOrder(GridWeek week, Thinking thinking)
{
    private const double Share = 0.02;
    private const int MostFiltered = 40;

    /// <param name="draft">With the days of all sessions.</param>
    /// <param name="mornings">Which sessions must be over by noon.</param>
    public (CpSolverStatus Status, Draft Draft) Place(Draft draft, int day, IReadOnlyList<int> sessions, bool[] mornings)
    {
        var model = new PlacingModel(week, sessions.Select(s => week.Sessions[s]), [day], draft, all: true);
        model.KeepMornings(sessions.Where(s => mornings[s]));
        var (status, solver) = thinking.Solve(model.Model, Share);
        return (status, Thinking.Found(status) ? model.Read(solver) : draft);
    }

    /// <summary>Few of the sessions that cannot be on the day together; null where that was not found out.</summary>
    public List<int>? Clash(Draft draft, int day, IReadOnlyList<int> sessions, bool[] mornings)
    {
        var core = Suspects(draft, day, sessions, mornings);
        if (core is null || Place(draft, day, core, mornings).Status != CpSolverStatus.Infeasible)
            core = [.. sessions];
        if (core.Count > MostFiltered)
            return core;
        // One after another is left out for as long as the rest still do not go together.
        for (var i = core.Count - 1; i >= 0 && core.Count > 1; i--)
        {
            List<int> fewer = [.. core];
            fewer.RemoveAt(i);
            if (Place(draft, day, fewer, mornings).Status == CpSolverStatus.Infeasible)
                core = fewer;
        }

        return core;
    }

    private List<int>? Suspects(Draft draft, int day, IReadOnlyList<int> sessions, bool[] mornings)
    {
        var model = new PlacingModel(week, sessions.Select(s => week.Sessions[s]), [day], draft, all: false);
        var on = sessions.Select(s => (Session: s, Literal: model.On(s, day))).Where(p => p.Literal is not null).ToList();
        model.KeepMornings(sessions.Where(s => mornings[s]));
        model.Model.AddAssumptions(on.Select(p => p.Literal!));
        var (status, solver) = thinking.Solve(model.Model, Share);
        if (status != CpSolverStatus.Infeasible)
            return null;
        var bad = solver.SufficientAssumptionsForInfeasibility().ToHashSet();
        List<int> core = [.. on.Where(p => bad.Contains(p.Literal!.GetIndex())).Select(p => p.Session)];
        return core.Count == 0 ? null : core;
    }
}
