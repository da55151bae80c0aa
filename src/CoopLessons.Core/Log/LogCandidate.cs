using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Log;

/// <summary>A planned session that is not done.</summary>
/// <param name="Order">Its place in the plan of its day, from 0.</param>
public sealed record OpenSession(Guid Id, DateOnly Date, int Order);

/// <summary>Something that may be logged, with everything an entry needs.</summary>
/// <param name="Times">Each child once; may be empty only where the family has no children.</param>
/// <param name="Names">Further words by which it is found: its children and subjects.</param>
public sealed record LogCandidate(
    string What, Place Place, IReadOnlyList<LearnerTime> Times, IReadOnlyList<SubjectWeight> Split, IReadOnlyList<Guid> Touches, IReadOnlyList<string> Names)
{
    /// <summary>Where it is planned; taking it makes the entry that session's.</summary>
    public OpenSession? Session { get; init; }

    /// <summary>Where it was done before.</summary>
    public PastThing? Past { get; init; }

    /// <summary>Where it is a subject alone: its place among the family's subjects.</summary>
    public int? Subject { get; init; }

    /// <summary>The folded words of which every typed word must begin one.</summary>
    public IReadOnlyList<string> Words { get; } = [.. FoldedWords.Of(What).Concat(Names.SelectMany(FoldedWords.Of)).Distinct()];

    internal string Key { get; } = FoldedWords.Key(What);
}
