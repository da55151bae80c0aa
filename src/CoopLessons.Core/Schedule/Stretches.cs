namespace CoopLessons.Core.Schedule;

/// <summary>Sums and differences of stretches of one day.</summary>
public static class Stretches
{
    /// <summary>The same time ascending and apart from each other: stretches that meet or touch become one, empty ones go.</summary>
    public static IReadOnlyList<Stretch> Joined(IEnumerable<Stretch> stretches)
    {
        var joined = new List<Stretch>();
        foreach (var next in stretches.Where(s => s.Minutes > 0).OrderBy(s => s.From).ThenBy(s => s.To))
        {
            if (joined.Count > 0 && next.From <= joined[^1].To)
                joined[^1] = new Stretch(joined[^1].From, Math.Max(joined[^1].To, next.To));
            else
                joined.Add(next);
        }

        return joined;
    }

    /// <summary>What is left of free time once what is taken has gone from it: ascending, apart, none empty.</summary>
    /// <param name="free">In any order; minutes that stand twice are free once.</param>
    /// <param name="taken">In any order, also partly or wholly outside the free time.</param>
    public static IReadOnlyList<Stretch> Less(IEnumerable<Stretch> free, IEnumerable<Stretch> taken)
    {
        IReadOnlyList<Stretch> left = Joined(free);
        foreach (var gone in Joined(taken))
            left = [.. left.SelectMany(s => Without(s, gone))];
        return left;
    }

    /// <summary>The time that lies in both: ascending, apart, none empty.</summary>
    public static IReadOnlyList<Stretch> Both(IEnumerable<Stretch> one, IEnumerable<Stretch> other)
    {
        var others = Joined(other);
        return [.. Joined(one).SelectMany(s => others.Where(s.Meets).Select(o => new Stretch(Math.Max(s.From, o.From), Math.Min(s.To, o.To))))];
    }

    /// <summary>Minutes in all of them together; a minute that stands in two counts once.</summary>
    public static int Minutes(IEnumerable<Stretch> stretches) => Joined(stretches).Sum(s => s.Minutes);

    /// <summary>Minutes of free time on the days that are named.</summary>
    public static int MinutesOn(this FreeTime free, IEnumerable<DateOnly> days) => days.Distinct().Sum(d => Minutes(free.On(d)));

    private static IEnumerable<Stretch> Without(Stretch stretch, Stretch gone)
    {
        if (!stretch.Meets(gone))
            return [stretch];
        Stretch[] left = [new(stretch.From, gone.From), new(gone.To, stretch.To)];
        return left.Where(s => s.Minutes > 0);
    }
}
