using System.Security.Cryptography;
using System.Text;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;

namespace CoopLessons.Data.Planning;

/// <summary>What stands behind a session: an activity, a course or a loop, one of them.</summary>
public readonly record struct SessionSource(Guid? ActivityId, Guid? CourseId, Guid? LoopId)
{
    public static SessionSource Of(PlannedSession session) => new(session.ActivityId, session.CourseId, session.LoopId);

    public Guid Id => ActivityId ?? CourseId ?? LoopId ?? Guid.Empty;
}

/// <summary>One thing that is meant to be done in a week, planned already or not.</summary>
/// <param name="SessionId">Of the planned session, or the id that it will have.</param>
/// <param name="Session">Null where it is not planned yet.</param>
/// <param name="Subjects">The subjects that it counts for, the heaviest first.</param>
public sealed record Wanted(
    Guid SessionId, SessionSource Source, PlannedSession? Session, string Title, IReadOnlyList<Guid> Learners, int Minutes, AdultNeed Need, int WaitingMinutes,
    ActivityKind? Kind, IReadOnlyList<Guid> Subjects, TakenSplit Split, Activity? Activity)
{
    /// <summary>Names it from one asking to the next.</summary>
    public string Key => SessionId.ToString("N");

    /// <summary>How it stands in the plan, whatever is supposed of it; null where it is not planned yet.</summary>
    public PlanPlace? From { get; init; }

    /// <summary>The day on which it must stand, where that was said.</summary>
    public DateOnly? MustBeOn { get; init; }

    /// <summary>Its length where a parent shortened it; null for the written one.</summary>
    public int? OwnMinutes { get; init; }

    /// <summary>
    /// The id of a session that is not planned yet: the same each time the same week is asked for, so that a layout taken
    /// twice plans nothing twice.
    /// </summary>
    public static Guid NewId(string week, SessionSource source, int number)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes($"{week} {source.Id:N} {number}"));
        // Version 8 of RFC 9562: a hash of one's own kind.
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash.AsSpan(0, 16), bigEndian: true);
    }
}
