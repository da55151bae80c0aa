using CoopLessons.Data;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>The hours report of a learner's year as a file.</summary>
public sealed class HoursModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid learnerId, Guid yearId, string ending)
    {
        var year = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleOrDefaultAsync(y => y.Id == yearId, Ct);
        if (year is null || !HoursFile.Endings.Contains(ending))
            return NotFound();
        var log = await LearnerYear.LoadAsync(Db, learnerId, year.Days, Ct);
        if (log is null)
            return NotFound();
        var seal = await Db.SealMarkAsync(year.Id, learnerId, Ct);
        var file = await HoursFile.WriteAsync(Db, log, year, year.Name, Today, ending, Ct, seal);
        if (ending == "pdf")
            await Db.GiveOutAsync(year.Id, learnerId, "hours", seal, file.Bytes, Today, Ct);
        Response.Headers.ContentDisposition = file.Disposition.ToString();
        return File(file.Bytes, file.ContentType);
    }
}
