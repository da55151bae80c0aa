using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>
/// Problems of sequencing with known answers, told as a day of lessons: a machine is a child, and so is a job, so that
/// neither is in two places. A unit of time is a quarter of an hour, of which the change after a lesson is the last part.
/// </summary>
public class Published_sequences
{
    private const int Unit = 15;

    /// <summary>
    /// H. Fisher and G. L. Thompson, “Probabilistic learning combinations of local job-shop scheduling rules”, in: Muth and
    /// Thompson (eds.), Industrial Scheduling, Prentice-Hall 1963, the instance of 6 jobs on 6 machines known as ft06, as
    /// listed by J. E. Beasley's OR-Library; optimum 55. Each row a job: machine, duration, machine, duration, …
    /// </summary>
    private static readonly int[][] Ft06 =
    [
        [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
        [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
        [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
        [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
        [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
        [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
    ];

    private static readonly DateOnly Day = AnyWeek.Monday;

    private static FreeTime Hours(int from, int to) => new(new Dictionary<DateOnly, IReadOnlyList<Stretch>> { [Day] = [new(from * Unit, to * Unit)] });

    private static Guid Id(int kind, int number) => new(kind, (short)number, 0, [0, 0, 0, 0, 0, 0, 0, 9]);

    // So many minutes that with the change of five, or of ten after more than thirty, they fill the units.
    private static int Minutes(int units) => units * Unit - (units * Unit <= 35 ? 5 : 10);

    private static WeekLearner Child(int number, int units) => new(Id(1, number), $"Child {number}", 1000, Hours(0, units));

    private static WeekPlan JobShop(int units)
    {
        List<WeekSession> sessions = [];
        for (var job = 0; job < 6; job++)
            for (var step = 0; step < 6; step++)
                sessions.Add(new WeekSession(Id(2, job * 6 + step), $"Job {job} step {step}", null, [Id(1, Ft06[job][2 * step]), Id(1, 6 + job)], Minutes(Ft06[job][2 * step + 1]), AdultNeed.Alone)
                {
                    After = step == 0 ? [] : [new Precedence(Id(2, job * 6 + step - 1), 0)],
                });
        return WeekLayout.Solve(new WeekProblem([Day], [.. Enumerable.Range(0, 12).Select(c => Child(c, units))], [], sessions), Effort.Longer);
    }

    [Fact]
    public void The_job_shop_of_1963_is_done_in_55() => Assert.Empty(JobShop(55).Misfits);

    [Fact]
    public void And_it_is_proven_that_54_are_not_enough()
    {
        var plan = JobShop(54);
        Assert.NotEmpty(plan.Misfits);
        // Not one of 400 and more for a session left out can be spared.
        Assert.True(plan.Bound >= 400, $"The bound is {plan.Bound}.");
    }

    private static WeekPlan OneMachine(int[] lengths, Func<int, FreeTime> hours, Func<int, int>? weights = null)
    {
        var all = lengths.Sum() + 40;
        var others = lengths.Select((_, j) => Enumerable.Range(0, weights?.Invoke(j) ?? 0).Select(i => Child(10 * (j + 1) + i, all)).ToList()).ToList();
        return WeekLayout.Solve(
            new WeekProblem([Day], [Child(0, all), .. others.SelectMany(o => o)], [],
                [.. lengths.Select((p, j) => new WeekSession(Id(2, j), $"Job {j + 1}", null, [Id(1, 0), .. others[j].Select(o => o.Id)], Minutes(p), AdultNeed.Alone) { Bound = new BoundHours(hours(j), "in time") })]),
            Effort.Usual);
    }

    /// <summary>M. L. Pinedo, Scheduling, the example of the number of late jobs (from memory): two are late.</summary>
    [Fact]
    public void Of_five_jobs_with_due_dates_two_are_late()
    {
        int[] due = [9, 17, 18, 19, 21];
        var plan = OneMachine([7, 8, 4, 6, 6], j => Hours(0, due[j]));
        Assert.Equal(2, plan.Misfits.Count);
        Assert.Equal(Proof.Best, plan.Proof);
    }

    /// <summary>M. L. Pinedo, Scheduling, the example of the maximum lateness with release dates (from memory): five.</summary>
    [Theory]
    [InlineData(5, true)]
    [InlineData(4, false)]
    public void The_least_lateness_with_release_dates_is_five(int late, bool fits)
    {
        int[] release = [0, 1, 3, 5], due = [8, 12, 11, 10];
        var plan = OneMachine([4, 2, 6, 5], j => Hours(release[j], due[j] + late));
        Assert.Equal(fits, plan.Misfits.Count == 0);
        Assert.Equal(Proof.Best, plan.Proof);
    }

    /// <summary>
    /// Our own example; W. E. Smith's rule of 1956 (from memory) orders by length over weight: 2-1-3-4, the weighted sum of
    /// ends is 41. The weight of a job is the number of children who wait for its end, for calm days are early ones.
    /// </summary>
    [Fact]
    public void A_calm_day_follows_the_rule_of_Smith()
    {
        int[] lengths = [3, 1, 2, 4], weights = [4, 3, 2, 1];
        var plan = OneMachine(lengths, _ => Hours(0, 40), j => weights[j]);
        var ends = plan.Places.Select(p => (Job: p.SessionId == Id(2, 0) ? 0 : p.SessionId == Id(2, 1) ? 1 : p.SessionId == Id(2, 2) ? 2 : 3, p.StartsAt)).ToList();
        Assert.Equal([1, 0, 2, 3], ends.Select(e => e.Job));
        Assert.Equal(41, ends.Sum(e => weights[e.Job] * (e.StartsAt / Unit + lengths[e.Job])));
    }
}
