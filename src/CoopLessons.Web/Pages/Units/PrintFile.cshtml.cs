using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Web.Files;
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
            || await shelf.AtHandAsync(Family.Id, source.Hash, Ct) is not { } file)
            return NotFound();
        var kind = await Db.StoredFiles.Where(f => f.Hash == source.Hash).Select(f => f.Kind).SingleAsync(Ct);
        return File(file.Open(), UploadWords.ContentType(kind), source.FileName);
    }
}
