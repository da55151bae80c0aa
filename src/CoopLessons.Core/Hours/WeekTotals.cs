using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Hours;

/// <summary>The two figures of the standing line: the year so far and the week at hand.</summary>
public sealed record WeekTotals(Minutes YearSoFar, Minutes ThisWeek)
{
    /// <param name="ledger">Counted over the year at least.</param>
    public static WeekTotals Of(HoursLedger ledger, DayRange year, DateOnly today)
    {
        var week = Week.Of(today).Days;
        return new WeekTotals(ledger.SumOf(c => year.Contains(c.Date)), ledger.SumOf(c => week.Contains(c.Date) && year.Contains(c.Date)));
    }
}
