using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Sealing;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>The reading list of a learner's year as a file.</summary>
public sealed class ReadingFileModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid learnerId, Guid yearId, string ending)
    {
        var learner = await Db.Learners.AsNoTracking().SingleOrDefaultAsync(l => l.Id == learnerId, Ct);
        var year = await Db.SchoolYears.AsNoTracking().SingleOrDefaultAsync(y => y.Id == yearId, Ct);
        if (learner is null || year is null || ending is not ("pdf" or "csv"))
            return NotFound();
        var list = await ListOfReading.LoadAsync(Db, learner, year, Today, Ct);
        var seal = await Db.SealMarkAsync(yearId, learnerId, Ct);
        var file = ending == "pdf"
            ? HoursFile.Named("reading", list.Learner, year.Name, ending, "application/pdf", ReadingListPdf.Write(list, seal))
            : HoursFile.Named("reading", list.Learner, year.Name, ending, "text/csv; charset=utf-8", ReadingListCsv.Write(list));
        if (ending == "pdf")
            await Db.GiveOutAsync(yearId, learnerId, "reading list", seal, file.Bytes, Today, Ct);
        Response.Headers.ContentDisposition = file.Disposition.ToString();
        return File(file.Bytes, file.ContentType);
    }
}
