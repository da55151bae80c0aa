using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;

namespace CoopLessons.Data.Scenario;

/// <summary>Something that was done, before anybody wrote it down.</summary>
/// <param name="From">Minutes after midnight; the entry shows them where <paramref name="IsTimed"/>.</param>
/// <param name="To">The end of the longest part, minutes after midnight.</param>
/// <param name="Untitled">What somebody in a hurry would write.</param>
internal sealed record Line(
    DateOnly Date,
    int From,
    int To,
    bool IsTimed,
    string What,
    string Untitled,
    Place Place,
    string Note,
    IReadOnlyList<LearnerTime> Times,
    IReadOnlyList<SubjectWeight> Split,
    IReadOnlyList<Guid> Touches,
    PlacedActivity? Placed)
{
    public EntryFacts Facts => new(Date, IsTimed ? From : null, What, Place, Note, Times, Split, Touches);
}

/// <summary>A second writing of an entry: other facts, or, with none, its removal.</summary>
internal sealed record Rewriting(EntryFacts? Facts, Author Author, DateTime At, string Why);

/// <summary>An entry ready to be written.</summary>
internal sealed record Draft(Guid Id, EntryFacts Facts, Author Author, DateTime At, Rewriting? Again, PlacedActivity? Placed)
{
    /// <summary>The entry with all its revisions; given a session, it is the entry that says the session was done.</summary>
    public LogEntry ToEntry(Schedule.PlannedSession? session)
    {
        var entry = session?.MarkDone(Id, Facts, Author, At) ?? LogEntry.Write(Id, Facts, Author, At);
        if (Again is { Facts: { } facts })
            entry.Change(facts, Again.Author, Again.At, Again.Why);
        else if (Again is not null)
            entry.Remove(entry.Revisions[^1], Again.Author, Again.At, Again.Why);
        return entry;
    }
}
