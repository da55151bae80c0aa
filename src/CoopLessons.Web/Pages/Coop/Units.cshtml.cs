using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The units that families of a co-op prepared for all.</summary>
public sealed class UnitsModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    private ILookup<Guid, UnitUse> _uses = Array.Empty<UnitUse>().ToLookup(u => u.SharedUnitId);

    private ILookup<Guid, OfferedChange> _offers = Array.Empty<OfferedChange>().ToLookup(o => o.SharedUnitId);

    public IReadOnlyList<SharedUnit> Units { get; private set; } = [];

    public async Task OnGetAsync()
    {
        Units = [.. (await Db.SharedUnits.AsNoTracking().Where(u => u.CoopId == CoopId).ToListAsync(Ct)).OrderBy(u => u.Title, StringComparer.OrdinalIgnoreCase)];
        _uses = (await Db.UnitUses.AsNoTracking().Where(u => u.CoopId == CoopId).ToListAsync(Ct)).ToLookup(u => u.SharedUnitId);
        _offers = (await Db.OfferedChanges.AsNoTracking().Where(o => o.CoopId == CoopId && !Db.OfferAnswers.Any(a => a.CoopId == CoopId && a.OfferId == o.Id)).ToListAsync(Ct)).ToLookup(o => o.SharedUnitId);
    }

    /// <summary>Changes offered back that wait for this family, the author.</summary>
    public int Waiting(SharedUnit unit) => unit.FamilyId == Family.Id ? _offers[unit.Id].Count() : 0;

    public string Uses(SharedUnit unit) => _uses[unit.Id].FirstOrDefault(u => u.FamilyId == Family.Id) is { } mine
        ? mine.Number < unit.Newest ? $"you have revision {mine.Number}" : "you have it"
        : unit.FamilyId == Family.Id ? $"yours, taken up by {CoopWords.Families(_uses[unit.Id].Count())}" : _uses[unit.Id].Any() ? $"taken up by {CoopWords.Families(_uses[unit.Id].Count())}" : "";
}
