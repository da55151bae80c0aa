using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Calendars;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Feed;

/// <summary>The family's due dates for a calendar program that holds the secret address. Reads, and tells nothing else.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class DutiesModel(AppDb db, CurrentFamily current, TimeProvider clock) : PageModel
{
    private CancellationToken Ct => HttpContext.RequestAborted;

    public async Task<IActionResult> OnGetAsync(string secret)
    {
        var hash = Invitation.Hash(secret);
        current.Hold(hash);
        // The family is not known before the address is read; whoever holds the secret may read this one row.
        var address = await db.CalendarAddresses.IgnoreQueryFilters([AppDb.FamilyFilter]).AsNoTracking().SingleOrDefaultAsync(a => a.SecretHash == hash, Ct);
        if (address is null)
            return NotFound();
        if (address.EndedAt is not null)
            return StatusCode(StatusCodes.Status410Gone);
        current.ActForProgram(address.FamilyId);
        var family = await db.Families.AsNoTracking().SingleAsync(Ct);
        var today = family.Today(clock);
        var duties = new List<CalendarDuty>();
        // The years that run, lie ahead, or ended in the last twelve months: papers fall due after a year, too.
        foreach (var year in await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).Where(y => y.Last >= today.AddYears(-1)).OrderBy(y => y.First).ToListAsync(Ct))
        {
            foreach (var law in await LawOfLearner.LoadAllAsync(db, year, Ct))
            {
                var child = address.WithNames ? law.Learner.Name : Initial(law.Learner.Name);
                duties.AddRange(LearnerDuty.Of(law).Select(d => CalendarDuty.Of(law.Learner.Id, year.Id, child, d.Dated, d.Mark?.DoneOn is not null)).OfType<CalendarDuty>());
            }
        }

        var content = new CalendarContent(address.WithNames ? $"{family.Name}: papers and tests" : "Papers and tests", clock.GetUtcNow(), duties);
        return File(DutyCalendar.Write(content), "text/calendar; charset=utf-8", "papers.ics");
    }

    // The first letter with its accents.
    private static string Initial(string name) => System.Globalization.StringInfo.GetNextTextElement(name) + ".";
}
