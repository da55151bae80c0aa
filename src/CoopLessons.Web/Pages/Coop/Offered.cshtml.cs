using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Files;
using CoopLessons.Data.Units;
using CoopLessons.Web.Pages.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A change that a family offers: the author takes all of it, some, or none.</summary>
public sealed class OfferedModel(AppDb db, TimeProvider clock, FileShelf shelf) : CoopPage(db, clock)
{
    private Unit? _unit;
    private MetSubjects? _met;
    private UnitMerge? _all;
    private UnitBundle? _mine;

    [BindProperty]
    public List<DecisionInput> Decisions { get; set; } = [];

    public SharedUnit Shared { get; private set; } = null!;
    public OfferedChange Offer { get; private set; } = null!;
    public OfferAnswer? Answer { get; private set; }
    public UnitChange Change { get; private set; } = null!;
    public IReadOnlyCollection<string> Chosen { get; private set; } = [];
    public IReadOnlyList<Collided> Collided { get; private set; } = [];
    public string Word { get; private set; } = "";

    /// <summary>The author, who still has the unit, and has not answered.</summary>
    public bool MayAnswer => Answer is null && _unit is not null;

    /// <summary>The same while nobody changed the author's unit.</summary>
    public string State { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(Guid sharedId, Guid offerId)
    {
        if (!await FindAsync(sharedId, offerId))
            return NotFound();
        Chosen = [.. Change.Differences.Select(d => Units.Collided.KeyOf(d.Spot))];
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid sharedId, Guid offerId, string? state, List<string> chosen, string? word, bool decline)
    {
        (Chosen, Word) = (chosen, word?.Trim().ReplaceLineEndings("\n") ?? "");
        if (!await FindAsync(sharedId, offerId))
            return NotFound();
        if (Answer is not null)
            return Redirect($"/coop/{CoopId}/units/{sharedId}#offers");
        if (!MayAnswer)
            return Forbid();
        if (Word.Length > OfferedChange.LongestWhy)
            ModelState.AddModelError("word", $"At most {OfferedChange.LongestWhy} signs.");
        var spots = decline ? [] : Change.Differences.Select(d => d.Spot).Where(s => Chosen.Contains(Units.Collided.KeyOf(s))).ToList();
        if (!decline && spots.Count == 0)
            ModelState.AddModelError("", "Tick what you take, or choose “Not this time”.");
        var stale = !decline && state != State;
        if (stale)
            ModelState.AddModelError("", "Your unit changed while this page was open. What you chose is still here; look once more.");
        var decisions = decline ? [] : Units.Collided.Read(_all!, Decisions, ModelState);
        if (!ModelState.IsValid)
            return Again(stale ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);

        using var turn = await shelf.TurnAsync(Ct);
        var taken = 0;
        if (!decline)
        {
            var merge = Change.Onto(_mine!, spots);
            var asked = merge.Collisions.Select(c => c.Spot).ToHashSet();
            var after = merge.Decided([.. decisions.Where(d => asked.Contains(d.Spot))]);
            taken = spots.Count - after.Collisions.Count - decisions.Count(d => d.Choice == Choice.Mine && asked.Contains(d.Spot));
            UnitTravel.Write(Db, _unit!, after.Merged, _met!);
        }

        Db.OfferAnswers.Add(new OfferAnswer(Offer, Family.Id, Math.Max(0, taken), Change.Differences.Count, Word, Now));
        if (!await SaveNewAsync())
            return await FindAsync(sharedId, offerId) ? AgainAfterOthers() : NotFound();
        await shelf.TidyAsync(Db, Now, Ct);
        Say(taken > 0 ? "It is in your unit. Publish the next revision when you are ready." : "Answered.");
        return Redirect(taken > 0 ? $"/units/{sharedId}/share" : $"/coop/{CoopId}/units/{sharedId}");
    }

    private async Task<bool> FindAsync(Guid sharedId, Guid offerId)
    {
        if (await Db.SharedUnits.AsNoTracking().SingleOrDefaultAsync(u => u.CoopId == CoopId && u.Id == sharedId, Ct) is not { } shared
            || await Db.OfferedChanges.AsNoTracking().SingleOrDefaultAsync(o => o.CoopId == CoopId && o.SharedUnitId == sharedId && o.Id == offerId, Ct) is not { } offer)
            return false;
        (Shared, Offer) = (shared, offer);
        Answer = await Db.OfferAnswers.AsNoTracking().SingleOrDefaultAsync(a => a.CoopId == CoopId && a.OfferId == offerId, Ct);
        var revision = await Db.SharedRevisions.AsNoTracking().SingleAsync(r => r.CoopId == CoopId && r.SharedUnitId == sharedId && r.Number == offer.Number, Ct);
        _unit = shared.FamilyId != Family.Id ? null : await Db.WholeUnitAsync(sharedId, Ct);
        if (_unit is null)
        {
            Change = UnitChange.Between(revision.Bundle.Content, offer.Bundle.Content);
            return true;
        }

        _met = await MetSubjects.OfAsync(Db, new Dictionary<string, Guid>(), Ct);
        Change = UnitChange.Between(_met.InOwn(revision.Bundle.Content), _met.InOwn(offer.Bundle.Content));
        _mine = UnitTravel.ToBundle(_unit, _met.Own);
        _all = Change.Onto(_mine);
        State = UnitHash.Of(_mine)[..16];
        Collided = Units.Collided.Of(_all, Decisions);
        return true;
    }
}
