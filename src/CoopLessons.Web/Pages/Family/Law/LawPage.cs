using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>A page about where the children stand under the law.</summary>
public abstract class LawPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>How an address names the family's own pathways in the place of a state's code.</summary>
    public const string Own = "own";

    /// <summary>The latest first.</summary>
    public IReadOnlyList<SchoolYear> Years { get; private set; } = [];

    /// <summary>The year of today; between years the one that ended last; before the first, that one. Null without any.</summary>
    public SchoolYear? Year { get; private set; }

    /// <summary>False where a year is asked for that the family does not have.</summary>
    protected async Task<bool> FindYearAsync(Guid? asked = null)
    {
        Years = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).OrderByDescending(y => y.First).ToListAsync(Ct);
        Year = asked is { } id
            ? Years.FirstOrDefault(y => y.Id == id)
            : Years.FirstOrDefault(y => y.First <= Today) ?? (Years.Count > 0 ? Years[^1] : null);
        return asked is null || Year is not null;
    }

    /// <summary>The code as rows keep it for an address's part: “own” is empty, and small letters are as good as large ones.</summary>
    protected static string CodeOf(string place) => string.Equals(place, Own, StringComparison.OrdinalIgnoreCase) ? "" : place.ToUpperInvariant();

    /// <summary>The address's part for a row's code.</summary>
    public static string PlaceOf(string code) => code.Length == 0 ? Own : code;

    protected Task<KnownPathways> PathwaysAsync() => KnownPathways.LoadAsync(Db, Ct);
}
