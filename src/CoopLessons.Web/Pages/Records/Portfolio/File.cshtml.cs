using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Files;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A learner's portfolio as a file: the short one as it stands now, the full one as it was made.</summary>
public sealed class PortfolioFileModel(AppDb db, TimeProvider clock, FileShelf shelf, PicturePaper maker, FullPortfolios made) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid learnerId, Guid yearId, string size) => size switch
    {
        "short" => await ShortAsync(learnerId, yearId),
        "full" => await FullAsync(learnerId, yearId),
        _ => NotFound(),
    };

    private async Task<IActionResult> ShortAsync(Guid learnerId, Guid yearId)
    {
        if (await PortfolioAtHand.LoadAsync(Db, shelf, Family.Id, learnerId, yearId, full: false, Today, Ct) is not { } portfolio)
            return NotFound();
        return await PaperAnswer.OfAsync(
            this, maker, Family.Id, portfolio.Shown, (files, ct) => PortfolioPdf.Write(portfolio.Papers, files, ct), portfolio.Named, Back(learnerId, yearId), Say, paper => portfolio.GiveOutAsync(Db, paper, Ct), Ct);
    }

    private async Task<IActionResult> FullAsync(Guid learnerId, Guid yearId)
    {
        var learner = await Db.Learners.AsNoTracking().Where(l => l.Id == learnerId).Select(l => l.Name).SingleOrDefaultAsync(Ct);
        var year = await Db.SchoolYears.AsNoTracking().Where(y => y.Id == yearId).Select(y => y.Name).SingleOrDefaultAsync(Ct);
        if (learner is null || year is null)
            return NotFound();
        if (made.Find([Family.Id, learnerId, yearId], Now) is not { } file)
        {
            Say("The full portfolio is to be made first.");
            return LocalRedirect(Back(learnerId, yearId));
        }

        var name = PortfolioAtHand.Name(full: true, learner, year);
        Response.Headers.ContentDisposition = name.Disposition.ToString();
        return new PhysicalFileResult(file.Path, name.ContentType) { EnableRangeProcessing = true };
    }

    private string Back(Guid learnerId, Guid yearId) => Url.Page("/Records/Portfolio/Index", new { learner = learnerId, year = yearId })!;
}
