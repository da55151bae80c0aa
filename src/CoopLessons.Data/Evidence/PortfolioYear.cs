using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Evidence;

/// <summary>One subject of a portfolio as it stands: what the family has of it, and what of that is shown.</summary>
/// <param name="ByHand">Whether the family chose the samples.</param>
public sealed record PortfolioSubject(SubjectEvidence Evidence, IReadOnlyList<Piece> Samples, bool ByHand, string Narrative)
{
    public SubjectAsked Subject => Evidence.Subject;
}

/// <summary>Two samples side by side.</summary>
/// <param name="Kept">Whether the family took the pair; else it is a proposal.</param>
public sealed record PairOfPieces(Piece Early, Piece Late, string Skill, string Words, bool Kept);

/// <summary>A learner's portfolio of a year as it stands in the database: the only way by which pages and papers come to it.</summary>
/// <param name="Choices">As the family decided; one that is not saved yet where it decided nothing.</param>
/// <param name="IsSaved">Whether it decided anything yet.</param>
/// <param name="Subjects">Those that the law asks for, then the family's own of which something is there.</param>
public sealed record PortfolioYear(
    LearnerYear Log, SchoolYear Year, LearnerStanding Standing, HoursReport Report, Portfolio Choices, bool IsSaved, IReadOnlyList<PortfolioSubject> Subjects, IReadOnlyList<PairOfPieces> Pairs)
{
    /// <param name="log">Of the whole school year.</param>
    public static async Task<PortfolioYear> LoadAsync(AppDb db, LearnerYear log, SchoolYear year, DateOnly today, CancellationToken ct)
    {
        var standing = await LearnerStanding.LoadAsync(db, log, year, today, ct);
        var saved = await db.Portfolios.SingleOrDefaultAsync(p => p.LearnerId == log.Learner.Id && p.SchoolYearId == year.Id, ct);
        var choices = saved ?? new Portfolio(log.Learner.Id, year.Id);
        var pieces = await SubjectEvidence.PiecesOfAsync(db, log.Learner.Id, year.Days, ct);
        var subjects = SubjectAsked.All(standing).Select(s => SubjectEvidence.Of(standing, log.Ledger, s, year.Days, pieces))
            .Where(e => e.Subject.ByLaw || e.Facts.Days + e.Facts.Touched + e.Pieces.Count > 0).Select(e => Shown(e, choices.Of(e.Subject.Key)));
        return new PortfolioYear(log, year, standing, log.Report(year.Name, today), choices, saved is not null, [.. subjects], PairsOf(log, choices, pieces));
    }

    /// <summary>The files of the year's pieces, by hash.</summary>
    public static async Task<IReadOnlyDictionary<string, StoredFile>> FilesAsync(AppDb db, IEnumerable<Piece> pieces, CancellationToken ct)
    {
        var hashes = pieces.Select(p => p.Hash).Distinct().ToList();
        return await db.StoredFiles.AsNoTracking().Where(f => hashes.Contains(f.Hash)).ToDictionaryAsync(f => f.Hash, StringComparer.Ordinal, ct);
    }

    private static PortfolioSubject Shown(SubjectEvidence evidence, SubjectChoice choice)
    {
        if (choice.Samples is not { } byHand)
            return new PortfolioSubject(evidence, evidence.Proposed(), ByHand: false, choice.Narrative);
        // One that was removed, or given to another subject meanwhile, is not shown.
        return new PortfolioSubject(evidence, [.. evidence.Pieces.Where(p => byHand.Contains(p.Id))], ByHand: true, choice.Narrative);
    }

    private static List<PairOfPieces> PairsOf(LearnerYear log, Portfolio choices, IReadOnlyList<Piece> pieces)
    {
        var byId = pieces.ToDictionary(p => p.Id);
        var kept = choices.Pairs.Where(p => byId.ContainsKey(p.Early) && byId.ContainsKey(p.Late))
            .Select(p => new PairOfPieces(byId[p.Early], byId[p.Late], p.Skill, p.Words, Kept: true)).OrderBy(p => p.Early.Date).ThenBy(p => p.Early.Id).ToList();
        var what = log.Ledger.Entries.ToDictionary(e => e.Id, e => e.What);
        var names = log.Ledger.Subjects.ToDictionary(s => s.Id, s => s.Name);
        var paired = kept.SelectMany(p => new[] { p.Early.Id, p.Late.Id }).ToHashSet();
        var fit = pieces.Where(p => p.SubjectId is not null && !p.FacesOut && p.Kind is PieceKind.Photo or PieceKind.Paper && !paired.Contains(p.Id) && p.Learners.Count == 1);
        var proposed = GrowthPairs.Propose(fit.Select(p => new GrowthCandidate(p.Id, p.Date, p.SubjectId!.Value, p.EntryId is { } entry ? what.GetValueOrDefault(entry, "") : "")));
        return [.. kept, .. proposed.Select(p => new PairOfPieces(byId[p.Early], byId[p.Late], p.What.Length > 0 ? p.What : names[p.SubjectId], "", Kept: false))];
    }
}
