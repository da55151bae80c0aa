using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CsCheck;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

public class A_report_of_hours
{
    private static readonly ReportHeading Heading =
        new("Alder", "Wren", "2026–27", "We count what is done with a grown-up or written down.", new DateOnly(2027, 6, 1));

    private static HoursReport Report(IEnumerable<LoggedEntry> log, DayRange? period = null)
    {
        var ledger = HoursLedger.Of(Wren, Subjects, period ?? Year, log);
        return HoursReport.Of(ledger, ledger.WithoutMarks(60), Heading);
    }

    [Fact]
    public void Runs_over_every_month_of_the_period_from_the_first_to_the_last()
    {
        var report = Report([], new DayRange(new DateOnly(2026, 11, 30), new DateOnly(2027, 1, 1)));

        Assert.Equal(["2026-11", "2026-12", "2027-01"], report.Months.Select(m => m.Month.Iso));
    }

    [Fact]
    public void Lists_subjects_in_the_familys_order_and_leaves_out_those_not_met()
    {
        var report = Report([Entry(1, Tuesday, 60, Science, touches: [Reading.Id]), Entry(2, Tuesday, 30, Arithmetic)]);

        Assert.Equal(["Reading", "Arithmetic", "Science"], report.Subjects.Select(s => s.Subject));
    }

    [Fact]
    public void Shows_a_subject_that_was_only_touched_with_broad_days_and_no_minutes()
    {
        var art = Report([Entry(1, Tuesday, 60, Science, touches: [Art.Id])]).Subjects.Single(s => s.Subject == "Art");

        Assert.Equal((0, 0, 1), (art.Total.Value, art.StrictDays, art.BroadDays));
    }

    [Fact]
    public void Holds_the_same_figures_as_the_ledger_it_came_from()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, split: [1.Of(Science), 1.Of(Art)]),
            Entry(2, Tuesday.AddDays(1), 59, Reading, place: Place.Coop),
            Entry(3, Tuesday.AddDays(30), 970, Science));

        var report = HoursReport.Of(ledger, ledger.WithoutMarks(60), Heading);

        Assert.Equal(1089, report.Total.Value);
        Assert.Equal((2, 3, 60), (report.SchoolDays, report.SchoolDaysBroad, report.MinimumDay.Value));
        Assert.Equal([(Place.Home, 1030), (Place.AnotherHome, 0), (Place.Coop, 59), (Place.Elsewhere, 0)], report.Places.Select(p => (p.Place, p.Total.Value)));
        Assert.Equal(3, report.Entries);
        Assert.Equal(["3 December 2026 holds 16:10 hours. Is that right?"], report.Questions);
        Assert.Equal(LogFingerprint.Of(ledger), report.Fingerprint);
        Assert.Equal((Heading, Year), (report.Heading, report.Period));
    }

    [Fact]
    public void Adds_up_along_its_rows_along_its_columns_and_over_its_places() =>
        AnyLog.Logs.Sample(log =>
        {
            var report = Report(log);
            return report.Subjects.All(s => s.ByMonth.Sum() == s.Total)
                && report.Months.Select((m, i) => report.Subjects.Sum(s => s.ByMonth[i].Value) == m.Total.Value).All(same => same)
                && report.Months.Select(m => m.Total).Sum() == report.Total
                && report.Places.Select(p => p.Total).Sum() == report.Total
                && report.Months.Sum(m => m.SchoolDays) == report.SchoolDays;
        });
}
