using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Hours;

/// <summary>The two figures of the standing line: the year so far and the week at hand.</summary>
public sealed record WeekTotals(Minutes YearSoFar, Minutes ThisWeek)
{
    public static WeekTotals Of(HoursLedger ledger, DateOnly today)
    {
        var week = Week.Of(today).Days;
        return new WeekTotals(ledger.Total, ledger.SumOf(c => week.Contains(c.Date)));
    }
}
