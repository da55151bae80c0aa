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

    /// <summary>None was taken: a session is not the family's, or stands twice.</summary>
    Unknown,
}

/// <summary>The family's plan as a whole: moves are taken all or none, whoever proposes them.</summary>
public static class Plan
{
    /// <summary>Takes the changes into the unit of work, which the caller saves. A second sending changes nothing.</summary>
    public static async Task<PlanAnswer> ApplyAsync(AppDb db, IReadOnlyList<PlanChange> changes, CancellationToken ct)
    {
        var ids = changes.Select(c => c.SessionId).ToHashSet();
        if (ids.Count != changes.Count)
            return PlanAnswer.Unknown;
        var sessions = await db.PlannedSessions.Where(s => ids.Contains(s.Id)).ToDictionaryAsync(s => s.Id, ct);
        if (sessions.Count != ids.Count)
            return PlanAnswer.Unknown;
        var open = changes.Where(c => !sessions[c.SessionId].Meets(c)).ToList();
        if (open.Any(c => !sessions[c.SessionId].CanTake(c)))
            return PlanAnswer.Overtaken;
        foreach (var change in open)
            sessions[change.SessionId].Take(change);
        return PlanAnswer.Taken;
    }

    /// <summary>The change by which a taken one is undone; one that was let go returns to its date.</summary>
    public static PlanChange Undoing(PlanChange change) => new(change.SessionId, change.To ?? change.From, change.From);
}
