using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Law;

/// <summary>One place in full: its pathways with every figure, paper and record, where each was read and when.</summary>
public sealed class PlaceModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public Jurisdiction Place { get; private set; } = null!;

    public IActionResult OnGet(string code)
    {
        // Addresses are written in small letters.
        if (Catalog.Of50AndDc[code.ToUpperInvariant()] is not { } place)
            return NotFound();
        Place = place;
        return Page();
    }
}
