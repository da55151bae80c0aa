using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Hours;

/// <summary>One subject's row: minutes a month in the order of the report's months, their sum, and its days.</summary>
/// <param name="StrictDays">Days with credited minutes.</param>
/// <param name="BroadDays">Days with credited minutes or a touch.</param>
public sealed record SubjectHours(string Subject, IReadOnlyList<Minutes> ByMonth, Minutes Total, int StrictDays, int BroadDays);

/// <summary>A month's column: all subjects together, and the school days in it.</summary>
public sealed record MonthHours(Month Month, Minutes Total, int SchoolDays);

/// <summary>Minutes at one place.</summary>
public sealed record PlaceHours(Place Place, Minutes Total);

/// <summary>Names and choices that a report prints and the ledger does not know.</summary>
/// <param name="Learner">First name or nickname.</param>
/// <param name="CountingPolicy">The family's own one line on what it counts.</param>
/// <param name="MadeOn">The day on which the report was made, in the family's time zone.</param>
public sealed record ReportHeading(string Family, string Learner, string Year, string CountingPolicy, DateOnly MadeOn);

/// <summary>
/// One learner's hours over a period, ready to be written in any form. All sums are made here, from the ledger alone:
/// subjects without minutes and touches are left out; months run from the first to the last of the period.
/// </summary>
public sealed record HoursReport(
    ReportHeading Heading,
    DayRange Period,
    IReadOnlyList<MonthHours> Months,
    IReadOnlyList<SubjectHours> Subjects,
    Minutes Total,
    int SchoolDays,
    int SchoolDaysBroad,
    Minutes MinimumDay,
    IReadOnlyList<PlaceHours> Places,
    int Entries,
    IReadOnlyList<string> Questions,
    string Fingerprint)
{
    public static HoursReport Of(HoursLedger ledger, SchoolDays days, ReportHeading heading)
    {
        var months = Month.Through(ledger.Period);
        var subjects = ledger.Subjects
            .Select(s => new SubjectHours(s.Name, [.. months.Select(m => ledger.In(s.Id, m))], ledger.In(s.Id), ledger.StrictDays(s.Id), ledger.BroadDays(s.Id)))
            .Where(s => s.BroadDays > 0);
        return new HoursReport(
            heading,
            ledger.Period,
            [.. months.Select(m => new MonthHours(m, ledger.In(m), days.StrictIn(m)))],
            [.. subjects],
            ledger.Total,
            days.Strict,
            days.Broad,
            days.Minimum,
            [.. Enum.GetValues<Place>().Select(p => new PlaceHours(p, ledger.At(p)))],
            ledger.Entries.Count,
            [.. ledger.Questions().Select(q => q.Sentence)],
            LogFingerprint.Of(ledger));
    }
}
