using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Schedule;

public static class DayOrder
{
    /// <summary>
    /// Puts a session at a place among those that share its day and time, 0 for first, and numbers its day anew.
    /// </summary>
    /// <param name="beside">Those of the same time in their present order, the session among them.</param>
    public static async Task StandInDayAsync(this AppDb db, PlannedSession session, IReadOnlyList<PlannedSession> beside, int place, CancellationToken ct)
    {
        var order = beside.Where(s => s.Id != session.Id).ToList();
        order.Insert(Math.Clamp(place, 0, order.Count), session);
        var date = session.Date;
        var ids = order.Select(s => s.Id).ToHashSet();
        var others = (await db.PlannedSessions.Where(s => s.Date == date).ToListAsync(ct)).Where(s => !ids.Contains(s.Id));
        // Others keep their order among themselves and stand after: a time of their own, or none at all, parts them anyway.
        var next = 0;
        foreach (var standing in order.Concat(others.OrderBy(s => s.StartsAt ?? int.MaxValue).ThenBy(s => s.Order).ThenBy(s => s.Id)))
            standing.StandAt(next++);
    }
}
