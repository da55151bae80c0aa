using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>One notice; of a day that falls through with what the family's children can do at home.</summary>
public sealed class NoticeModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "noticeId")]
    public Guid NoticeId { get; set; }

    public CoopNotice Notice { get; private set; } = null!;

    public CoopMeeting? Meeting { get; private set; }

    /// <summary>Null for a notice of something else.</summary>
    public AtHome? AtHome { get; private set; }

    public async Task<IActionResult> OnGetAsync() => await FindAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostWithdrawAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (!Notice.Stands)
            return LocalRedirect($"/coop/{CoopId}/news");
        if (!Notice.MayBeWithdrawnBy(Family.Id))
            return Forbid();
        Notice.Withdraw(Now);
        if (!await SaveAsync())
            return await FindAsync() ? Again(StatusCodes.Status409Conflict) : NotFound();
        Say("The notice is withdrawn.");
        return LocalRedirect($"/coop/{CoopId}/news");
    }

    private async Task<bool> FindAsync()
    {
        if (await Db.CoopNotices.SingleOrDefaultAsync(n => n.CoopId == CoopId && n.Id == NoticeId, Ct) is not { } found)
            return false;
        Notice = found;
        Meeting = found.MeetingId is { } id ? await Db.CoopMeetings.AsNoTracking().SingleOrDefaultAsync(m => m.CoopId == CoopId && m.Id == id, Ct) : null;
        if (found is { Stands: true, About: NoticeAbout.CalledOff } && Meeting is { Stands: false } meeting)
            AtHome = await AtHome.ReadAsync(Db, meeting, Ct);
        return true;
    }
}
