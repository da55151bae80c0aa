using CoopLessons.Data;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Changes an activity.</summary>
public sealed class EditActivityModel(AppDb db, TimeProvider clock) : ActivityFormPage(db, clock)
{
    private Activity? _activity;

    public override Activity? Activity => _activity;

    public async Task<IActionResult> OnGetAsync(Guid id, Guid activityId)
    {
        if (!await FindAsync(id, activityId))
            return NotFound();
        Input = Filled(_activity!);
        ShowSubjects(_activity!.Details);
        AddBlankRows();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id, Guid activityId)
    {
        if (!await FindAsync(id, activityId))
            return NotFound();
        if (Read() is not var (facts, details))
            return Again();

        _activity!.Describe(facts, details);
        foreach (var subjectId in details.SubjectIds)
            Unit.Hold(subjectId);
        Expect(_activity, Input.Version);
        if (!await SaveAsync())
        {
            if (!await FindAsync(id, activityId))
                return NotFound();
            // The reader has been told; saving once more is meant.
            Input.Version = _activity.Version;
            ModelState.Remove("Input.Version");
            return Again(StatusCodes.Status409Conflict);
        }

        Say("The activity is changed.");
        return RedirectToPage("ShowActivity", new { id, activityId });
    }

    protected override async Task<bool> FindAsync(Guid id, Guid? activityId)
    {
        var found = await base.FindAsync(id, activityId);
        _activity = found ? Unit.Activities.FirstOrDefault(a => a.Id == activityId) : null;
        return _activity is not null;
    }

    private static ActivityInput Filled(Activity a) => new()
    {
        Version = a.Version,
        Title = a.Title,
        Week = a.Week,
        Order = a.Order,
        Kind = a.Kind,
        Does = a.Does,
        AdultNeed = a.AdultNeed,
        HandsOnMinutes = a.HandsOnMinutes,
        WaitingMinutes = a.WaitingMinutes,
        WaitingFor = a.WaitingFor,
        After = [.. a.Details.After],
        Variants = [.. a.Details.Variants.Select(v => new ActivityInput.VariantRow { FromAge = v.FromAge, ToAge = v.ToAge, Does = v.Does })],
        Supplies = [.. a.Details.Supplies.Select(s => new ActivityInput.SupplyRow { Name = s.Name, Quantity = Number(s.Quantity), Unit = s.Unit, Per = s.Per, Note = s.Note })],
        Printables = [.. a.Details.Printables.Select(p => new ActivityInput.PrintableRow { Title = p.Title, Pages = p.Pages, Note = p.Note })],
        Books = [.. a.Details.Books.Select(b => new ActivityInput.BookRow { Title = b.Title, Author = b.Author, Use = b.Use, Isbn = b.Isbn, Note = b.Note })],
        Hazards = [.. a.Details.Hazards.Select(h => new ActivityInput.HazardRow { Kind = h.Kind, Caution = h.Caution })],
        Ingredients = [.. a.Details.Ingredients.Select(i => new ActivityInput.IngredientRow { Name = i.Name, Allergens = [.. i.Allergens] })],
        Ahead = [.. a.Details.Ahead.Select(s => new ActivityInput.AheadRow { What = s.What, Kind = s.Kind, TakesDays = s.TakesDays, KeepsDays = s.KeepsDays, TendEveryDays = s.TendEveryDays == 0 ? null : s.TendEveryDays, Note = s.Note })],
    };
}
