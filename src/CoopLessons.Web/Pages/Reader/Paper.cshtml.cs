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
        var kinds = Pieces.Values.Select(p => Files[p.Hash]).DistinctBy(f => f.Hash).ToDictionary(f => f.Hash, f => UploadWords.Taken(f.Kind), StringComparer.Ordinal);
        try
        {
            var made = await maker.MakeAsync(
                Family.Id, kinds.Keys, (paths, to, aside, ct) => PortfolioPdf.Write(
                    Papers, new PaperFiles(to, aside, kinds.ToDictionary(k => k.Key, k => new PageSource(paths.GetValueOrDefault(k.Key, k.Key), k.Value), StringComparer.Ordinal)), ct), Ct);
            if (made is not null)
            {
                await NoteAsync("the PDF");
                await Db.GiveOutAsync(Link.SchoolYearId, Link.LearnerId, "portfolio", Papers.Seal, made, Papers.Report.Heading.MadeOn, Ct);
                var heading = Papers.Report.Heading;
                Response.Headers.ContentDisposition = HoursFile.Named("portfolio", heading.Learner, heading.Year, "pdf", "application/pdf", []).Disposition.ToString();
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
