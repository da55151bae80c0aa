using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A page about a meeting that falls through, and what becomes of it.</summary>
public abstract class LostMeetingPage(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "meetingId")]
    public Guid MeetingId { get; set; }

    public CoopMeeting Meeting { get; private set; } = null!;

    /// <summary>The meeting that makes up for this one and stands, if any.</summary>
    public CoopMeeting? Instead { get; private set; }

    protected async Task<bool> FindAsync()
    {
        if (await Db.CoopMeetings.SingleOrDefaultAsync(m => m.CoopId == CoopId && m.Id == MeetingId, Ct) is not { } found)
            return false;
        Meeting = found;
        Instead = await Db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == CoopId && m.InsteadOf == MeetingId && m.CalledOffAt == null).OrderBy(m => m.On).FirstOrDefaultAsync(Ct);
        return true;
    }

    /// <summary>The notice by which the meeting was called off last.</summary>
    protected Task<Guid> NoticeAsync() => Db.CoopNotices.Where(n => n.CoopId == CoopId && n.MeetingId == MeetingId && n.About == Data.Coops.News.NoticeAbout.CalledOff)
        .OrderByDescending(n => n.At).Select(n => n.Id).FirstOrDefaultAsync(Ct);

    protected string NewsPath(Guid noticeId) => noticeId == Guid.Empty ? $"/coop/{CoopId}/news" : $"/coop/{CoopId}/news/{noticeId}";
}
