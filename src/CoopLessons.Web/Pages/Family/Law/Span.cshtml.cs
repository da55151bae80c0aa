using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Law;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>One pathway of one child: its day, the goals taken from it, the figures set locally, and taking it away.</summary>
public sealed class SpanModel(AppDb db, TimeProvider clock) : LawPage(db, clock)
{
    // Named, so that the form without these fields is not read as if it had them.
    [BindProperty(Name = nameof(Input))]
    public InputModel Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public string LearnerName { get; private set; } = "";

    /// <summary>Null where the pathway is no longer there.</summary>
    public KnownPathway? Known { get; private set; }

    public LearnerPathway Row { get; private set; } = null!;

    public IReadOnlyList<Requirement> Goals { get; private set; } = [];

    public IReadOnlyList<Requirement> Local { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        Fill();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        CheckFigures();
        if (ModelState.IsValid && await Db.LearnerPathways.AnyAsync(p => p.LearnerId == Row.LearnerId && p.From == Input.From && p.Id != id, Ct))
            ModelState.AddModelError("Input.From", $"Another pathway of {LearnerName} begins on that day.");
        if (!ModelState.IsValid)
            return Again();
        Row.Move(Input.From!.Value, Known?.Pathway.CountsFrom is null ? null : Input.CountsFrom);
        Row.Explain(Input.Because!.Value);
        if (Known is not null)
            Row.Choose(Input.Goals.Intersect(Goals.Select(g => g.Id)), Input.Figures.Where(f => f.Value is not null).ToDictionary(f => f.Id, f => f.Value!.Value));
        Expect(Row, Version);
        try
        {
            if (!await SaveAsync())
                return await AgainAsync(id);
        }
        catch (DbUpdateException)
        {
            // Another pathway came to begin on that day in the same moment.
            Db.ChangeTracker.Clear();
            return await FindAsync(id) ? AgainAfterOthers("Input.From") : NotFound();
        }

        Say($"{LearnerName}: {Name} is saved.");
        return RedirectToPage("/Family/Law/Index");
    }

    public async Task<IActionResult> OnPostRemoveAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        ModelState.Clear();
        Db.Remove(Row);
        Expect(Row, Version);
        if (!await SaveAsync())
            return await AgainAsync(id, fill: true);
        Say($"{LearnerName} no longer stands under {Name} from {LawWords.Of(Row.From)} on. The log is as it was.");
        return RedirectToPage("/Family/Law/Index");
    }

    public string Name => Known?.Pathway.Name ?? "a pathway that is no longer there";

    private async Task<IActionResult> AgainAsync(Guid id, bool fill = false)
    {
        if (!await FindAsync(id))
            return NotFound();
        ModelState.Remove(nameof(Version));
        if (fill)
            Fill();
        Version = Row.Version;
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await Db.LearnerPathways.SingleOrDefaultAsync(p => p.Id == id, Ct) is not { } row)
            return false;
        Row = row;
        LearnerName = await Db.Learners.Where(l => l.Id == row.LearnerId).Select(l => l.Name).SingleAsync(Ct);
        Known = (await PathwaysAsync()).Find(row.Code, row.PathwayId);
        if (Known is not null)
            (Goals, Local) = ([.. SpanChoices.Goals(Known.Pathway)], [.. SpanChoices.Local(Known.Pathway)]);
        return true;
    }

    private void Fill()
    {
        Input = new()
        {
            From = Row.From,
            Because = Row.Because,
            CountsFrom = Row.CountsFrom,
            Goals = Row.Goals,
            Figures = [.. Local.Select(r => new FigureInput { Id = r.Id, Value = Row.Figures.TryGetValue(r.Id, out var value) ? value : null })],
        };
        Version = Row.Version;
    }

    /// <summary>One field for each local figure in the pathway's order, whatever was sent; days are whole, hours go by quarters.</summary>
    private void CheckFigures()
    {
        for (var i = 0; i < Input.Figures.Count; i++)
        {
            var (id, value) = (Input.Figures[i].Id, Input.Figures[i].Value);
            if (value is { } days && Local.Any(r => r.Id == id && r is DaysRequirement) && (days != decimal.Truncate(days) || days > 366))
                ModelState.AddModelError($"Input.Figures[{i}].Value", "Days are a whole number, at most 366.");
            else if (value is { } hours && hours % 0.25m != 0)
                ModelState.AddModelError($"Input.Figures[{i}].Value", "Hours go by quarters: 12.25, 12.5, 12.75.");
        }

        Input.Figures.RemoveAll(f => Local.All(r => r.Id != f.Id));
        Input.Figures = [.. Input.Figures.DistinctBy(f => f.Id)];
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the first day.")]
        [Between1990And2199]
        public DateOnly? From { get; set; }

        [Required(ErrorMessage = "Say why it begins.")]
        [EnumDataType(typeof(SpanReason), ErrorMessage = "Say why it begins.")]
        public SpanReason? Because { get; set; }

        [Between1990And2199]
        public DateOnly? CountsFrom { get; set; }

        [MaxLength(100)]
        public List<string> Goals { get; set; } = [];

        [MaxLength(100)]
        public List<FigureInput> Figures { get; set; } = [];
    }

    public sealed class FigureInput
    {
        [Required(ErrorMessage = "This figure is not known.")]
        [StringLength(LearnerPathway.LongestPathwayId, ErrorMessage = "This figure is not known.")]
        public string Id { get; set; } = "";

        [Range(0.25, 9000, ErrorMessage = "Give between {1} and {2}, or nothing.")]
        public decimal? Value { get; set; }
    }
}
