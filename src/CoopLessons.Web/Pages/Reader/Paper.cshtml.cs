using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Records;
using CoopLessons.Web.Sealing;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Reader;

/// <summary>The year as its reader was given it, as a file.</summary>
public sealed class PaperModel(AppDb db, CurrentFamily current, TimeProvider clock, FileShelf shelf, PicturePaper maker) : ReaderDoor(db, current, clock, shelf)
{
    public async Task<IActionResult> OnGetAsync(string secret)
    {
        if (!await OpenAsync(secret))
            return NotFound();
        try
        {
            var made = await maker.MakeAsync(Family.Id, Pieces.Values.Select(p => Files[p.Hash]), (files, ct) => PortfolioPdf.Write(Papers, files, ct), Ct);
            if (made is not null)
            {
                await NoteAsync("the PDF");
                await Db.GiveOutAsync(Link.SchoolYearId, Link.LearnerId, "portfolio", Papers.Seal, made, Papers.Report.Heading.MadeOn, Ct);
                Response.Headers.ContentDisposition = PortfolioAtHand.Name(full: false, Papers.Report.Heading.Learner, Papers.Report.Heading.Year).Disposition.ToString();
                return File(made, "application/pdf");
            }
        }
        catch (Exception fault) when (fault is SourceUnreadableException || (fault is OperationCanceledException && !Ct.IsCancellationRequested))
        {
            // A file is broken or takes too long: the page shows the same without it.
        }

        Response.Headers.RetryAfter = "60";
        return StatusCode(StatusCodes.Status503ServiceUnavailable);
    }
}
