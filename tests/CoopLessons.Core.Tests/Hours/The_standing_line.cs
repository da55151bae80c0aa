using CoopLessons.Core.Hours;
using CsCheck;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

public class The_standing_line
{
    [Fact]
    public void Counts_the_week_from_Monday_to_Sunday_and_the_year_in_full()
    {
        var ledger = WrensLedger(
            Entry(1, new DateOnly(2026, 11, 1), 10),
            Entry(2, new DateOnly(2026, 11, 2), 20),
            Entry(3, new DateOnly(2026, 11, 8), 40),
            Entry(4, new DateOnly(2026, 11, 9), 80));

        Assert.Equal(new WeekTotals(new Minutes(150), new Minutes(60)), WeekTotals.Of(ledger, AlderLog.Year, Tuesday));
    }

    [Fact]
    public void Counts_a_week_across_New_Year_as_one()
    {
        var ledger = WrensLedger(Entry(1, new DateOnly(2026, 12, 31), 25), Entry(2, new DateOnly(2027, 1, 3), 35));

        Assert.Equal(60, WeekTotals.Of(ledger, AlderLog.Year, new DateOnly(2027, 1, 1)).ThisWeek.Value);
    }

    [Fact]
    public void Never_shows_more_for_the_week_than_for_the_year() =>
        Gen.Select(AnyLog.Logs, Gen.Int[-20, 60]).Sample((log, day) =>
        {
            var totals = WeekTotals.Of(WrensLedger(log), AlderLog.Year, new DateOnly(2026, 12, 1).AddDays(day));
            return totals.ThisWeek <= totals.YearSoFar;
        });
}
