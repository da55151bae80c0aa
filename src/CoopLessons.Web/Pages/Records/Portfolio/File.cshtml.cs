using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Sealing;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Files;
using CoopLessons.Web.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A learner's portfolio as a file: short or full.</summary>
public sealed class PortfolioFileModel(AppDb db, TimeProvider clock, FileShelf shelf, PicturePaper maker) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid learnerId, Guid yearId, string size)
    {
        if (size is not ("short" or "full") || await OnePortfolio.FindAsync(Db, learnerId, yearId, Today, Ct) is not { } portfolio)
            return NotFound();
        var pieces = portfolio.Subjects.SelectMany(s => s.Evidence.Pieces).Concat(portfolio.Pairs.SelectMany(p => new[] { p.Early, p.Late })).DistinctBy(p => p.Id).ToList();
        var files = await PortfolioYear.FilesAsync(Db, pieces, Ct);
        var held = await shelf.HeldAsync(Family.Id, files.Keys, Ct);
        var paper = await Db.PrintHabits.AsNoTracking().Select(h => (PaperSize?)h.Paper).SingleOrDefaultAsync(Ct) ?? PrintHabits.Usual.Paper;
        var reading = await ListOfReading.LoadAsync(Db, portfolio.Log.Learner, portfolio.Year, Today, Ct);
        var seal = await Db.SealMarkAsync(yearId, learnerId, Ct);
        var papers = PortfolioOnPaper.Of(portfolio, reading, files, held, paper, size == "full") with { Seal = seal };
        var shown = papers.Subjects.SelectMany(s => s.Samples).Concat(papers.Pairs.SelectMany(p => new[] { p.Early, p.Late })).Select(s => s.Hash).OfType<string>().Distinct().ToList();
        return await PaperAnswer.OfAsync(
            this, maker, Family.Id, shown.Select(h => files[h]), (to, ct) => PortfolioPdf.Write(papers, to, ct),
            HoursFile.Named(size == "full" ? "portfolio-full" : "portfolio", portfolio.Log.Learner.Name, portfolio.Year.Name, "pdf", "application/pdf", []),
            Url.Page("/Records/Portfolio/Index", new { learner = learnerId, year = yearId })!, Say,
            made => Db.GiveOutAsync(yearId, learnerId, "portfolio", seal, made, Today, Ct), Ct);
    }
}

/// <summary>Answers with a paper that has pictures, or leads back to the page that asked with a sentence why not.</summary>
internal static class PaperAnswer
{
    /// <param name="back">The page that asked.</param>
    /// <param name="given">Told the file before it is given.</param>
    public static async Task<IActionResult> OfAsync(
        FamilyPage page, PicturePaper maker, Guid family, IEnumerable<StoredFile> files, Action<PaperFiles, CancellationToken> write, HoursFile name, string back, Action<string> say, Func<Stream, Task> given, CancellationToken ct)
    {
        var kinds = files.ToDictionary(f => f.Hash, f => UploadWords.Taken(f.Kind), StringComparer.Ordinal);
        try
        {
            // One that went from the shelf meanwhile is found missing where it is to be drawn.
            var made = await maker.MakeAsync(
                family, kinds.Keys, (paths, to, aside, ending) => write(new PaperFiles(to, aside, kinds.ToDictionary(k => k.Key, k => new PageSource(paths.GetValueOrDefault(k.Key, k.Key), k.Value), StringComparer.Ordinal)), ending), ct);
            if (made is not null)
            {
                await given(made);
                page.Response.Headers.ContentDisposition = name.Disposition.ToString();
                return page.File(made, name.ContentType);
            }
        }
        catch (SourceUnreadableException)
        {
            say("A photo or file of these samples cannot be read any more. Look through the samples for one that does not show, and take it out.");
            return page.LocalRedirect(back);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            say("Making this paper took too long, so it was stopped. Show fewer samples.");
            return page.LocalRedirect(back);
        }

        page.Response.Headers.RetryAfter = "60";
        say("Another paper or file is being worked on just now. Try again in a minute.");
        return page.LocalRedirect(back);
    }
}
