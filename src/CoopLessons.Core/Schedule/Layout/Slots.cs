namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// The grid of the engine: five minutes, counted from midnight. What is free shrinks to whole slots and what is done grows
/// to them, so that a plan on the grid is valid by the minute, too.
/// </summary>
internal static class Slots
{
    public const int Minutes = 5;
    public const int PerDay = 24 * 60 / Minutes;
    public const int Noon = PerDay / 2;

    /// <summary>A day with room for the longest rest after its last slot.</summary>
    public const int Length = PerDay + 4;

    public static int Up(int minutes) => (minutes + Minutes - 1) / Minutes;

    public static int Down(int minutes) => minutes / Minutes;

    /// <summary>Which slots of a day lie wholly in a stretch.</summary>
    public static bool[] Within(IReadOnlyList<Stretch> stretches)
    {
        var open = new bool[Length];
        foreach (var stretch in stretches)
            for (var t = Up(stretch.From); t < Down(stretch.To); t++)
                open[t] = true;
        return open;
    }

    public static void Take(bool[] slots, int fromMinute, int toMinute)
    {
        for (var t = Down(fromMinute); t < Math.Min(Up(toMinute), Length); t++)
            slots[t] = true;
    }

    public static bool All(bool[] slots, int from, int to)
    {
        for (var t = from; t < to; t++)
            if (!slots[t])
                return false;
        return true;
    }

    public static bool Any(bool[] slots, int from, int to)
    {
        for (var t = from; t < to; t++)
            if (slots[t])
                return true;
        return false;
    }

    /// <summary>The stretches of set slots: first included, last not.</summary>
    public static IEnumerable<(int From, int To)> Runs(bool[] slots)
    {
        for (var t = 0; t < PerDay; t++)
        {
            if (!slots[t])
                continue;
            var from = t;
            while (t < PerDay && slots[t])
                t++;
            yield return (from, t);
        }
    }
}
