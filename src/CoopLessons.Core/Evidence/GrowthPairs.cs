namespace CoopLessons.Core.Evidence;

/// <summary>A work sample as the search for growth needs it.</summary>
/// <param name="What">What was done, as the log calls it; empty where it belongs to no entry.</param>
public sealed record GrowthCandidate(Guid Id, DateOnly Date, Guid SubjectId, string What);

/// <summary>Two samples of one skill, an early and a late one.</summary>
/// <param name="What">What was done both times, as the log called it the first time; empty where only the subject is the same.</param>
public sealed record GrowthPair(Guid SubjectId, string What, Guid Early, Guid Late);

/// <summary>Finds pairs that may show growth; which of them do, and in what, the family says.</summary>
public static class GrowthPairs
{
    /// <summary>Least days between the two (eight weeks: common practice, no source).</summary>
    public const int LeastApart = 56;

    /// <summary>
    /// For each subject the first and last sample of what was done again under the same words, letters large or small; where
    /// nothing was, the first and last sample of the subject.
    /// </summary>
    /// <returns>At most one a subject, the pair that lies farthest apart first.</returns>
    public static IReadOnlyList<GrowthPair> Propose(IEnumerable<GrowthCandidate> samples)
    {
        var pairs = new List<(GrowthPair Pair, int Days)>();
        foreach (var subject in samples.GroupBy(s => s.SubjectId))
        {
            var same = subject.Where(s => s.What.Length > 0).GroupBy(s => s.What.Trim(), StringComparer.OrdinalIgnoreCase).Select(Ends).Where(e => e.Days >= LeastApart)
                .OrderByDescending(e => e.Days).ThenBy(e => e.Early.What, StringComparer.Ordinal).ToList();
            var (early, late, days) = same.Count > 0 ? same[0] : Ends(subject);
            if (days >= LeastApart)
                pairs.Add((new GrowthPair(subject.Key, same.Count > 0 ? early.What.Trim() : "", early.Id, late.Id), days));
        }

        return [.. pairs.OrderByDescending(p => p.Days).ThenBy(p => p.Pair.SubjectId).Select(p => p.Pair)];
    }

    private static (GrowthCandidate Early, GrowthCandidate Late, int Days) Ends(IEnumerable<GrowthCandidate> samples)
    {
        var inOrder = samples.OrderBy(s => s.Date).ThenBy(s => s.Id).ToList();
        return (inOrder[0], inOrder[^1], inOrder[^1].Date.DayNumber - inOrder[0].Date.DayNumber);
    }
}
