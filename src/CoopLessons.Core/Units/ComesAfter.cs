namespace CoopLessons.Core.Units;

/// <summary>Which activities of a unit come after which.</summary>
public static class ComesAfter
{
    /// <summary>A wait from which on the next day is meant: nobody bakes at night what rises for eight hours.</summary>
    private const int WaitOverNight = 360;
    private const int MinutesOfADay = 24 * 60;

    /// <summary>The codes that would come after themselves, by whatever detour. Codes that nobody has are passed over.</summary>
    public static IReadOnlySet<string> Circles(IEnumerable<(string Code, IReadOnlyList<string> After)> activities)
    {
        var after = activities.GroupBy(a => a.Code, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().After, StringComparer.Ordinal);
        return after.Keys.Where(code => Before(code, after).Contains(code)).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>How many days at least lie between an activity with this wait and what comes after it; 0 for the same day.</summary>
    /// <param name="waitingMinutes">0 or more.</param>
    public static int DaysAfter(int waitingMinutes) =>
        waitingMinutes < WaitOverNight ? 0 : (waitingMinutes + MinutesOfADay - 1) / MinutesOfADay;

    private static HashSet<string> Before(string code, Dictionary<string, IReadOnlyList<string>> after)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(after[code]);
        while (open.TryPop(out var next))
        {
            if (seen.Add(next) && after.TryGetValue(next, out var further))
            {
                foreach (var one in further)
                    open.Push(one);
            }
        }

        return seen;
    }
}
