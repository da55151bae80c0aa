using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Evidence;

/// <summary>Which third of the days a sample comes from, the days counted alike.</summary>
public enum PartOfYear
{
    Beginning,
    Middle,
    End,
}

/// <summary>A work sample as the choice among them needs it.</summary>
/// <param name="SetAside">Chosen by the family for the portfolio.</param>
/// <param name="Told">Something is said of it, in a caption.</param>
public sealed record SampleCandidate(Guid Id, DateOnly Date, bool SetAside, bool Told);

/// <summary>
/// Which samples of a subject stand for the whole year: a few from its beginning, middle and end (three a subject: common
/// practice, no source). The rules, in this order:
/// <list type="number">
/// <item>Only samples of the days asked for are chosen from, both ends included.</item>
/// <item>A sample that the family set aside comes before any that it did not.</item>
/// <item>The samples lie as near as can be to days spread evenly from the first to the last, the sum of days counted.</item>
/// <item>Of equally good choices that with more captions is taken, then the earlier one.</item>
/// </list>
/// </summary>
public static class SampleSpread
{
    /// <summary>Samples a subject in a short portfolio: beginning, middle and end.</summary>
    public const int Usual = 3;

    /// <param name="count">At least 1.</param>
    /// <returns>In the order of their days; fewer than <paramref name="count"/> where there are not so many.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count below 1.</exception>
    public static IReadOnlyList<Guid> Choose(IEnumerable<SampleCandidate> candidates, DayRange days, int count = Usual)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var all = candidates.Where(c => days.Contains(c.Date)).OrderBy(c => c.Date).ThenBy(c => c.Id).ToList();
        if (all.Count <= count)
            return [.. all.Select(c => c.Id)];
        var goals = Goals(days, count);
        // Best way to have met the first k goals with samples up to the i-th; the k-th goal with the i-th sample or an earlier one.
        var best = new Way?[count + 1];
        best[0] = new Way(0, 0, 0, null, 0);
        for (var i = 0; i < all.Count; i++)
        {
            for (var k = Math.Min(count, i + 1); k >= 1; k--)
            {
                if (best[k - 1] is { } before && before.With(all[i], i, goals[k - 1]) is var way && (best[k] is not { } known || way.CompareTo(known) < 0))
                    best[k] = way;
            }
        }

        return [.. best[count]!.Chosen().Select(i => all[i].Id)];
    }

    /// <summary>Which third of the days a date lies in; those before them are the beginning, those after them the end.</summary>
    public static PartOfYear PartOf(DateOnly date, DayRange days) => (3 * (date.DayNumber - days.First.DayNumber)) switch
    {
        var x when x < days.Count => PartOfYear.Beginning,
        var x when x < 2 * days.Count => PartOfYear.Middle,
        _ => PartOfYear.End,
    };

    private static List<int> Goals(DayRange days, int count) => count == 1
        ? [days.First.DayNumber + (days.Count - 1) / 2]
        : [.. Enumerable.Range(0, count).Select(i => days.First.DayNumber + (int)((long)i * (days.Count - 1) / (count - 1)))];

    /// <summary>Samples chosen one after the other, the last of them first.</summary>
    private sealed record Way(int NotSetAside, int DaysOff, int Untold, Way? Before, int Index) : IComparable<Way>
    {
        public Way With(SampleCandidate sample, int index, int goal) => new(
            NotSetAside + (sample.SetAside ? 0 : 1), DaysOff + Math.Abs(sample.Date.DayNumber - goal), Untold + (sample.Told ? 0 : 1), this, index);

        public int CompareTo(Way? other) => (NotSetAside, DaysOff, Untold).CompareTo((other!.NotSetAside, other.DaysOff, other.Untold));

        public List<int> Chosen()
        {
            var chosen = new List<int>();
            for (var way = this; way.Before is not null; way = way.Before)
                chosen.Add(way.Index);
            chosen.Reverse();
            return chosen;
        }
    }
}
