namespace CoopLessons.Core.Requirements.Duties;

/// <summary>Something that happened to the learner, as the family told it.</summary>
public sealed record RecordedEvent(LegalEvent Event, DateOnly On);

/// <summary>What the family told about dates.</summary>
/// <param name="Events">In any order; those of other years too.</param>
/// <param name="SetByFamily">The family's own due dates, by <see cref="DatedDuty.Key"/>.</param>
public sealed record DutyDates(IReadOnlyList<RecordedEvent> Events, IReadOnlyDictionary<string, DateOnly> SetByFamily)
{
    public static DutyDates None { get; } = new([], new Dictionary<string, DateOnly>());
}
