using CoopLessons.Core.Evidence;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Pages.Records;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Reader;

/// <summary>
/// What somebody reads who holds a family's link and is signed in nowhere: one learner, one year, chosen parts. Whatever else
/// is asked for, and any link that does not answer any more, is not there.
/// </summary>
public abstract class ReaderDoor(AppDb db, CurrentFamily current, TimeProvider clock, FileShelf shelf) : PageModel
{
    protected AppDb Db { get; } = db;
    protected FileShelf Shelf { get; } = shelf;
    protected CancellationToken Ct => HttpContext.RequestAborted;

    public ReaderLink Link { get; private set; } = null!;
    public Family Family { get; private set; } = null!;
    public PortfolioPapers Papers { get; private set; } = null!;

    /// <summary>The pieces that may be read, by their id.</summary>
    public IReadOnlyDictionary<Guid, Piece> Pieces { get; private set; } = new Dictionary<Guid, Piece>();

    /// <summary>The files behind them, by hash.</summary>
    protected IReadOnlyDictionary<string, StoredFile> Files { get; private set; } = new Dictionary<string, StoredFile>();

    /// <summary>From here on it reads as the link's family, and only what the link was made for. False where nothing answers.</summary>
    protected async Task<bool> OpenAsync(string secret)
    {
        // Nobody who signs in elsewhere reads more here than anybody else.
        current.Leave();
        var hash = Invitation.Hash(secret);
        current.Hold(hash);
        // The family is not known before the link is read; whoever holds the secret may read this one row.
        if (await Db.ReaderLinks.IgnoreQueryFilters([AppDb.FamilyFilter]).AsNoTracking().SingleOrDefaultAsync(l => l.SecretHash == hash, Ct) is not { WithdrawnAt: null } link)
            return false;
        current.ActForProgram(link.FamilyId);
        Family = await Db.Families.AsNoTracking().SingleAsync(Ct);
        var today = Family.Today(clock);
        if (!link.Answers(today) || await OnePortfolio.FindAsync(Db, link.LearnerId, link.SchoolYearId, today, Ct) is not { } portfolio)
            return false;
        Link = link;
        var bounds = new ReaderBounds(link.Parts, link.Reader, new OtherNames(portfolio.Log.Learner.Name, await OtherChildrenAsync(link)));
        var pieces = portfolio.Subjects.SelectMany(s => s.Samples).Concat(portfolio.Pairs.Where(p => p.Kept).SelectMany(p => new[] { p.Early, p.Late })).DistinctBy(p => p.Id).ToList();
        Files = await PortfolioYear.FilesAsync(Db, pieces, Ct);
        var held = await Shelf.HeldAsync(Family.Id, Files.Keys, Ct);
        var paper = await Db.PaperSizeAsync(Ct);
        var reading = await ListOfReading.LoadAsync(Db, portfolio.Log.Learner, portfolio.Year, today, Ct);
        Papers = PortfolioOnPaper.Of(portfolio, reading, Files, held, paper, full: false, bounds) with { Seal = await Db.SealMarkAsync(link.SchoolYearId, link.LearnerId, Ct) };
        var shown = Papers.Hashes.ToHashSet(StringComparer.Ordinal);
        Pieces = pieces.Where(p => shown.Contains(p.Hash) && p.Learners.Count == 1).ToDictionary(p => p.Id);
        HttpContext.KeepAddressSecret();
        return true;
    }

    /// <summary>Writes the look down for the family.</summary>
    protected async Task NoteAsync(string what)
    {
        Db.ReaderLooks.Add(new ReaderLook(Guid.CreateVersion7(), Link.Id, what, clock.GetUtcNow().UtcDateTime));
        await Db.SaveChangesAsync(Ct);
    }

    /// <summary>The names of every other child whom the family's texts may tell of: its own, and those whom its co-ops show it.</summary>
    private async Task<List<string>> OtherChildrenAsync(ReaderLink link)
    {
        var names = await Db.Learners.AsNoTracking().Where(l => l.Id != link.LearnerId).Select(l => l.Name).ToListAsync(Ct);
        current.BelongTo(await FamilyScope.CoopsOf(Db, link.FamilyId).ToListAsync(Ct));
        names.AddRange(await Db.ShownLearners.AsNoTracking().Where(l => l.FamilyId != link.FamilyId).Select(l => l.Name).ToListAsync(Ct));
        current.BelongTo([]);
        return names;
    }
}
