using CoopLessons.Core.Requirements;
using CoopLessons.Data;

namespace CoopLessons.Web.Pages.Law;

/// <summary>The places of the catalog.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IReadOnlyList<Jurisdiction> Places { get; } = Catalog.Of50AndDc.All;

    public void OnGet()
    {
    }
}
