using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.News;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The co-ops that the family belongs to.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IReadOnlyList<(Coop Coop, CoopFamily Mine, int Families, int Unread)> Coops { get; private set; } = [];

    public async Task OnGetAsync()
    {
        var families = (await Db.CoopFamilies.AsNoTracking().Where(f => f.LeftAt == null).ToListAsync(Ct)).ToLookup(f => f.CoopId);
        var unread = await NewsSeen.UnreadAsync(Db, Family.Id, Ct);
        Coops = [.. (await Db.Coops.AsNoTracking().OrderBy(c => c.Name).ToListAsync(Ct)).Select(c => (c, families[c.Id].Single(f => f.FamilyId == Family.Id), families[c.Id].Count(), unread.GetValueOrDefault(c.Id)))];
    }
}
