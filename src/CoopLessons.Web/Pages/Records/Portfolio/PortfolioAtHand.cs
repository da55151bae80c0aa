using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Sealing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Sealing;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A portfolio of the family's own, with the files that it shows: all that is needed to write it.</summary>
public sealed record PortfolioAtHand(Guid FamilyId, Guid LearnerId, Guid YearId, PortfolioPapers Papers, IReadOnlyList<StoredFile> Shown)
{
    /// <summary>Null where the family has no such learner or year.</summary>
    public static async Task<PortfolioAtHand?> LoadAsync(AppDb db, FileShelf shelf, Guid family, Guid learnerId, Guid yearId, bool full, DateOnly today, CancellationToken ct)
    {
        if (await OnePortfolio.FindAsync(db, learnerId, yearId, today, ct) is not { } portfolio)
            return null;
        var pieces = portfolio.Subjects.SelectMany(s => s.Evidence.Pieces).Concat(portfolio.Pairs.SelectMany(p => new[] { p.Early, p.Late })).DistinctBy(p => p.Id).ToList();
        var files = await PortfolioYear.FilesAsync(db, pieces, ct);
        var held = await shelf.HeldAsync(family, files.Keys, ct);
        var reading = await ListOfReading.LoadAsync(db, portfolio.Log.Learner, portfolio.Year, today, ct);
        var papers = PortfolioOnPaper.Of(portfolio, reading, files, held, await db.PaperSizeAsync(ct), full) with { Seal = await db.SealMarkAsync(yearId, learnerId, ct) };
        return new PortfolioAtHand(family, learnerId, yearId, papers, [.. papers.Hashes.Select(h => files[h])]);
    }

    /// <summary>Name and type of the file, without its bytes.</summary>
    public HoursFile Named => Name(Papers.Full, Papers.Report.Heading.Learner, Papers.Report.Heading.Year);

    public static HoursFile Name(bool full, string learner, string year) => HoursFile.Named(full ? "portfolio-full" : "portfolio", learner, year, "pdf", "application/pdf", []);

    /// <summary>Notes that the paper was given out, where the year is sealed.</summary>
    public Task GiveOutAsync(AppDb db, Stream made, CancellationToken ct) => db.GiveOutAsync(YearId, LearnerId, "portfolio", Papers.Seal, made, Papers.Report.Heading.MadeOn, ct);
}
