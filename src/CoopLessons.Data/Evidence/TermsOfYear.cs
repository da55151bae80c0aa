using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;

namespace CoopLessons.Data.Evidence;

/// <summary>The reports on terms that a learner's year asks for.</summary>
public static class TermsOfYear
{
    /// <summary>What a report holds where the law does not say (common practice, no source).</summary>
    public static readonly IReadOnlyList<ReportPart> UsualParts = [ReportPart.Hours, ReportPart.Attendance, ReportPart.Progress];

    /// <summary>One for each report that the family itself owes and of which the law says what it holds, or that falls due by terms; in order of their days.</summary>
    public static IReadOnlyList<(TermAsked Asked, DatedDuty Dated)> Of(LawOfLearner law) =>
        [.. LearnerDuty.Of(law).Select(d => d.Dated).Where(d => d.Duty is { Kind: DutyKind.Report, ByOthers: false } && (d.Duty.Report is not null || d.Duty.Due is InTerms))
            .Select(d => (Asked: Asked(d, law.Year), Dated: d)).OrderBy(d => d.Asked.Days.First).ThenBy(d => d.Asked.Days.Last)];

    /// <summary>A report of the family's own on one of even parts of the year.</summary>
    /// <param name="number">From 1.</param>
    /// <returns>Null where there is no such part.</returns>
    public static TermAsked? Own(SchoolYear year, int number, int of)
    {
        var parts = of is 1 or 2 or 3 or 4 ? year.Days.EvenParts(of) : [];
        return number < 1 || number > parts.Count ? null : new TermAsked("", Title(number, of), parts[number - 1], UsualParts, null, "");
    }

    private static TermAsked Asked(DatedDuty dated, SchoolYear year)
    {
        var of = dated.Duty.Due is InTerms ? dated.Of : 1;
        var parts = year.Days.EvenParts(of);
        return new TermAsked(
            dated.Key, dated.Duty.Due is InTerms ? Title(dated.Number, of) : "Annual report", parts[Math.Min(dated.Number, parts.Count) - 1],
            dated.Duty.Report?.Parts ?? UsualParts, dated.Duty.Report?.ExplainUnder, dated.Duty.Source.Cite);
    }

    private static string Title(int number, int of) => of switch
    {
        1 => "Annual report",
        2 => string.Create(CultureInfo.InvariantCulture, $"Half-yearly report {number} of 2"),
        4 => string.Create(CultureInfo.InvariantCulture, $"Quarterly report {number} of 4"),
        _ => string.Create(CultureInfo.InvariantCulture, $"Term report {number} of {of}"),
    };
}
