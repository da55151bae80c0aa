using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Forecasts;

/// <summary>Three points of a spread: one in ten lies below the first, half below the second, nine in ten below the third.</summary>
public sealed record Spread(int P10, int P50, int P90);

/// <summary>The running total at the end of a coming week.</summary>
public sealed record WeekAhead(DateOnly Until, Spread Total);

/// <summary>
/// A block bootstrap over the last weeks: 2,000 times the weeks to come are filled with pairs of neighbouring weeks
/// drawn from the last eight, each scaled to the teaching days it holds. The method is Künsch's moving block bootstrap
/// (Annals of Statistics 17, 1989, from memory), run round the end; weeks, lengths and the seed are our choices.
/// </summary>
/// <param name="YearEnd">The total at the end of the year, in the measure's unit.</param>
/// <param name="Reached">The target is reached on or before these dates in one, five and nine of ten; null: not in this year.</param>
/// <param name="SpareDays">Teaching days between the middle date and the end of the year; null where the middle does not reach it.</param>
/// <param name="WeeksSeen">Whole weeks it is drawn from: three to eight.</param>
public sealed record Outlook(Spread YearEnd, Outlook.Dates Reached, int? SpareDays, int WeeksSeen)
{
    public const int FewestWeeks = 3;
    public const int MostWeeks = 8;
    public const int Resamples = 2000;
    private const int Block = 2;
    private const int Seed = 20;

    // Only a picture needs it, and it takes the longest.
    private Lazy<IReadOnlyList<WeekAhead>> _path = new(() => []);

    public sealed record Dates(DateOnly? P10, DateOnly? P50, DateOnly? P90);

    /// <summary>The running total at the end of each coming week.</summary>
    public IReadOnlyList<WeekAhead> Path => _path.Value;

    internal static Outlook Of(IReadOnlyList<PastWeek> seen, IReadOnlyList<DateOnly> left, int soFar, int target)
    {
        var weeks = left.GroupBy(Week.Of).Select(w => w.ToList()).ToList();
        var totals = new int[weeks.Count][];
        for (var w = 0; w < weeks.Count; w++)
            totals[w] = new int[Resamples];
        var reached = new int[Resamples];
        var chance = new Random(Seed);
        for (var run = 0; run < Resamples; run++)
            reached[run] = Run(run, seen, weeks, totals, soFar, target, chance);

        Array.Sort(reached);
        var dates = new Dates(Date(At(reached, 10)), Date(At(reached, 50)), Date(At(reached, 90)));
        int? spare = dates.P50 is { } middle ? left.Count(d => d > middle) : null;
        return new Outlook(SpreadOf([.. totals[^1]]), dates, spare, seen.Count)
        {
            _path = new(() => [.. weeks.Zip(totals, (days, all) => new WeekAhead(days[^1], SpreadOf(all)))]),
        };
    }

    // One way in which the weeks may go on; the day number on which the target is reached, or the largest number.
    private static int Run(int run, IReadOnlyList<PastWeek> seen, List<List<DateOnly>> weeks, int[][] totals, int soFar, int target, Random chance)
    {
        var total = soFar;
        var day = target <= soFar ? weeks[0][0].DayNumber : int.MaxValue;
        var at = 0;
        for (var w = 0; w < weeks.Count; w++)
        {
            at = w % Block == 0 ? chance.Next(seen.Count) : (at + 1) % seen.Count;
            var days = weeks[w];
            var gain = Scaled(seen[at], days.Count);
            if (day == int.MaxValue && total + gain >= target)
                day = days[DayReached(target - total, gain, days.Count)].DayNumber;
            total += gain;
            totals[w][run] = total;
        }

        return day;
    }

    private static int Scaled(PastWeek week, int days) => (int)((2L * week.Amount * days + week.TeachingDays) / (2 * week.TeachingDays));

    // The week's gain spread evenly over its days: the first day on which the missing part is there.
    private static int DayReached(int missing, int gain, int days) => (int)(((long)missing * days + gain - 1) / gain) - 1;

    private static Spread SpreadOf(int[] all)
    {
        Array.Sort(all);
        return new Spread(At(all, 10), At(all, 50), At(all, 90));
    }

    // Nearest rank: the smallest value with at least so many per cent of all at or below it.
    private static int At(int[] sorted, int percent) => sorted[(sorted.Length * percent + 99) / 100 - 1];

    private static DateOnly? Date(int number) => number == int.MaxValue ? null : DateOnly.FromDayNumber(number);
}
