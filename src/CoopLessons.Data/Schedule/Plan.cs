using CoopLessons.Core.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Schedule;

/// <summary>What came of changes that were proposed to the plan.</summary>
public enum PlanAnswer
{
    /// <summary>All of them stand now; some may have stood before.</summary>
    Taken,

    /// <summary>None was taken: a session is done, or is no longer where the change found it.</summary>
    Overtaken,

    /// <summary>None was taken: a session or an adult is not the family's, a session stands twice, or a number is out of its bounds.</summary>
    Unknown,
}

/// <summary>The family's plan as a whole: moves are taken all or none, whoever proposes them.</summary>
public static class Plan
{
    /// <summary>Takes the changes into the unit of work, which the caller saves. A second sending changes nothing.</summary>
    public static async Task<PlanAnswer> ApplyAsync(AppDb db, IReadOnlyList<PlanChange> changes, CancellationToken ct)
    {
        var ids = changes.Select(c => c.SessionId).ToHashSet();
        if (ids.Count != changes.Count || !changes.All(c => c.Then.IsSound))
            return PlanAnswer.Unknown;
        var sessions = await db.PlannedSessions.Where(s => ids.Contains(s.Id)).ToDictionaryAsync(s => s.Id, ct);
        var named = changes.Select(c => c.Then.AdultId).OfType<Guid>().ToHashSet();
        if (sessions.Count != ids.Count || await db.TeachingAdults.CountAsync(a => named.Contains(a.Id), ct) != named.Count)
            return PlanAnswer.Unknown;
        var open = changes.Where(c => !sessions[c.SessionId].Meets(c)).ToList();
        if (open.Any(c => !sessions[c.SessionId].CanTake(c)))
            return PlanAnswer.Overtaken;
        foreach (var change in open)
            sessions[change.SessionId].Take(change);
        return PlanAnswer.Taken;
    }

    /// <summary>The change by which a taken one is undone; the session then stands exactly as it did, also one that was let go.</summary>
    public static PlanChange Undoing(PlanChange change) => change.Undoing;

    /// <summary>Changes of days alone, as a parent asks for them; null where a session is not the family's.</summary>
    /// <param name="to">Null: let go.</param>
    public static async Task<IReadOnlyList<PlanChange>?> ToDaysAsync(AppDb db, DateOnly from, IReadOnlyList<(Guid SessionId, DateOnly? To)> moves, CancellationToken ct)
    {
        var ids = moves.Select(m => m.SessionId).ToHashSet();
        var sessions = await db.PlannedSessions.Where(s => ids.Contains(s.Id)).ToDictionaryAsync(s => s.Id, ct);
        return sessions.Count == ids.Count ? [.. moves.Select(m => sessions[m.SessionId].ToDay(from, m.To))] : null;
    }
}
