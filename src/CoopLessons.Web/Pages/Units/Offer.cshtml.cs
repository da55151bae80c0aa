using CoopLessons.Core.Sharing;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Offers some of what a family changed in a shared unit back to its author.</summary>
public sealed class OfferModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    public Offering Offering { get; private set; } = null!;

    public Guid OfferId { get; private set; } = Guid.CreateVersion7();

    public IReadOnlyCollection<string> Chosen { get; private set; } = [];

    public string Why { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(Guid id) => await FindAsync(id) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(Guid id, Guid offerId, List<string> chosen, string? why)
    {
        ModelState.Clear();
        (OfferId, Chosen, Why) = (offerId == Guid.Empty ? OfferId : offerId, chosen, why?.Trim().ReplaceLineEndings("\n") ?? "");
        if (!await FindAsync(id))
            return NotFound();
        var revision = Offering.Revision;
        var there = $"/coop/{revision.CoopId}/units/{revision.SharedUnitId}";
        if (await Db.OfferedChanges.AnyAsync(o => o.CoopId == revision.CoopId && o.Id == OfferId, Ct))
            return Redirect(there);
        var spots = Offering.Change.Differences.Select(d => d.Spot).Where(s => Chosen.Contains(Collided.KeyOf(s))).ToList();
        if (spots.Count == 0)
            ModelState.AddModelError("chosen", "Tick what you offer.");
        if (Why.Length is 0 or > OfferedChange.LongestWhy)
            ModelState.AddModelError("why", Why.Length == 0 ? "Say why, so that the author can weigh it." : $"At most {OfferedChange.LongestWhy} signs.");
        var offered = spots.Count == 0 ? null : Offering.With(spots);
        if (offered is { Collisions.Count: > 0 })
            ModelState.AddModelError("chosen", $"This cannot go by itself: {SharingWords.Of(offered.Collisions[0])}. Tick what belongs to it, too.");
        if (!ModelState.IsValid)
            return Again();
        var mine = await Db.CoopFamilies.SingleAsync(f => f.CoopId == revision.CoopId && f.FamilyId == Family.Id, Ct);
        Db.OfferedChanges.Add(new OfferedChange(revision, mine, OfferId, PublishedBundle.Of(offered!.Merged), Why, Now));
        if (!await SaveNewAsync())
            return await FindAsync(id) ? AgainAfterOthers() : NotFound();
        Say($"Offered to {revision.Author}, who takes it or not.");
        return Redirect(there);
    }

    private async Task<bool> FindAsync(Guid id)
    {
        var found = await Offering.FindAsync(Db, id, Ct);
        Offering = found!;
        return found is not null;
    }
}
