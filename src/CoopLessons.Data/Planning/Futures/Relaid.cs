using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>Sessions that go to other days find hours there, week by week.</summary>
internal static class Relaid
{
    /// <param name="moves">The day on which each would stand.</param>
    /// <param name="letGo">Sessions that are not looked at.</param>
    /// <param name="lost">Days on which nothing is taught.</param>
    /// <returns>The changes; what is known of the hours, or null where none had to be found.</returns>
    public static async Task<(List<PlanChange> Changes, Proof? Proof)> OfAsync(
        AppDb db, IReadOnlyDictionary<Guid, DateOnly> moves, IReadOnlySet<Guid> letGo, IReadOnlySet<DateOnly> lost, string title, DateOnly today, int now,
        Effort effort, CancellationToken ct)
    {
        var changes = new List<PlanChange>();
        Proof? proof = null;
        foreach (var week in moves.Values.Select(Week.Of).Distinct().OrderBy(w => w.Monday))
        {
            var ask = WeekAsk.Plain with { PlannedOnly = true, LetGo = letGo, Lost = lost, Moves = moves };
            if (await WeekReading.LoadAsync(db, week, today, now, ask, ct) is not { } atHand)
                continue;
            var laid = WeekLaid.Of(atHand, title, effort, null, ct);
            proof = proof is { } worst && worst > laid.Plan.Proof ? worst : laid.Plan.Proof;
            changes.AddRange(laid.Proposal.Changes);
        }

        // Moved into a week that cannot be laid out, such as one outside every school year: the day, and no hour.
        var changed = changes.Select(c => c.SessionId).ToHashSet();
        var rest = moves.Keys.Where(id => !changed.Contains(id)).ToList();
        foreach (var session in await db.PlannedSessions.AsNoTracking().Where(s => rest.Contains(s.Id)).OrderBy(s => s.Date).ThenBy(s => s.Id).ToListAsync(ct))
        {
            var to = session.Stands with { Date = moves[session.Id], StartsAt = null, LooksAt = null, State = PlanState.Planned };
            if (session.Date != to.Date)
                changes.Add(new PlanChange(session.Id, session.Stands, to));
        }

        return (changes, proof);
    }
}
