using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What a family has of one subject of a learner in some days of a school year.</summary>
/// <param name="Log">The entries that have minutes in it, those days alone; none of a matter within other subjects.</param>
public sealed record SubjectAskedFor(SubjectEvidence Evidence, IReadOnlyList<(Guid Id, DateOnly Date, string What, Minutes Minutes)> Log)
{
    /// <param name="told">What the family decided for the year's portfolio; null where nothing.</param>
    public static async Task<SubjectAskedFor> LoadAsync(AppDb db, LearnerYear log, LearnerStanding standing, SubjectAsked subject, DayRange days, Portfolio? told, CancellationToken ct)
    {
        var pieces = await SubjectEvidence.PiecesOfAsync(db, log.Learner.Id, days, ct);
        var evidence = SubjectEvidence.Of(standing, log.Ledger, subject, days, pieces);
        if (subject.Topic)
        {
            // What the log says of the whole subject it does not say of a matter in it; what the family chose to show of it is there.
            var chosen = told?.Of(subject.Key).Samples ?? [];
            return new SubjectAskedFor(evidence with { Pieces = [.. evidence.Pieces.Where(p => chosen.Contains(p.Id))], Missing = [.. evidence.Missing, NarrativeFacts.NotToldApart(subject.ReadAs)] }, []);
        }

        var minutes = log.Ledger.ByEntry(c => Counts(c, subject, days));
        return new SubjectAskedFor(evidence, [.. log.Ledger.Entries.Where(e => minutes.ContainsKey(e.Id)).Select(e => (e.Id, e.Date, e.What, minutes[e.Id]))]);
    }

    public static bool Counts(Credit credit, SubjectAsked subject, DayRange days) =>
        days.Contains(credit.Date) && subject.Family.Contains(credit.SubjectId);

    /// <summary>The days asked for inside a school year; the whole year where nothing is said. Null where that is no such day, or they lie wrongly.</summary>
    public static DayRange? Days(SchoolYear year, string? from, string? to)
    {
        if (Day(from, year.First) is not { } first || Day(to, year.Last) is not { } last || last < first || !year.Days.Contains(first) || !year.Days.Contains(last))
            return null;
        return new DayRange(first, last);
    }

    private static DateOnly? Day(string? text, DateOnly usual) => string.IsNullOrEmpty(text) ? usual
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
