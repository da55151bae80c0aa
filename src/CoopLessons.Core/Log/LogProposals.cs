namespace CoopLessons.Core.Log;

/// <summary>
/// Which of the things that may be logged are meant by what is typed, and in which order they are shown:
/// <list type="number">
/// <item>Every typed word is the beginning of a word of the thing; where nothing is typed, all are shown.</item>
/// <item>What folds to the same words stands once for each session, and where it is planned not as a thing of the past besides.</item>
/// <item>What is planned today and not done comes first, as the day has it.</item>
/// <item>Then what is usual on this weekday, near its usual hour where one is known, and not logged today: the more often first, then the later.</item>
/// <item>Then what is planned on another day and not done: the nearer day first, the earlier of two as near.</item>
/// <item>Then what was done before, the last first, then the one done on more days.</item>
/// <item>Then subjects, in the family's order.</item>
/// <item>Where all that is alike, by words, then by the session's id: the order never depends on how the things came.</item>
/// </list>
/// </summary>
public static class LogProposals
{
    /// <summary>“Near its usual hour”: at most so many minutes away. Common practice, no source.</summary>
    public const int MinutesNear = 120;

    /// <param name="typed">As it stands in the field.</param>
    /// <param name="today">In the family's zone.</param>
    /// <param name="minute">Minutes after midnight there, 0–1439.</param>
    public static IReadOnlyList<LogCandidate> Of(string typed, IEnumerable<LogCandidate> candidates, DateOnly today, int minute)
    {
        var words = FoldedWords.Of(typed);
        return [.. Ranked(candidates, today, minute).Where(c => IsMeant(words, c))];
    }

    /// <summary>Rule 1 alone.</summary>
    /// <param name="typed">Folded words.</param>
    public static bool IsMeant(IReadOnlyList<string> typed, LogCandidate candidate) =>
        typed.All(t => candidate.Words.Any(w => w.StartsWith(t, StringComparison.Ordinal)));

    private static IEnumerable<LogCandidate> Ranked(IEnumerable<LogCandidate> candidates, DateOnly today, int minute) =>
        candidates.OrderBy(c => PlaceOf(c, today, minute)).ThenBy(c => c.Key, StringComparer.Ordinal).ThenBy(c => c.What, StringComparer.Ordinal).ThenBy(c => c.Session?.Id)
            .GroupBy(c => c.Key, StringComparer.Ordinal).SelectMany(Once)
            .OrderBy(c => PlaceOf(c, today, minute)).ThenBy(c => c.Key, StringComparer.Ordinal).ThenBy(c => c.What, StringComparer.Ordinal).ThenBy(c => c.Session?.Id);

    private static IEnumerable<LogCandidate> Once(IEnumerable<LogCandidate> alike)
    {
        var all = alike.ToList();
        var planned = all.Where(c => c.Session is not null).DistinctBy(c => c.Session!.Id).ToList();
        return planned.Count > 0 ? planned : all.Take(1);
    }

    private static (int Tier, int First, int Second, int Third) PlaceOf(LogCandidate c, DateOnly today, int minute)
    {
        if (c.Session is { } session)
        {
            var away = session.Date.DayNumber - today.DayNumber;
            return away == 0 ? (0, session.Order, 0, 0) : (2, Math.Abs(away), away, session.Order);
        }

        if (c.Past is not { } past)
            return (4, c.Subject ?? int.MaxValue, 0, 0);
        var isNear = past.StartsAt is not { } at || Math.Abs(at - minute) <= MinutesNear;
        return past.IsUsualOn(today) && isNear && past.LastOn != today
            ? (1, -past.OnSameWeekdays(today), -past.LastOn.DayNumber, 0)
            : (3, -past.LastOn.DayNumber, -past.Days.Count, 0);
    }
}
