using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>A unit: subjects by weeks, its choices in place, and its activities week by week.</summary>
public sealed class ShowModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    private static readonly DateOnly Earliest = new(1900, 1, 1);
    private static readonly DateOnly Latest = new(2200, 12, 31);

    [BindProperty]
    public TakeInput Take { get; set; } = new();

    /// <summary>The week whose fit was asked for; without one, the fullest.</summary>
    [BindProperty(SupportsGet = true, Name = "week")]
    public int? AskedWeek { get; set; }

    public UnitPlan Plan { get; private set; } = null!;

    /// <summary>Null where nothing is written that could fit or not.</summary>
    public UnitFit? Fit { get; private set; }
    public Unit Unit => Plan.Unit;

    /// <summary>Where it came from; null for a unit of the family's own.</summary>
    public UnitOrigin? Origin { get; private set; }

    /// <summary>Whether it is still shared in a co-op of the family's.</summary>
    public bool IsFromCoop { get; private set; }

    public bool IsNewerThere { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id) => await ShowAsync(id) ? Page() : NotFound();

    /// <summary>The fit of another week, to be put in place of the one that is shown.</summary>
    public async Task<IActionResult> OnGetFitAsync(Guid id) =>
        await ShowAsync(id) && Fit is not null ? Fragment("_Fit", this) : NotFound();

    /// <summary>Sets which of the subjects that the form showed are taken; the others stay as they are.</summary>
    public async Task<IActionResult> OnPostChooseAsync(Guid id, List<Guid> shown, List<Guid> taken)
    {
        var unit = await UnitAsync(id);
        if (unit is null || shown.Concat(taken).Any(s => unit.Subjects.All(x => x.SubjectId != s)))
            return NotFound();
        foreach (var subjectId in shown)
            _ = taken.Contains(subjectId) ? unit.BringBack(subjectId) : unit.LeaveOut(subjectId);
        return await ShowChosenAsync(id, "choose");
    }

    public async Task<IActionResult> OnPostBringBackAsync(Guid id, Guid subject)
    {
        var unit = await UnitAsync(id);
        return unit?.BringBack(subject) == true ? await ShowChosenAsync(id, "grid") : NotFound();
    }

    public Task<IActionResult> OnPostLeaveOutAsync(Guid id, Guid activity) => ChangeAsync(id, activity, a => a.LeaveOut());

    public Task<IActionResult> OnPostPutBackAsync(Guid id, Guid activity) => ChangeAsync(id, activity, a => a.BringBack());

    /// <summary>Takes the unit from the Monday of the week that was named.</summary>
    public async Task<IActionResult> OnPostTakeAsync(Guid id)
    {
        var unit = await UnitAsync(id);
        if (unit is null)
            return NotFound();
        if (ModelState.IsValid && (Take.Monday < Earliest || Take.Monday > Latest))
            ModelState.AddModelError("Take.Monday", "Give a date between 1900 and 2200.");
        if (!ModelState.IsValid)
            return await AgainAsync(id, StatusCodes.Status422UnprocessableEntity);

        var monday = Core.Calendar.Week.Of(Take.Monday!.Value).Monday;
        unit.Take(monday);
        Expect(unit, Take.Version);
        if (!await SaveAsync())
            return await AgainAsync(id, StatusCodes.Status409Conflict);
        var moved = monday == Take.Monday ? "" : $" That is the Monday of the week with {UnitWords.Date(Take.Monday.Value, Today)}: a unit's weeks begin on Mondays.";
        Say($"Week 1 begins on {UnitWords.Date(monday, Today)}.{moved}");
        return RedirectToPage(new { id });
    }

    public async Task<IActionResult> OnPostShelveAsync(Guid id)
    {
        var unit = await UnitAsync(id);
        if (unit is null)
            return NotFound();
        unit.PutBackOnTheShelf();
        Expect(unit, Take.Version);
        ModelState.Clear();
        if (!await SaveAsync())
            return await AgainAsync(id, StatusCodes.Status409Conflict);
        Say("The unit is back on the shelf. What you placed on days stays there.");
        return RedirectToPage(new { id });
    }

    private async Task<IActionResult> ChangeAsync(Guid id, Guid activityId, Action<Activity> change)
    {
        var unit = await UnitAsync(id);
        if (unit?.Activities.FirstOrDefault(a => a.Id == activityId) is not { } activity)
            return NotFound();
        change(activity);
        return await ShowChosenAsync(id, $"a-{activityId}");
    }

    private async Task<IActionResult> ShowChosenAsync(Guid id, string at)
    {
        ModelState.Clear();
        var saved = await SaveAsync();
        if (saved && !Request.IsHtmx())
            return RedirectToPage("Show", null, new { id, week = AskedWeek }, at);
        if (!await ShowAsync(id))
            return NotFound();
        var status = saved ? StatusCodes.Status200OK : StatusCodes.Status409Conflict;
        return Request.IsHtmx() ? Fragment("_Plan", this, status) : Again(status);
    }

    private async Task<IActionResult> AgainAsync(Guid id, int status)
    {
        Db.ChangeTracker.Clear();
        var typed = Take.Monday;
        if (!await ShowAsync(id))
            return NotFound();
        Take.Monday = typed;
        // After a stale form the reader has been told; sending once more is meant.
        if (status == StatusCodes.Status409Conflict)
            ModelState.Remove("Take.Version");
        return Again(status);
    }

    private async Task<bool> ShowAsync(Guid id)
    {
        if (await UnitAsync(id) is not { } unit)
            return false;
        var learners = await LearnersAsync();
        Plan = UnitPlan.Of(unit, await SubjectsAsync(), [.. learners.Select(Cautioned)], Today);
        var monday = unit.StartsOn ?? Core.Calendar.Week.Of(Today).Next.Monday;
        Take = new TakeInput { Monday = monday, Version = unit.Version };
        if (unit.Activities.Count > 0)
            Fit = UnitFit.Of(unit, await FamilyWeek.OfUnitAsync(Db, unit, monday, Ct), AskedWeek);
        Origin = await Db.UnitOrigins.AsNoTracking().SingleOrDefaultAsync(o => o.UnitId == id, Ct);
        IsFromCoop = Origin is { } from && await Db.SharedUnits.AnyAsync(u => u.CoopId == from.CoopId && u.Id == from.SharedId, Ct);
        IsNewerThere = (await NewerVersion.WaitingAsync(Db, Ct)).Contains(id);
        return true;
    }

    public sealed class TakeInput
    {
        [Required(ErrorMessage = "Say in which week the unit begins.")]
        [DataType(DataType.Date)]
        public DateOnly? Monday { get; set; }

        public int Version { get; set; }
    }
}
