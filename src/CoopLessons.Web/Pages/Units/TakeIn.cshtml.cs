using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Units;
using CoopLessons.Web.Files;
using CoopLessons.Web.Printing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Takes in a unit from a bundle file or a pack: whole, or not at all with every fault named.</summary>
[LargestUpload(PackFile.MostBytes)]
[RequestSizeLimit(PackFile.MostBytes + LargestUploadAttribute.Around)]
public sealed class TakeInModel(AppDb db, TimeProvider clock, BroughtPack packs) : UnitsPage(db, clock)
{
    [BindProperty]
    public Guid UnitId { get; set; }

    [BindProperty]
    public IFormFile? Bundle { get; set; }

    public IReadOnlyList<BundleFault> Faults { get; private set; } = [];

    public IActionResult OnGet()
    {
        UnitId = Guid.CreateVersion7();
        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        ModelState.AddModelError(nameof(Bundle), $"A pack has at most {PackFile.MostBytes / 1_000_000} megabytes.");
        return Again(StatusCodes.Status413PayloadTooLarge);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (UnitId == Guid.Empty)
            ModelState.AddModelError("", "The page is incomplete. Open it again and choose the file once more.");
        if (ModelState.IsValid && await IsPackAsync())
            return await TakePackAsync();
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

    private async Task<bool> IsPackAsync()
    {
        if (Bundle is null)
            return false;
        await using var file = Bundle.OpenReadStream();
        var head = new byte[4];
        return await file.ReadAtLeastAsync(head, head.Length, throwOnEndOfStream: false, Ct) == head.Length && head.AsSpan().SequenceEqual("PK\u0003\u0004"u8);
    }

    private async Task<IActionResult> TakePackAsync()
    {
        await using var file = Bundle!.OpenReadStream();
        var answer = await packs.TakeAsync(file, UnitId, await AuthorAsync(), Now, Ct);
        Faults = answer.Faults;
        if (answer.Fault is { } fault)
        {
            ModelState.AddModelError(nameof(Bundle), fault);
            return Again(answer.Status);
        }

        Say(answer.IsNewer ? "You have this unit already. Look at what is new before it comes in." : "The unit is on your shelf. Choose its subjects, then take it.");
        return RedirectToPage(answer.IsNewer ? "Newer" : "Show", new { id = answer.UnitId });
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
