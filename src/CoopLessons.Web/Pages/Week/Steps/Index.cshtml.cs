using CoopLessons.Data;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Week.Steps;

/// <summary>The large steps of planning, newest first, each with its way back.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const int MostShown = 20;

    public IReadOnlyList<PlanStep> Steps { get; private set; } = [];

    public async Task OnGetAsync() => Steps = await NewestAsync();

    /// <param name="week">The week to go back to; without it, this page.</param>
    public async Task<IActionResult> OnPostUndoAsync(Guid stepId, string? week)
    {
        if (await Db.PlanSteps.SingleOrDefaultAsync(s => s.Id == stepId, Ct) is not { } step)
            return NotFound();
        if (await step.UndoAsync(Db, Ct) != PlanAnswer.Taken || !await SaveNewAsync())
        {
            Db.ChangeTracker.Clear();
            Steps = await NewestAsync();
            ModelState.AddModelError("", $"“{step.Title}” cannot be undone as a whole any more: something of it is done by now or was changed since. Nothing was changed.");
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{step.Title}” is undone. The plan is as it was before.");
        return LocalRedirect(DayWords.TryWeek(week, out var shown) ? $"/week/{shown.Iso}" : "/week/steps");
    }

    private async Task<IReadOnlyList<PlanStep>> NewestAsync() =>
        await Db.PlanSteps.AsNoTracking().OrderByDescending(s => s.TakenAt).ThenBy(s => s.Id).Take(MostShown).ToListAsync(Ct);
}
