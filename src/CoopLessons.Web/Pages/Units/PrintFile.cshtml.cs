using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Web.Printing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Gives a file back as it is kept: to be saved, never to be shown in place.</summary>
public sealed class PrintFileModel(AppDb db, TimeProvider clock, FileShelf shelf) : UnitsPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid id, Guid activityId, Guid sourceId)
    {
        if (!await Db.Activities.AnyAsync(a => a.UnitId == id && a.Id == activityId, Ct)
            || await Db.PrintSources.AsNoTracking().SingleOrDefaultAsync(s => s.Id == sourceId && s.ActivityId == activityId, Ct) is not { } source
            || !shelf.Has(Family.Id, source.Hash))
            return NotFound();
        var kind = await Db.StoredFiles.Where(f => f.Hash == source.Hash).Select(f => f.Kind).SingleAsync(Ct);
        return PhysicalFile(shelf.PathOf(Family.Id, source.Hash), UploadWords.ContentType(kind), source.FileName);
    }
}
