using CoopLessons.Data;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Data.Units;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Week.Ways;

/// <summary>A unit runs a week longer: what now.</summary>
public sealed class LongerModel(AppDb db, TimeProvider clock, LayoutLine line, FamilyWork work) : WaysPage(db, clock, line)
{
    public Unit Unit { get; private set; } = null!;

    public override string Address => $"/week/ways/unit/{Unit.Id}";
    public override string Title => $"{Unit.Title} runs a week longer";
    protected override string Key => FamilyWork.KeyOf(Unit.Id);

    public async Task<IActionResult> OnGetAsync(Guid unitId) => await LoadAsync(unitId) ? Page() : NotFound();

    public async Task<IActionResult> OnGetProgressAsync(Guid unitId) => await LoadAsync(unitId) ? this.Progress(Waiting) : NotFound();

    public async Task<IActionResult> OnPostAskAsync(Guid unitId) => await LoadAsync(unitId) ? AskAgain() : NotFound();

    public async Task<IActionResult> OnPostTakeAsync(Guid unitId, Guid job, FutureKind kind, Guid step) =>
        await LoadAsync(unitId) ? await TakeAsync(job, kind, step) : NotFound();

    protected override Guid? Ask() => work.AskLonger(Family.Id, Unit.Id, Title);

    protected override IActionResult Taken(Guid stepId) => LocalRedirect($"/week?step={stepId}");

    private async Task<bool> LoadAsync(Guid unitId)
    {
        if (await Db.Units.AsNoTracking().SingleOrDefaultAsync(u => u.Id == unitId && u.StartsOn != null, Ct) is not { } unit)
            return false;
        Unit = unit;
        await FindAsync();
        return true;
    }
}
