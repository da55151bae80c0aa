using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What the family's own children can do at home of a class day.</summary>
public sealed class DayAtHomeModel(AppDb db, TimeProvider clock) : LostMeetingPage(db, clock)
{
    public AtHome AtHome { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        AtHome = await AtHome.ReadAsync(Db, Meeting, Ct);
        return Page();
    }
}
