using CoopLessons.Data;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Tablets;

/// <summary>The children's names, each a door to the child's list.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : TabletPage(db, clock)
{
    public IReadOnlyList<Learner> Children { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (Db.Current.LearnerId is not null)
            return LocalRedirect("/mine");
        Children = await ChildrenAsync(await TabletAsync());
        return Page();
    }
}
