using System.Diagnostics;
using System.Globalization;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Tests.Schedule.Layout;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>
/// Invented weeks laid out with the usual effort, new and after a lost day: how many are proven best, how far the others
/// may be from it, and how long a parent waits. Time of the processor stands beside time of the clock, since the latter
/// says little on a machine that is shared.
/// </summary>
public static class LayingOutWeeks
{
    private sealed record Measured(WeekPlan Plan, bool Valid, double Clock, double Processor, double FirstPlan, double? Everything);

    public static int Print(TextWriter text)
    {
        // The first call of a process loads the solver.
        Lay(AnyWeek.Of(WeekSize.Small, 99));
        var valid = true;
        text.WriteLine("| weeks | proven best | ms: median, max | of the processor: median, max | ms to the first valid plan: median, max |");
        text.WriteLine("|---|---|---|---|---|");
        foreach (var size in new[] { WeekSize.Small, WeekSize.Usual })
        {
            var runs = Enumerable.Range(1, 13).Select(seed => Both(size, seed)).ToList();
            Row($"{size}, new", [.. runs.Select(r => r.New)]);
            Row($"{size}, a day lost", [.. runs.Select(r => r.Again)]);
        }

        text.WriteLine();
        text.WriteLine("| week | new: cost/bound | left out | ms to everything placed | ms | a day lost: cost/bound | left out | ms to a valid plan | ms |");
        text.WriteLine("|---|---|---|---|---|---|---|---|---|");
        foreach (var size in new[] { WeekSize.Tight, WeekSize.Large })
            for (var seed = 1; seed <= 3; seed++)
            {
                var (made, again) = Both(size, seed);
                Line($"| {size} {seed} | {made.Plan.Cost.Total}/{made.Plan.Bound} | {made.Plan.Misfits.Count} | {made.Everything?.ToString("0", CultureInfo.InvariantCulture) ?? "never"} | {made.Clock:0} | {again.Plan.Cost.Total}/{again.Plan.Bound} | {again.Plan.Misfits.Count} | {again.FirstPlan:0} | {again.Clock:0} |");
            }

        if (!valid)
            text.WriteLine("A plan broke a rule.");
        return valid ? 0 : 1;

        (Measured New, Measured Again) Both(WeekSize size, int seed)
        {
            var week = AnyWeek.Of(size, seed);
            var made = Lay(week);
            var again = Lay(AnyWeek.WithoutTuesday(week, made.Plan));
            valid &= made.Valid && again.Valid;
            return (made, again);
        }

        void Row(string name, List<Measured> runs) => Line(
            $"| {name} | {runs.Count(r => r.Plan.Proof == Proof.Best)} of {runs.Count} | {Two(runs, r => r.Clock)} | {Two(runs, r => r.Processor)} | {Two(runs, r => r.FirstPlan)} |");

        void Line(FormattableString line) => text.WriteLine(line.ToString(CultureInfo.InvariantCulture));
    }

    private static string Two(List<Measured> runs, Func<Measured, double> value)
    {
        var values = runs.Select(value).Order().ToList();
        return string.Create(CultureInfo.InvariantCulture, $"{values[values.Count / 2]:0}, {values[^1]:0}");
    }

    private static Measured Lay(WeekProblem week)
    {
        double? first = null, everything = null;
        var processor = Environment.CpuUsage.TotalTime;
        var clock = Stopwatch.StartNew();
        var plan = WeekLayout.Solve(week, Effort.Usual, told =>
        {
            if (told.LeftOut is not { } left)
                return;
            first ??= clock.Elapsed.TotalMilliseconds;
            if (left == 0)
                everything ??= clock.Elapsed.TotalMilliseconds;
        });
        var took = clock.Elapsed.TotalMilliseconds;
        var stay = week.Sessions.Where(s => s.Fixed).Select(s => s.Id).ToHashSet();
        return new Measured(plan, PlanCheck.Faults(week, plan.Places).All(f => stay.Contains(f.SessionId)) && PlanCheck.Cost(week, plan.Places) == plan.Cost,
            took, (Environment.CpuUsage.TotalTime - processor).TotalMilliseconds, first ?? took, everything);
    }
}
