using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Schedule;

/// <summary>Weeks that something ahead takes up: a unit that was taken.</summary>
/// <param name="Weeks">1 or more, one after the other.</param>
public sealed record TakenWeeks(Week First, int Weeks)
{
    public IEnumerable<Week> All
    {
        get
        {
            var week = First;
            for (var i = 0; i < Weeks; i++, week = week.Next)
                yield return week;
        }
    }
}

/// <summary>
/// The weeks of a school year that belong to nothing yet. A week is a week of ISO 8601 and counts as owned when it has at
/// least one teaching day in the family's calendar.
/// <para>
/// Ahead, from today: owned are the weeks with a teaching day left. Committed are those in which a taken unit runs or
/// something is planned, each counted once however much lies in it; a unit's week that falls into a break or behind the
/// year's end is committed as well, since its work has to go somewhere. Slack is what is left, below zero where more is
/// committed than owned.
/// </para>
/// <para>
/// Behind: a week with nothing in the log took a week of the slack, whatever had been planned for it. The reckoning begins
/// with the first week of the year in which anything was logged, planned or taken, so that a family that comes in the
/// middle of a year has lost nothing before.
/// </para>
/// </summary>
/// <param name="OwnedAtFirst">Teaching weeks from the first week of the reckoning to the year's end.</param>
/// <param name="Owned">Of them, those ahead, this week included while it has a teaching day left.</param>
/// <param name="Committed">Ahead.</param>
/// <param name="Used">Weeks behind in which nothing was done.</param>
public sealed record Slack(int OwnedAtFirst, int Owned, int Committed, int Used)
{
    /// <summary>Now.</summary>
    public int Left => Owned - Committed;

    /// <summary>When the reckoning began.</summary>
    public int AtFirst => Left + Used;

    /// <summary>Of the weeks owned when the reckoning began, those that are or were committed.</summary>
    public int CommittedAtFirst => OwnedAtFirst - AtFirst;

    /// <summary>Teaching weeks behind.</summary>
    public int Gone => OwnedAtFirst - Owned;

    /// <summary>Whether a greater share of the slack is used than of the time is gone.</summary>
    public bool GoesFast => Used > 0 && (AtFirst <= 0 || (long)Used * OwnedAtFirst > (long)Gone * AtFirst);

    /// <summary>How many of so many weeks are usually planned: 32 of 36 (common practice, no source), rounded down.</summary>
    public static int UsuallyPlanned(int owned) => owned * 32 / 36;

    /// <param name="units">Taken units; one that begins in another school year is passed over.</param>
    /// <param name="planned">Weeks for which anything is planned.</param>
    /// <param name="logged">Weeks in which anything was logged.</param>
    public static Slack Of(
        TeachingCalendar year, DateOnly today, IReadOnlyCollection<TakenWeeks> units, IReadOnlyCollection<Week> planned, IReadOnlyCollection<Week> logged)
    {
        var owned = year.TeachingDays().Select(Week.Of).Distinct().Order(ByDate).ToList();
        var ahead = year.TeachingDays().Where(d => d >= today).Select(Week.Of).ToHashSet();
        var (first, last) = (Week.Of(year.Year.First), Week.Of(year.Year.Last));
        var now = Week.Of(today);

        // A week at the year's edge belongs to two years; work in it counts for the one in which it lies.
        var runs = units.Where(u => ByDate.Compare(u.First, first) >= 0 && ByDate.Compare(u.First, last) <= 0).SelectMany(u => u.All).ToHashSet();
        var done = logged.ToHashSet();
        var taken = runs.Concat(planned).Concat(done).ToHashSet();
        var from = owned.Where(w => taken.Contains(w) || !IsBehind(w)).Select(w => w.Monday).DefaultIfEmpty(now.Monday).Min();
        owned.RemoveAll(w => w.Monday < from);

        var committed = owned.Count(w => ahead.Contains(w) && taken.Contains(w));
        // A unit's weeks that are no teaching weeks; this week's, where its days are over, is behind.
        var homeless = runs.Count(w => ByDate.Compare(w, now) >= 0 && !ahead.Contains(w) && !owned.Contains(w));
        var used = owned.Count(w => IsBehind(w) && !done.Contains(w));
        return new Slack(owned.Count, owned.Count(w => ahead.Contains(w)), committed + homeless, used);

        bool IsBehind(Week week) => !ahead.Contains(week);
    }

    private static readonly Comparer<Week> ByDate = Comparer<Week>.Create((a, b) => a.Monday.CompareTo(b.Monday));
}
