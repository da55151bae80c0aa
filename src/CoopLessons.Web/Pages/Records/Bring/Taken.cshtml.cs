using CoopLessons.Data;
using CoopLessons.Data.Log.Sheets;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Bringing;

/// <summary>What came in with one file, and the way back.</summary>
public sealed class TakenModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public LogImport Import { get; private set; } = null!;
    public IReadOnlyList<StayedEntry> Changed { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid importId)
    {
        if (await Db.LogImports.SingleOrDefaultAsync(i => i.Id == importId, Ct) is not { } import)
            return NotFound();
        (Import, Changed) = (import, await SheetTaking.ChangedAsync(Db, import, Ct));
        return Page();
    }

    public async Task<IActionResult> OnPostUndoAsync(Guid importId)
    {
        if (await Db.LogImports.SingleOrDefaultAsync(i => i.Id == importId, Ct) is not { } import)
            return NotFound();
        if (import.UndoneAt is null)
        {
            try
            {
                var stayed = await SheetTaking.UndoAsync(Db, import, await AuthorAsync(), Now, Ct);
                Say(stayed.Count == 0 ? "All entries of this file are taken out of the log." : $"The entries of this file are taken out, but for {BringWords.Entries(stayed.Count)} that somebody had changed.");
            }
            catch (DbUpdateException)
            {
                Db.ChangeTracker.Clear();
                // As it stands: the one at hand says already that it was undone.
                Import = await Db.LogImports.SingleAsync(i => i.Id == importId, Ct);
                Changed = await SheetTaking.ChangedAsync(Db, Import, Ct);
                ModelState.AddModelError("", "Somebody changed an entry at the same moment. Nothing was taken out; send it once more.");
                return Again(StatusCodes.Status409Conflict);
            }
        }

        return LocalRedirect($"/log/bring/taken/{importId}");
    }
}
