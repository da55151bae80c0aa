using CoopLessons.Data;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Pages.Records;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>The transcript as a file of one page. Where it does not fit on one, the page that says so is shown instead.</summary>
public sealed class TranscriptFileModel(AppDb db, TimeProvider clock) : HighSchoolPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var details = await DetailsAsync();
        if (TranscriptPdf.Write(All.Transcript(details, Today), details.Paper) is not { } bytes)
            return LocalRedirect($"/records/{LearnerId}/transcript");
        var file = HoursFile.Named("transcript", Learner.Name, Family.Name, "pdf", "application/pdf", bytes);
        Response.Headers.ContentDisposition = file.Disposition.ToString();
        return File(file.Bytes, file.ContentType);
    }
}
