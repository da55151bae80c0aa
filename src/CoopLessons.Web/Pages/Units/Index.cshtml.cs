using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The family's units, taken ones first, and the units that come with the program.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    public IReadOnlyList<Unit> Taken { get; private set; } = [];
    public IReadOnlyList<Unit> Shelf { get; private set; } = [];

    /// <summary>Those of which a newer version is there, or something was left for later.</summary>
    public IReadOnlySet<Guid> Newer { get; private set; } = new HashSet<Guid>();

    public IReadOnlyDictionary<string, UnitBundle> Offered => ScenarioFiles.Units;

    /// <summary>An id for each copy that may be taken from this page.</summary>
    public IReadOnlyDictionary<string, Guid> Ids { get; } = ScenarioFiles.Units.Keys.ToDictionary(k => k, _ => Guid.CreateVersion7());

    public bool Has(UnitBundle bundle) => Taken.Concat(Shelf).Any(u => u.Title == bundle.Title);

    public async Task OnGetAsync()
    {
        var units = await Db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery().ToListAsync(Ct);
        Newer = await NewerVersion.WaitingAsync(Db, Ct);
        Taken = [.. units.Where(u => u.IsTaken).OrderBy(u => u.StartsOn).ThenBy(u => u.Title, StringComparer.OrdinalIgnoreCase)];
        Shelf = [.. units.Where(u => !u.IsTaken).OrderBy(u => u.Title, StringComparer.OrdinalIgnoreCase).ThenBy(u => u.Id)];
    }

    public async Task<IActionResult> OnPostTakeInAsync(string? name, Guid unitId)
    {
        if (name is null || !Offered.TryGetValue(name, out var bundle) || unitId == Guid.Empty)
            return NotFound();
        if (!await Db.Units.AnyAsync(u => u.Id == unitId, Ct))
        {
            await UnitTravel.TakeInAsync(Db, bundle, unitId, Ct);
            if (!await SaveNewAsync() && !await Db.Units.AnyAsync(u => u.Id == unitId, Ct))
                return StatusCode(StatusCodes.Status409Conflict);
        }

        Say($"“{bundle.Title}” is on your shelf. Choose its subjects, then take it.");
        return RedirectToPage("Show", new { id = unitId });
    }
}
