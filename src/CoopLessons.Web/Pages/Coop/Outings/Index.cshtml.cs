using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The outings of a co-op.</summary>
public sealed class OutingsModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public IReadOnlyList<CoopOuting> Ahead { get; private set; } = [];

    public IReadOnlyList<CoopOuting> Past { get; private set; } = [];

    public async Task OnGetAsync()
    {
        var all = await Db.CoopOutings.AsNoTracking().Where(o => o.CoopId == CoopId).OrderBy(o => o.On).ToListAsync(Ct);
        (Ahead, Past) = ([.. all.Where(o => o.On >= Today)], [.. all.Where(o => o.On < Today).Reverse()]);
    }
}
