namespace CoopLessons.Core.Hours;

/// <summary>Where the learning happened. Some laws count hours at the regular home apart.</summary>
public enum Place
{
    Home,
    AnotherHome,
    Coop,
    Elsewhere,
}

/// <summary>What one learner was credited: 1–1440 minutes.</summary>
/// <exception cref="ArgumentOutOfRangeException">Minutes outside 1–1440.</exception>
public sealed record LearnerTime
{
    public LearnerTime(Guid learnerId, Minutes minutes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes.Value, 1, nameof(minutes));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(minutes.Value, 1440, nameof(minutes));
        LearnerId = learnerId;
        Minutes = minutes;
    }

    public Guid LearnerId { get; }
    public Minutes Minutes { get; }
}

/// <summary>A subject's share of an entry: a whole weight above zero.</summary>
public sealed record SubjectWeight
{
    /// <exception cref="ArgumentOutOfRangeException">Weight below 1.</exception>
    public SubjectWeight(Guid subjectId, int weight)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(weight, 1);
        SubjectId = subjectId;
        Weight = weight;
    }

    public Guid SubjectId { get; }
    public int Weight { get; }
}

/// <summary>The newest revision of one entry of the family's log, as the arithmetic needs it.</summary>
/// <param name="Id">The entry's id, the same over all its revisions.</param>
/// <param name="Revision">1 for the first writing, raised by each change.</param>
/// <param name="Date">The day on which it was done, in the family's own time zone.</param>
/// <param name="Start">When it began, where the parent wrote that down.</param>
/// <param name="Learners">Who took part and for how long; each learner once.</param>
/// <param name="Split">At least one subject; each once.</param>
/// <param name="Touches">Subjects met in passing: they count for coverage, never for minutes.</param>
public sealed record LoggedEntry(
    Guid Id,
    int Revision,
    DateOnly Date,
    TimeOnly? Start,
    string What,
    Place Place,
    IReadOnlyList<LearnerTime> Learners,
    IReadOnlyList<SubjectWeight> Split,
    IReadOnlyList<Guid> Touches);
