using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Log;

/// <summary>Something a family did before, over all its entries that fold to the same words.</summary>
/// <param name="Newest">The entry done last: its spelling, place, subjects and children are taken.</param>
/// <param name="Minutes">The median of the last few entries, each by what most of its children had; 1–1440.</param>
/// <param name="StartsAt">The median of the hours that were written down, minutes after midnight; null where none was.</param>
/// <param name="Days">The days on which it was done, the last first, each once.</param>
public sealed record PastThing(LoggedEntry Newest, int Minutes, int? StartsAt, IReadOnlyList<DateOnly> Days)
{
    /// <summary>So many entries make the median: the pace of now rather than of last autumn. Common practice, no source.</summary>
    public const int EntriesOfMedian = 5;

    /// <summary>Usual on a weekday is what was done on two of the last four. Common practice, no source.</summary>
    private const int WeeksLookedAt = 4;
    private const int TimesToBeUsual = 2;

    public string What => Newest.What;

    public DateOnly LastOn => Days[0];

    /// <summary>The children of the last time; who had other minutes than most keeps them.</summary>
    public IReadOnlyList<LearnerTime> Times
    {
        get
        {
            var common = Common(Newest);
            return [.. Newest.Learners.Select(t => t.Minutes.Value == common ? new LearnerTime(t.LearnerId, new Minutes(Minutes)) : t)];
        }
    }

    /// <summary>On how many of the four days of the same weekday before that day it was done.</summary>
    public int OnSameWeekdays(DateOnly day) => Enumerable.Range(1, WeeksLookedAt).Count(w => Days.Contains(day.AddDays(-7 * w)));

    public bool IsUsualOn(DateOnly day) => OnSameWeekdays(day) >= TimesToBeUsual;

    /// <summary>The things of a log, in no particular order. Entries of other days than those before and on <paramref name="until"/> are left out.</summary>
    public static IReadOnlyList<PastThing> Of(IEnumerable<LoggedEntry> entries, DateOnly until) =>
    [
        .. entries.Where(e => e.Date <= until).GroupBy(e => FoldedWords.Key(e.What), StringComparer.Ordinal).Where(g => g.Key.Length > 0).Select(g =>
        {
            var newestFirst = g.OrderByDescending(e => e.Date).ThenByDescending(e => e.Start).ThenByDescending(e => e.Id).ToList();
            var hours = newestFirst.Where(e => e.Start is not null).Take(EntriesOfMedian).Select(e => e.Start!.Value.Hour * 60 + e.Start.Value.Minute).ToList();
            return new PastThing(
                newestFirst[0], Median([.. newestFirst.Take(EntriesOfMedian).Select(Common)]), hours.Count == 0 ? null : Median(hours),
                [.. newestFirst.Select(e => e.Date).Distinct()]);
        }),
    ];

    /// <summary>What most of its children had; of two that are as frequent, the longer.</summary>
    private static int Common(LoggedEntry entry) =>
        entry.Learners.GroupBy(t => t.Minutes.Value).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).First().Key;

    /// <summary>The middle one; of two middle ones, the mean rounded down.</summary>
    private static int Median(List<int> values)
    {
        values.Sort();
        var (low, high) = (values[(values.Count - 1) / 2], values[values.Count / 2]);
        return (low + high) / 2;
    }
}
