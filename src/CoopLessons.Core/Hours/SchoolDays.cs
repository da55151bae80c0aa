using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Hours;

/// <summary>Why a date is or is not a school day.</summary>
public enum DayStanding
{
    /// <summary>Nothing was logged and nothing was marked.</summary>
    Blank,

    /// <summary>Something was logged, but less than the minimum day.</summary>
    Under,

    /// <summary>The credited minutes reach the minimum day.</summary>
    Reached,

    /// <summary>Marked as a school day by hand.</summary>
    MarkedYes,

    /// <summary>Marked as no school day by hand.</summary>
    MarkedNo,
}

/// <summary>A date with its credited minutes and its standing.</summary>
public sealed record SchoolDay(DateOnly Date, Minutes Minutes, DayStanding Standing)
{
    public bool Counts => Standing is DayStanding.Reached or DayStanding.MarkedYes;
}

/// <summary>
/// One learner's school days. A date counts when it is marked so by hand, or when the credited minutes reach the
/// minimum day; a hand-made mark wins over the computed standing, both ways.
/// </summary>
public sealed class SchoolDays
{
    private readonly Dictionary<DateOnly, SchoolDay> _days;

    private SchoolDays(Minutes minimum, Dictionary<DateOnly, SchoolDay> days)
    {
        Minimum = minimum;
        _days = days;
    }

    /// <param name="minimum">Minutes from which a day counts; at least 1. Reaching it exactly counts.</param>
    /// <param name="marks">Hand-made marks; true for a school day. Marks outside the ledger's period are passed over.</param>
    /// <exception cref="ArgumentOutOfRangeException">A minimum of zero.</exception>
    public static SchoolDays Of(HoursLedger ledger, Minutes minimum, IReadOnlyDictionary<DateOnly, bool> marks)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minimum.Value, 1, nameof(minimum));
        var minutes = ledger.ByDate();
        var dates = minutes.Keys.Concat(marks.Keys.Where(ledger.Period.Contains)).Distinct();
        var days = new Dictionary<DateOnly, SchoolDay>();
        foreach (var date in dates)
        {
            var credited = minutes.GetValueOrDefault(date);
            var standing = marks.TryGetValue(date, out var counts)
                ? counts ? DayStanding.MarkedYes : DayStanding.MarkedNo
                : credited >= minimum ? DayStanding.Reached : DayStanding.Under;
            days[date] = new SchoolDay(date, credited, standing);
        }

        return new SchoolDays(minimum, days);
    }

    public Minutes Minimum { get; }

    /// <summary>School days by the rule: marked, or reaching the minimum.</summary>
    public int Strict => _days.Values.Count(d => d.Counts);

    /// <summary>
    /// School days read broadly: also days on which something was logged without reaching the minimum.
    /// A day marked as no school day stays out.
    /// </summary>
    public int Broad => _days.Values.Count(d => d.Counts || d.Standing == DayStanding.Under);

    /// <summary>The dates that count, in no order.</summary>
    public IEnumerable<DateOnly> Counted => _days.Values.Where(d => d.Counts).Select(d => d.Date);

    public int StrictIn(Month month) => _days.Values.Count(d => d.Counts && month.Contains(d.Date));

    /// <summary>The standing of any date, blank where nothing is known of it.</summary>
    public SchoolDay this[DateOnly date] => _days.TryGetValue(date, out var day) ? day : new SchoolDay(date, Minutes.Zero, DayStanding.Blank);
}
