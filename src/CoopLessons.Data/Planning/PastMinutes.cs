using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

public static class PastMinutes
{
    /// <summary>
    /// How long a kind of activity takes each learner, beside the minutes that were written for it. Minutes that were
    /// taken from this very memory are not what was written: else the same bit of being longer would be added again and
    /// again.
    /// </summary>
    public static async Task<IReadOnlyDictionary<Guid, RealRatio>> RealRatiosAsync(this AppDb db, ActivityKind kind, CancellationToken ct)
    {
        var activities = await db.Activities.AsNoTracking().Where(a => a.Kind == kind).ToDictionaryAsync(a => a.Id, ct);
        var rows = await (
            from s in db.PlannedSessions
            where s.State == SessionState.Done && s.ActivityId != null && db.Activities.Any(a => a.Id == s.ActivityId && a.Kind == kind)
            join r in db.LogRevisions on s.EntryId equals r.EntryId
            where r.Number == r.Entry.Newest && !r.Removed
            from t in r.Times
            select new { s.ActivityId, s.Minutes, t.LearnerId, Logged = t.Minutes }).ToListAsync(ct);
        return RealMinutes.Of(rows.Where(r => r.Logged is >= 1 and <= 1440 && activities.ContainsKey(r.ActivityId!.Value))
                .Select(r => new DoneSession(kind, r.LearnerId, r.Minutes ?? activities[r.ActivityId!.Value].WrittenMinutes, r.Logged)))
            .Values.ToDictionary(r => r.LearnerId);
    }
}
