using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>What a learner does in an activity: the version that fits their level.</summary>
/// <param name="By">The subject whose level was looked at; null where the age alone decides.</param>
public sealed record FittingVersion(Learner Learner, int Age, string? By, LevelVariant Variant);

/// <summary>One activity in full, told for each of the family's learners.</summary>
public sealed class ShowActivityModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    public Unit Unit { get; private set; } = null!;
    public Activity Activity { get; private set; } = null!;
    public ActivityLine Line { get; private set; } = null!;
    public IReadOnlyList<FittingVersion> Fitting { get; private set; } = [];

    /// <summary>The activities that come first.</summary>
    public IReadOnlyList<Activity> First => [.. Unit.Activities.Where(a => Activity.Details.After.Contains(a.Code)).OrderBy(a => a.Week).ThenBy(a => a.Order)];
    public IReadOnlyList<LevelVariant> Others { get; private set; } = [];

    /// <summary>Learners with allergies in the parent's own words, which nothing here can match.</summary>
    public IReadOnlyList<Learner> OtherAllergies { get; private set; } = [];
    public IReadOnlyList<(string Name, int Weight)> Subjects { get; private set; } = [];

    /// <summary>Titles of the printables that have a file.</summary>
    public IReadOnlySet<string> WithFile { get; private set; } = new HashSet<string>();

    public MinutesOffers Minutes { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(Guid id, Guid activityId) => await LoadAsync(id, activityId) ? Page() : NotFound();

    /// <summary>Takes minutes that the log's memory offers, or goes back to those that were written.</summary>
    public async Task<IActionResult> OnPostTakeMinutesAsync(Guid id, Guid activityId, int minutes, int version)
    {
        if (!await LoadAsync(id, activityId))
            return NotFound();
        if (!ModelState.IsValid)
            return BadRequest();
        if (Activity.HandsOnMinutes != minutes && !await TakeMinutesAsync(Activity, Minutes, minutes, version))
        {
            await LoadAsync(id, activityId);
            return Again(StatusCodes.Status409Conflict);
        }

        return RedirectToPage(new { id, activityId });
    }

    private async Task<bool> LoadAsync(Guid id, Guid activityId)
    {
        var unit = await UnitAsync(id);
        if (unit?.Activities.FirstOrDefault(a => a.Id == activityId) is not { } activity)
            return false;
        (Unit, Activity) = (unit, activity);
        var subjects = await SubjectsAsync();
        var learners = await LearnersAsync();
        Line = UnitPlan.Of(unit, subjects, [.. learners.Select(Cautioned)], Today).Weeks.SelectMany(w => w.Activities).Single(a => a.Activity.Id == activityId);
        Minutes = await MinutesOffers.LoadAsync(Db, activity, learners, $"/units/{id}/activities/{activityId}?handler=TakeMinutes", Ct);

        var details = activity.Details;
        var weightiest = subjects.Select(s => (Subject: s, Weight: details.Subjects.FirstOrDefault(x => x.SubjectId == s.Id)?.Weight ?? 0)).MaxBy(x => x.Weight).Subject;
        Fitting = [.. learners.Select(l => Fit(l, weightiest)).OfType<FittingVersion>()];
        Others = [.. details.Variants.Except(Fitting.Select(f => f.Variant)).OrderBy(v => v.FromAge)];
        OtherAllergies = [.. learners.Where(l => l.AllergyNote.Length > 0)];
        WithFile = (await Db.PrintSources.Where(s => s.ActivityId == activityId).Select(s => s.Printable).ToListAsync(Ct)).ToHashSet();
        Subjects = [.. subjects.Join(details.Subjects, s => s.Id, x => x.SubjectId, (s, x) => (s.Name, x.Weight)).OrderByDescending(x => x.Weight)];
        return true;
    }

    private FittingVersion? Fit(Learner learner, FamilySubject subject)
    {
        var age = learner.WorkingAge(Today, subject.Id);
        return Activity.Details.Variants.For(age) is { } variant
            ? new FittingVersion(learner, age, learner.LevelIn(subject.Id) is { } level ? $"{level.Name} in {subject.Name}" : null, variant)
            : null;
    }
}
