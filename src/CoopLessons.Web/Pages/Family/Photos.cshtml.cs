using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Families;

/// <summary>Whether photos are kept as they came besides what is shown of them.</summary>
public sealed class PhotosModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public bool KeepOriginals { get; set; }

    [BindProperty]
    public int Version { get; set; }

    public void OnGet() => (KeepOriginals, Version) = (Family.KeepOriginals, Family.Version);

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
            return Again();
        Family.KeepPhotosAsTheyCame(KeepOriginals);
        Expect(Family, Version);
        if (!await SaveAsync())
        {
            ModelState.Remove(nameof(Version));
            Version = await Db.VersionOfFamilyAsync(Ct);
            return Again(StatusCodes.Status409Conflict);
        }

        Say(KeepOriginals ? "Photos that come from now on are kept as they came, too." : "Originals of photos are not kept from now on.");
        return RedirectToPage("/Family/Index");
    }
}
