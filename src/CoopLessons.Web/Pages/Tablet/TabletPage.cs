using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Tablets;

/// <summary>A page of the family's tablet: the tablet itself, and the children whose names it shows.</summary>
public abstract class TabletPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    protected Task<FamilyTablet> TabletAsync() => Db.FamilyTablets.SingleAsync(t => t.Id == Db.Current.TabletId!.Value, Ct);

    /// <summary>In the family's order; those who are set aside or whose list is turned off are not there.</summary>
    protected async Task<IReadOnlyList<Learner>> ChildrenAsync(FamilyTablet tablet)
    {
        var chosen = tablet.Learners.ToList();
        return await Db.Learners.AsNoTracking()
            .Where(l => !l.SetAside && chosen.Contains(l.Id) && Db.OwnLists.Any(o => o.LearnerId == l.Id && o.Shown))
            .OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
    }
}
