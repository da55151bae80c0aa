using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What a family has of one subject of a learner in some days of a school year.</summary>
/// <param name="Choice">What the family decided of it for the year's portfolio.</param>
/// <param name="Log">The entries that have minutes in it, those days alone; none of a matter within other subjects.</param>
public sealed record SubjectAskedFor(SubjectEvidence Evidence, SubjectChoice Choice, IReadOnlyList<(Guid Id, DateOnly Date, string What, Minutes Minutes)> Log)
{
    public static async Task<SubjectAskedFor> LoadAsync(AppDb db, LearnerYear log, LearnerStanding standing, SubjectAsked subject, DayRange days, CancellationToken ct)
    {
        var (learner, year) = (log.Learner.Id, standing.Law.Year.Id);
        var choice = (await db.Portfolios.AsNoTracking().SingleOrDefaultAsync(p => p.LearnerId == learner && p.SchoolYearId == year, ct) ?? new Portfolio(learner, year)).Of(subject.Key);
        var evidence = SubjectEvidence.Of(standing, log.Ledger, subject, days, await SubjectEvidence.PiecesOfAsync(db, learner, days, ct));
        if (subject.Topic)
        {
            // What the family chose to show of it is there.
            evidence = evidence with
            {
                Pieces = [.. evidence.Pieces.Where(p => choice.Samples?.Contains(p.Id) == true)],
                Missing = [.. evidence.Missing, NarrativeFacts.NotToldApart(subject.ReadAs)],
            };
        }

        var minutes = log.Ledger.ByEntry(c => Counts(c, subject, days));
        return new SubjectAskedFor(evidence, choice, [.. log.Ledger.Entries.Where(e => minutes.ContainsKey(e.Id)).Select(e => (e.Id, e.Date, e.What, minutes[e.Id]))]);
    }

    /// <summary>What the log says of a whole subject it does not say of a matter in it.</summary>
    public static bool Counts(Credit credit, SubjectAsked subject, DayRange days) =>
        !subject.Topic && days.Contains(credit.Date) && subject.Family.Contains(credit.SubjectId);

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
