using System.Globalization;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;

namespace CoopLessons.Data.Coops.Off;

/// <summary>A meeting falls through, is held all the same, or is made up for: the meeting changes and all families are told, in one saving by the caller.</summary>
public static class DayOff
{
    /// <summary>“Thursday, 12 March”.</summary>
    public static string Say(DateOnly day) => day.ToString("dddd, d MMMM", CultureInfo.InvariantCulture);

    /// <param name="why">In a few words: “snow”.</param>
    /// <param name="words">What the leader says besides; may be empty.</param>
    public static void CallOff(AppDb db, CoopMeeting meeting, CoopFamily by, Guid noticeId, string why, string words, DateTime now)
    {
        meeting.CallOff(why, now);
        db.CoopNotices.Add(new CoopNotice(meeting.CoopId, noticeId, by, Short($"No meeting on {Say(meeting.On)}: {why}"), words, now, NoticeAbout.CalledOff, meeting.Id));
    }

    public static void MeetAfterAll(AppDb db, CoopMeeting meeting, CoopFamily by, Guid noticeId, string words, DateTime now)
    {
        meeting.MeetAfterAll();
        db.CoopNotices.Add(new CoopNotice(meeting.CoopId, noticeId, by, $"We meet after all on {Say(meeting.On)}", words, now, NoticeAbout.MeetAfterAll, meeting.Id));
    }

    public static CoopMeeting MakeUp(AppDb db, CoopMeeting lost, CoopFamily by, Guid meetingId, Guid noticeId, DateOnly on, DateTime now)
    {
        var meeting = new CoopMeeting(lost.CoopId, meetingId, on, lost.Where);
        meeting.MakeUpFor(lost);
        db.CoopMeetings.Add(meeting);
        db.CoopNotices.Add(new CoopNotice(lost.CoopId, noticeId, by, $"A day instead of {Say(lost.On)}", $"We meet on {Say(on)}{(lost.Where.Length > 0 ? $" at {lost.Where}" : "")}, with the same classes.", now, NoticeAbout.MadeUp, meetingId));
        return meeting;
    }

    private static string Short(string title) => title.Length > CoopNotice.LongestTitle ? title[..(CoopNotice.LongestTitle - 1)] + "…" : title;
}
