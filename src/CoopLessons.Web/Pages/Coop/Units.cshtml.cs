using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The units that families of a co-op prepared for all.</summary>
public sealed class UnitsModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    private ILookup<Guid, UnitUse> _uses = Array.Empty<UnitUse>().ToLookup(u => u.SharedUnitId);

    public IReadOnlyList<SharedUnit> Units { get; private set; } = [];

    public async Task OnGetAsync()
    {
        Units = [.. (await Db.SharedUnits.AsNoTracking().Where(u => u.CoopId == CoopId).ToListAsync(Ct)).OrderBy(u => u.Title, StringComparer.OrdinalIgnoreCase)];
        _uses = (await Db.UnitUses.AsNoTracking().Where(u => u.CoopId == CoopId).ToListAsync(Ct)).ToLookup(u => u.SharedUnitId);
    }

    public string Uses(SharedUnit unit) => _uses[unit.Id].FirstOrDefault(u => u.FamilyId == Family.Id) is { } mine
        ? mine.Number < unit.Newest ? $"you have revision {mine.Number}" : "you have it"
        : unit.FamilyId == Family.Id ? $"yours, taken up by {CoopWords.Families(_uses[unit.Id].Count())}" : _uses[unit.Id].Any() ? $"taken up by {CoopWords.Families(_uses[unit.Id].Count())}" : "";
}
