namespace CoopLessons.Core.Schedule;

/// <summary>Hours taken out of each other and laid over each other.</summary>
public static class FreeTimes
{
    /// <summary>What is left of free stretches when others are taken out. Stretches ascending and apart; empty ones fall away.</summary>
    public static IReadOnlyList<Stretch> Less(this IReadOnlyList<Stretch> free, IEnumerable<Stretch> busy)
    {
        var left = free.Where(f => f.Minutes > 0).OrderBy(f => f.From).ToList();
        foreach (var taken in busy.Where(b => b.Minutes > 0))
            left = [.. left.SelectMany(f => f.Meets(taken) ? Around(f, taken) : [f])];
        return left;
    }

    /// <summary>The minutes that lie in both.</summary>
    public static IReadOnlyList<Stretch> Within(this IReadOnlyList<Stretch> free, IReadOnlyList<Stretch> others) =>
        [.. free.SelectMany(f => others.Where(f.Meets).Select(o => new Stretch(Math.Max(f.From, o.From), Math.Min(f.To, o.To)))).OrderBy(s => s.From)];

    /// <summary>The stretches as one list, ascending, those that meet or touch made one.</summary>
    public static IReadOnlyList<Stretch> Joined(IEnumerable<Stretch> stretches)
    {
        var joined = new List<Stretch>();
        foreach (var next in stretches.Where(s => s.Minutes > 0).OrderBy(s => s.From).ThenBy(s => s.To))
        {
            if (joined.Count > 0 && next.From <= joined[^1].To)
                joined[^1] = joined[^1] with { To = Math.Max(joined[^1].To, next.To) };
            else
                joined.Add(next);
        }

        return joined;
    }

    /// <summary>Free hours on some days.</summary>
    /// <param name="usual">The usual stretches of a day.</param>
    /// <param name="busy">What is taken out of them on a day.</param>
    public static FreeTime Over(IEnumerable<DateOnly> days, Func<DateOnly, IEnumerable<Stretch>> usual, Func<DateOnly, IEnumerable<Stretch>> busy) =>
        new(days.ToDictionary(d => d, d => Joined(usual(d)).Less(busy(d))));

    private static IEnumerable<Stretch> Around(Stretch free, Stretch taken) =>
        new[] { free with { To = Math.Min(free.To, taken.From) }, free with { From = Math.Max(free.From, taken.To) } }.Where(s => s.Minutes > 0);
}

/// <summary>How a wait is looked after where nothing more is known. Common practice, no source.</summary>
public static class UsualLook
{
    /// <summary>A wait of half a day and more ends on another day, or when nobody teaches any more: it binds no hour of this one.</summary>
    private const int LongestWithinADay = 240;
    private const int Look = 5;

    /// <summary>Null where nothing waits, or where it waits beyond the day's lessons.</summary>
    public static WaitAndLook? After(int waitingMinutes) => waitingMinutes is <= 0 or > LongestWithinADay
        ? null
        : new WaitAndLook(waitingMinutes, Look, waitingMinutes < 60 ? 15 : 30);
}
