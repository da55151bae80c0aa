using CoopLessons.Data;
using CoopLessons.Data.Log.Sheets;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Bringing;

/// <summary>A page about one brought file.</summary>
public abstract class SheetPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public SheetAtHand At { get; private set; } = null!;

    /// <summary>An answer where the file is not here any more: taken in, or never the family’s.</summary>
    protected async Task<IActionResult?> FindAsync(Guid sheetId)
    {
        if (await Db.BroughtSheets.SingleOrDefaultAsync(s => s.Id == sheetId, Ct) is not { } sheet)
            return await Db.LogImports.AnyAsync(i => i.Id == sheetId, Ct) ? LocalRedirect($"/log/bring/taken/{sheetId}") : NotFound();
        await ReadAsync(sheet);
        return null;
    }

    protected async Task ReadAsync(BroughtSheet sheet) => At = await SheetAtHand.LoadAsync(Db, sheet, Today, Ct);
}
