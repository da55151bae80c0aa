using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Law;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>The place first, then one of its pathways, for one child or several.</summary>
public sealed class ChooseModel(AppDb db, TimeProvider clock) : LawPage(db, clock)
{
    /// <summary>Code of the place, or “own”; the family's own state while nothing is said.</summary>
    [BindProperty(SupportsGet = true, Name = "place")]
    public string? Place { get; set; }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public Learner Learner { get; private set; } = null!;

    public IReadOnlyList<Learner> Others { get; private set; } = [];

    /// <summary>Those of the place; empty before one is chosen.</summary>
    public IReadOnlyList<KnownPathway> Pathways { get; private set; } = [];

    public string PlaceName => Pathways.Count == 0 || Place == Own ? "your own" : Pathways[0].Place;

    public IEnumerable<SelectListItem> Places =>
        [.. Catalog.Of50AndDc.All.Select(j => new SelectListItem(j.Name, j.Code)), new SelectListItem("A pathway of your own", Own)];

    public async Task<IActionResult> OnGetAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        var last = await Db.LearnerPathways.AsNoTracking().Where(p => p.LearnerId == learnerId).OrderByDescending(p => p.From).FirstOrDefaultAsync(Ct);
        Input.From = last is null ? Year?.First ?? Today : Today;
        Input.Because = last is null ? SpanReason.Begins : last.Code == CodeOf(Place ?? "") ? SpanReason.Changes : SpanReason.Moves;
        Input.Pathway = Pathways.Count == 1 ? Pathways[0].Pathway.Id : null;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId) || Input.Others.Except(Others.Select(o => o.Id)).Any())
            return NotFound();
        if (ModelState.IsValid && Pathways.All(p => p.Pathway.Id != Input.Pathway))
            ModelState.AddModelError("Input.Pathway", "Choose one of the pathways.");
        if (!ModelState.IsValid)
            return Again();
        var chosen = Pathways.Single(p => p.Pathway.Id == Input.Pathway);
        Learner[] whom = [Learner, .. Others.Where(o => Input.Others.Contains(o.Id))];
        if (!await AddAsync(chosen, whom))
            return Again();
        if (!await SaveNewAsync())
        {
            // The same form, sent in the same moment, may have been saved since.
            if (!await AddAsync(chosen, whom) || Db.ChangeTracker.HasChanges())
                return AgainAfterOthers();
        }

        Say($"{string.Join(" and ", whom.Select(l => l.Name))}: {chosen.Pathway.Name} ({chosen.Place}) from {LawWords.Of(Input.From!.Value)} on.");
        return RedirectToPage("/Family/Law/Index");
    }

    /// <summary>Adds what is not there yet; false where another pathway begins on that day, with the message.</summary>
    private async Task<bool> AddAsync(KnownPathway chosen, IReadOnlyList<Learner> whom)
    {
        var (from, ids) = (Input.From!.Value, whom.Select(l => l.Id).ToList());
        var there = await Db.LearnerPathways.AsNoTracking().Where(p => p.From == from && ids.Contains(p.LearnerId)).ToDictionaryAsync(p => p.LearnerId, Ct);
        var ownId = chosen.Code.Length == 0 ? Guid.Parse(chosen.Pathway.Id) : (Guid?)null;
        var own = ownId is null ? null : await Db.OwnPathways.SingleOrDefaultAsync(p => p.Id == ownId, Ct);
        if (ownId is not null && own is null)
        {
            ModelState.AddModelError("Input.Pathway", "This pathway was removed a moment ago.");
            return false;
        }

        foreach (var learner in whom)
        {
            if (there.TryGetValue(learner.Id, out var row))
            {
                if ((row.Code, row.PathwayId) == (chosen.Code, chosen.Pathway.Id))
                    continue;
                ModelState.AddModelError("Input.From", $"Another pathway of {learner.Name} begins on that day. Choose another day, or take that one away first.");
                return false;
            }

            var countsFrom = chosen.Pathway.CountsFrom is null ? null : Input.CountsFrom;
            Db.Add(own is null
                ? new LearnerPathway(Guid.CreateVersion7(), learner.Id, chosen.Code, chosen.Pathway.Id, from, Input.Because!.Value, countsFrom)
                : new LearnerPathway(Guid.CreateVersion7(), learner.Id, own, from, Input.Because!.Value));
        }

        return true;
    }

    private async Task<bool> FindAsync(Guid learnerId)
    {
        var all = await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Name).ToListAsync(Ct);
        if (all.FirstOrDefault(l => l.Id == learnerId) is not { } learner)
            return false;
        (Learner, Others) = (learner, [.. all.Where(l => l.Id != learnerId && !l.SetAside)]);
        await FindYearAsync();
        if (string.IsNullOrEmpty(Place))
        {
            Place = Catalog.Of50AndDc.OfState(Family.State)?.Code;
            if (Place is null)
                return true;
        }

        if (CodeOf(Place) is { Length: > 0 } code)
        {
            if (Catalog.Of50AndDc[code] is not { } place)
                return false;
            (Place, Pathways) = (code, [.. place.Pathways.Select(p => new KnownPathway(code, place.Name, p))]);
            return true;
        }

        Place = Own;
        var known = await PathwaysAsync();
        Pathways = [.. (await Db.OwnPathways.AsNoTracking().OrderBy(p => p.Name).Select(p => p.Id).ToListAsync(Ct)).Select(id => known.Find("", id.ToString())).OfType<KnownPathway>()];
        return true;
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Choose one of the pathways.")]
        [StringLength(LearnerPathway.LongestPathwayId, ErrorMessage = "Choose one of the pathways.")]
        public string? Pathway { get; set; }

        [Required(ErrorMessage = "Give the first day.")]
        [Between1990And2199]
        public DateOnly? From { get; set; }

        [Required(ErrorMessage = "Say why it begins.")]
        [EnumDataType(typeof(SpanReason), ErrorMessage = "Say why it begins.")]
        public SpanReason? Because { get; set; }

        [Between1990And2199]
        public DateOnly? CountsFrom { get; set; }

        [MaxLength(40)]
        public List<Guid> Others { get; set; } = [];
    }
}
