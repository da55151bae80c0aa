using CoopLessons.Core.Schedule.Layout;

namespace CoopLessons.Core.Schedule;

/// <summary>
/// Lays a week out on a grid of five minutes: what must hold holds, and of the plans that are left it looks for a cheap
/// one by <see cref="PlanCost"/>. Fixed sessions stand where they stood, whatever that breaks.
/// </summary>
public static class WeekLayout
{
    /// <summary>
    /// The same problem and effort give the same plan, on the same build and kind of machine, unless it was cut short. It
    /// blocks for as long as it takes: lay out one week at a time, off the thread that answers requests.
    /// </summary>
    /// <param name="progress">Called on the same thread.</param>
    /// <exception cref="ArgumentException">The problem has a fault; the message is the first of <see cref="WeekFaults.Of"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The effort is below nothing, or no number.</exception>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public static WeekPlan Solve(WeekProblem problem, Effort effort, Action<LayoutProgress>? progress = null, CancellationToken ct = default)
    {
        var faults = WeekFaults.Of(problem);
        if (faults.Count > 0)
            throw new ArgumentException(faults[0], nameof(problem));
        if (!double.IsFinite(effort.Units) || effort.Units < 0)
            throw new ArgumentOutOfRangeException(nameof(effort), "An effort is a number of units from 0.");
        var week = GridWeek.Of(problem);
        var laying = new LayingOut(week, effort.Units, progress, ct);
        laying.Run();
        var places = Places(week, laying.Best);
        var bound = laying.HasBound ? laying.Bound : 0;
        var proof = !laying.HasBound ? Proof.None : laying.Cost == bound ? Proof.Best : Proof.Within;
        var misfits = new WhyNot(week, laying.Best, laying.Order, () => laying.Thinking.Spent < 2 * effort.Units && !laying.CutShort).Misfits();
        return new WeekPlan(places, misfits, laying.Price, bound, proof, laying.CutShort);
    }

    private static List<Placing> Places(GridWeek week, Draft draft)
    {
        var days = week.Problem.Days;
        var adults = week.Problem.Adults;
        var laid = week.Sessions.Where(s => draft.Day[s.Index] >= 0).Select(s => new Placing(
            s.Source.Id,
            days[draft.Day[s.Index]],
            Slots.Minutes * draft.Start[s.Index],
            draft.Look[s.Index] is var look and >= 0 ? Slots.Minutes * look : null,
            draft.Hands[s.Index] is var hands and >= 0 ? adults[hands].Id : null,
            draft.Looker[s.Index] is var looker and >= 0 ? adults[looker].Id : null));
        return [.. week.Fixed.Select(f => f.Place).Concat(laid).OrderBy(p => p.Day).ThenBy(p => p.StartsAt).ThenBy(p => p.SessionId)];
    }
}
