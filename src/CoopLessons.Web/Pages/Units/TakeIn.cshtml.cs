using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Takes in a unit from a bundle file: whole, or not at all with every fault named.</summary>
public sealed class TakeInModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    [BindProperty]
    public Guid UnitId { get; set; }

    [BindProperty]
    public IFormFile? Bundle { get; set; }

    public IReadOnlyList<BundleFault> Faults { get; private set; } = [];

    public void OnGet() => UnitId = Guid.CreateVersion7();

    public async Task<IActionResult> OnPostAsync()
    {
        if (UnitId == Guid.Empty)
            ModelState.AddModelError("", "The page is incomplete. Open it again and choose the file once more.");
        var bundle = ModelState.IsValid ? await ReadAsync() : null;
        if (bundle is null)
            return Again();
        if (await Db.Units.AnyAsync(u => u.Id == UnitId, Ct))
            return TakenIn(bundle);
        await UnitTravel.TakeInAsync(Db, bundle, UnitId, Ct);
        if (!await SaveNewAsync() && !await Db.Units.AnyAsync(u => u.Id == UnitId, Ct))
            return AgainAfterOthers();
        return TakenIn(bundle);
    }

    private async Task<UnitBundle?> ReadAsync()
    {
        if (Bundle is not { Length: > 0 and <= BundleFile.LargestBytes } file)
        {
            ModelState.AddModelError(nameof(Bundle), Bundle switch
            {
                null => "Choose a bundle file.",
                { Length: 0 } => "This file is empty.",
                _ => $"This file is larger than {BundleFile.LargestBytes / 1_000_000} megabytes. A bundle holds one unit and no pictures.",
            });
            return null;
        }

        using var bytes = new MemoryStream((int)file.Length);
        await file.CopyToAsync(bytes, Ct);
        var reading = BundleFile.Read(bytes.ToArray());
        Faults = reading.Faults;
        if (reading.Bundle is null)
            ModelState.AddModelError(nameof(Bundle), "This file was not taken in; nothing of it was saved.");
        return reading.Bundle;
    }

    private RedirectToPageResult TakenIn(UnitBundle bundle)
    {
        Say($"“{bundle.Title}” is on your shelf. Choose its subjects, then take it.");
        return RedirectToPage("Show", new { id = UnitId });
    }
}
