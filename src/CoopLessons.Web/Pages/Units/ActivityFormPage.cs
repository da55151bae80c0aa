using System.Globalization;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The form of an activity, new or not, with lists that grow on request.</summary>
public abstract class ActivityFormPage(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    public const int BlankRows = 2;
    private const int MostActivities = 400;
    private const int MostUnitSubjects = 30;

    [BindProperty]
    public ActivityInput Input { get; set; } = new();

    public Unit Unit { get; private set; } = null!;
    public abstract Activity? Activity { get; }

    /// <summary>Names of the subjects that the form asks about.</summary>
    public IReadOnlyDictionary<Guid, string> SubjectNames { get; private set; } = new Dictionary<Guid, string>();

    /// <summary>One list of the form with more blank rows; everything typed stays, right or wrong.</summary>
    public async Task<IActionResult> OnPostRowsAsync(Guid id, Guid? activityId, string? more)
    {
        if (!await FindAsync(id, activityId) || !Grow(more))
            return NotFound();
        foreach (var entry in ModelState.Values)
        {
            entry.Errors.Clear();
            entry.ValidationState = ModelValidationState.Skipped;
        }

        return Request.IsHtmx() ? Fragment($"_{more}", this) : Page();
    }

    /// <summary>Loads the unit and, where one is named, its activity; false where the family has none such.</summary>
    protected virtual async Task<bool> FindAsync(Guid id, Guid? activityId)
    {
        if (await UnitAsync(id) is not { } unit)
            return false;
        Unit = unit;
        var subjects = await SubjectsAsync();
        var asked = Input.Subjects.Select(s => s.SubjectId).ToList();
        if (asked.Distinct().Count() != asked.Count || asked.Except(subjects.Select(s => s.Id)).Any())
            return false;
        var used = unit.Activities.FirstOrDefault(a => a.Id == activityId)?.Details.SubjectIds ?? [];
        SubjectNames = subjects.Where(s => !s.Retired || used.Contains(s.Id) || asked.Contains(s.Id)).ToDictionary(s => s.Id, s => s.Name);
        // A form that came without its subject lines gets them, so that its faults can be shown.
        if (asked.Count == 0)
            ShowSubjects(ActivityDetails.Empty);
        return true;
    }

    /// <summary>Reads the form; null where it has faults, each beside its field.</summary>
    protected (ActivityFacts Facts, ActivityDetails Details)? Read()
    {
        var reading = new ActivityReading(Input, ModelState);
        var others = Unit.Activities.Where(a => a != Activity).ToList();
        var facts = reading.Facts(Unit.Weeks, week => Math.Min(999, 1 + others.Where(a => a.Week == week).Select(a => a.Order).DefaultIfEmpty(0).Max()));
        var details = reading.Details();
        CheckOrder(others);
        if (Activity is null && others.Count >= MostActivities)
            ModelState.AddModelError("", $"A unit holds at most {MostActivities} activities.");
        if (Unit.Subjects.Select(s => s.SubjectId).Union(details.SubjectIds).Count() > MostUnitSubjects)
            ModelState.AddModelError("Input.Subjects", $"A unit holds at most {MostUnitSubjects} subjects.");
        return ModelState.IsValid ? (facts, details) : null;
    }

    /// <summary>A line for each subject: the activity's own first, as it lists them, then the family's others.</summary>
    protected void ShowSubjects(ActivityDetails details)
    {
        var own = details.Subjects.Select(s => new ActivityInput.SubjectRow { SubjectId = s.SubjectId, Weight = s.Weight == 0 ? null : s.Weight, Touched = s.Weight == 0 });
        var others = SubjectNames.Keys.Except(details.SubjectIds).Select(id => new ActivityInput.SubjectRow { SubjectId = id });
        Input.Subjects = [.. own, .. others];
    }

    protected void AddBlankRows()
    {
        foreach (var list in new[] { "Variants", "Supplies", "Printables", "Books", "Hazards", "Ingredients", "Ahead" })
            Grow(list);
    }

    protected static string Number(decimal quantity) => quantity.ToString("0.############################", CultureInfo.InvariantCulture);

    /// <summary>The unit's other activities, in its order: what can come first.</summary>
    public IEnumerable<Activity> Others => Unit.Activities.Where(a => a != Activity).OrderBy(a => a.Week).ThenBy(a => a.Order).ThenBy(a => a.Code, StringComparer.Ordinal);

    private void CheckOrder(List<Activity> others)
    {
        if (Input.After.Count > ActivityInput.MostAfter)
            ModelState.AddModelError("Input.After", $"At most {ActivityInput.MostAfter} activities can come first.");
        if (Input.After.Except(others.Select(a => a.Code), StringComparer.Ordinal).Any())
            ModelState.AddModelError("Input.After", "Choose from the unit's other activities.");
        // A new one has no code yet; nothing comes after it.
        else if (Activity is { } own && ComesAfter.Circles([(own.Code, Input.After), .. others.Select(a => (a.Code, a.Details.After))]).Contains(own.Code))
            ModelState.AddModelError("Input.After", "One of these comes after this activity itself. Take it out here, or there.");
    }

    private bool Grow(string? list)
    {
        switch (list)
        {
            case "Variants":
                More(Input.Variants, 6);
                return true;
            case "Supplies":
                More(Input.Supplies, 40);
                return true;
            case "Printables":
                More(Input.Printables, 10);
                return true;
            case "Books":
                More(Input.Books, 10);
                return true;
            case "Hazards":
                More(Input.Hazards, 10);
                return true;
            case "Ingredients":
                More(Input.Ingredients, 40);
                return true;
            case "Ahead":
                More(Input.Ahead, 8);
                return true;
            default:
                return false;
        }
    }

    private static void More<T>(List<T> rows, int most)
        where T : new()
    {
        for (var i = 0; i < BlankRows && rows.Count < most; i++)
            rows.Add(new T());
    }
}
