using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Lists;

/// <summary>A child and the child's list; null while none was ever set up.</summary>
public sealed record ChildAndList(Learner Learner, OwnList? List);

/// <summary>Which child has a list of its own, and what waits to be confirmed.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IReadOnlyList<ChildAndList> Children { get; private set; } = [];

    public int Waiting { get; private set; }

    public async Task OnGetAsync()
    {
        var lists = await Db.OwnLists.AsNoTracking().ToDictionaryAsync(l => l.LearnerId, Ct);
        Children = [.. (await Db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct)).Select(l => new ChildAndList(l, lists.GetValueOrDefault(l.Id)))];
        Waiting = await Db.ChildrenSaid.CountAsync(s => s.State == SaidState.Waiting, Ct);
    }
}
