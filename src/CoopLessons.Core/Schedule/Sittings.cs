namespace CoopLessons.Core.Schedule;

/// <summary>How long a child sits at one thing. Offered, never imposed: children differ.</summary>
public static class Sittings
{
    /// <summary>
    /// Minutes for an age in whole years. Common practice, no source: two to three minutes a year of age. Taken are three,
    /// in whole fives rounded down and at least ten, up to twelve years; 45 from thirteen and 60 from sixteen on.
    /// </summary>
    public static int Proposed(int age) => age switch
    {
        >= 16 => 60,
        >= 13 => 45,
        _ => Math.Max(10, Math.Max(0, age) * 3 / 5 * 5),
    };

    /// <summary>
    /// A length in parts none of which is longer than a sitting: as few as will do, whole fives and as even as they can be,
    /// the longer ones first. What is left beyond whole fives goes to the last part.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length or the sitting is below a minute.</exception>
    public static IReadOnlyList<int> Parts(int minutes, int longest)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(longest, 1);
        if (minutes <= longest)
            return [minutes];
        var most = longest / 5;
        if (most == 0)
            // Shorter than the grid: even parts by the minute.
            return Even(minutes, (minutes + longest - 1) / longest, 1);
        var fives = (minutes + 4) / 5;
        var parts = Even(fives, (fives + most - 1) / most, 5);
        parts[^1] -= fives * 5 - minutes;
        return parts;
    }

    private static int[] Even(int units, int count, int size) =>
        [.. Enumerable.Range(0, count).Select(i => size * (units / count + (i < units % count ? 1 : 0)))];
}
