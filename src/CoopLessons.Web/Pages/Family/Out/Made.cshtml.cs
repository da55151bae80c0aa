using System.Globalization;
using CoopLessons.Data;
using CoopLessons.Web.Pages.Records;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Families.Out;

/// <summary>The made file, for whoever asked for it.</summary>
public sealed class MadeModel(AppDb db, TimeProvider clock, FilesOfFamilies made) : FamilyPage(db, clock)
{
    public IActionResult OnGet()
    {
        if (made.Find([Family.Id], Now) is not { } file || file.ById != Db.Current.PersonId)
            return NotFound();
        var day = Family.Local(file.MadeAt).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        Response.Headers.ContentDisposition = HoursFile.Named("family", Family.Name, day, "zip", "application/zip", []).Disposition.ToString();
        return new PhysicalFileResult(file.Path, "application/zip") { EnableRangeProcessing = true };
    }
}
