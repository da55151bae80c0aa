using CoopLessons.Data;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Pages.Records;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>The course descriptions as a file, in the transcript's order.</summary>
public sealed class DescriptionsFileModel(AppDb db, TimeProvider clock) : HighSchoolPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var details = await DetailsAsync();
        var file = HoursFile.Named("course-descriptions", Learner.Name, Family.Name, "pdf", "application/pdf", CourseDescriptionsPdf.Write(All.Descriptions(details, Today), details.Paper));
        Response.Headers.ContentDisposition = file.Disposition.ToString();
        return File(file.Bytes, file.ContentType);
    }
}
