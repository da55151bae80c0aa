using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Evidence;

/// <summary>Something that was done, under the words of the log: on how many days, for how long, first and last.</summary>
public sealed record DoneThing(string What, int Days, Minutes Minutes, DateOnly First, DateOnly Last);

/// <summary>
/// What a learner's log holds of one subject, or of several that the law reads as one, between two dates: the facts that
/// stand beside a parent's sentences and open a packet on that subject.
/// </summary>
/// <param name="Days">Days with credited minutes.</param>
/// <param name="Touched">Days on which it was met in passing and had no minutes.</param>
/// <param name="First">The first day on which it was met, with minutes or in passing; null where there is none.</param>
/// <param name="Last">The last such day.</param>
/// <param name="Things">What had minutes, the longest first; of equal ones the earlier.</param>
/// <param name="Months">Minutes of each month that the days touch.</param>
public sealed record SubjectFacts(
    DayRange Asked, Minutes Minutes, int Days, int Touched, DateOnly? First, DateOnly? Last, IReadOnlyList<DoneThing> Things, IReadOnlyList<(Month Month, Minutes Minutes)> Months)
{
    /// <param name="ledger">Counted over at least the days asked for.</param>
    public static SubjectFacts Of(HoursLedger ledger, IReadOnlySet<Guid> subjects, DayRange days)
    {
        var credits = ledger.Credits.Where(c => subjects.Contains(c.SubjectId) && days.Contains(c.Date) && c.Minutes > Minutes.Zero).ToList();
        var taught = credits.Select(c => c.Date).ToHashSet();
        var touched = ledger.Touches.Where(t => subjects.Contains(t.SubjectId) && days.Contains(t.Date) && !taught.Contains(t.Date)).Select(t => t.Date).ToHashSet();
        var met = taught.Concat(touched).ToList();
        var words = ledger.Entries.ToDictionary(e => e.Id, e => e.What.Trim());
        var things = credits.GroupBy(c => words[c.EntryId], StringComparer.OrdinalIgnoreCase)
            .Select(g => new DoneThing(words[g.OrderBy(c => c.Date).First().EntryId], g.Select(c => c.Date).Distinct().Count(), g.Select(c => c.Minutes).Sum(), g.Min(c => c.Date), g.Max(c => c.Date)))
            .OrderByDescending(t => t.Minutes.Value).ThenBy(t => t.First).ThenBy(t => t.What, StringComparer.Ordinal);
        return new SubjectFacts(
            days, credits.Select(c => c.Minutes).Sum(), taught.Count, touched.Count, met.Count > 0 ? met.Min() : null, met.Count > 0 ? met.Max() : null, [.. things],
            [.. Month.Through(days).Select(m => (m, credits.Where(c => m.Contains(c.Date)).Select(c => c.Minutes).Sum()))]);
    }
}
