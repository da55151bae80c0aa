using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The classes of a co-op, by period.</summary>
public sealed class ClassesModel(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    public IReadOnlyList<CoopClass> Shown => [.. Table.Classes.Where(c => c.Last >= Today)];

    public IReadOnlyList<CoopClass> Ended => [.. Table.Classes.Where(c => c.Last < Today)];

    public Task OnGetAsync() => ReadTableAsync();
}
