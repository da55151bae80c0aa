using System.Text.Json.Serialization;

namespace CoopLessons.Core.Schedule;

/// <summary>How what is not done yet stands in the plan.</summary>
public enum PlanState { Planned, NotDone, LetGo }

/// <summary>Everything that the plan says of one session, so that what was can be given back exactly.</summary>
/// <param name="StartsAt">Minutes after midnight, 0–1439; null where only the order of the day is known.</param>
/// <param name="Order">Place among those of the day that share a start or have none.</param>
/// <param name="LooksAt">When somebody looks after its wait, in minutes after midnight; null where it has none or the hour follows from the start.</param>
/// <param name="AdultId">Whose hands it takes; null where nobody was named.</param>
/// <param name="Minutes">A length of its own, 1–480; null for the length that its source has.</param>
/// <param name="Pinned">Set by hand: a layout leaves it where it is.</param>
public sealed record PlanPlace(
    DateOnly Date,
    int? StartsAt = null,
    int Order = 0,
    int? LooksAt = null,
    Guid? AdultId = null,
    int? Minutes = null,
    bool Pinned = false,
    PlanState State = PlanState.Planned)
{
    public const int LongestMinutes = 480;

    /// <summary>Whether every number is inside its bounds.</summary>
    [JsonIgnore]
    public bool IsSound => StartsAt is null or (>= 0 and < 1440) && LooksAt is null or (>= 0 and < 1440) && Minutes is null or (>= 1 and <= LongestMinutes)
        && Order >= 0 && Enum.IsDefined(State);
}

/// <summary>
/// One change of a planned session from a place to another, or off the calendar where <paramref name="To"/> is null.
/// Whoever proposes changes, a parent by hand or a computed layout, proposes them in this form; one verb of the plan
/// takes them, all or none.
/// </summary>
/// <param name="From">Where the proposer found it: a session that stands elsewhere by now is not moved.</param>
public sealed record PlanChange(Guid SessionId, PlanPlace From, PlanPlace? To)
{
    /// <summary>How the session stands afterwards; what is let go keeps its place for the way back.</summary>
    [JsonIgnore]
    public PlanPlace Then => To ?? From with { State = PlanState.LetGo };

    /// <summary>The change by which this one is undone.</summary>
    [JsonIgnore]
    public PlanChange Undoing => new(SessionId, Then, From);
}
