namespace CoopLessons.Core.Requirements;

/// <summary>A family's subject with the code by which it is recognised.</summary>
public sealed record CodedSubject(Guid Id, string Code);

/// <summary>The family's word on whether one of its subjects counts for one of the statute's.</summary>
/// <param name="StatuteSubject">The id of the pathway's subject.</param>
public sealed record SubjectDecision(string StatuteSubject, Guid Subject, bool Counts);

/// <summary>Which of a family's subjects stand behind each subject of a pathway: proposed by code, decided by the family.</summary>
public static class SubjectProposal
{
    /// <summary>Whether the catalog proposes the subject; a proposal is common practice, no source.</summary>
    public static bool Proposes(StatuteSubject statute, CodedSubject subject) => statute.Like.Contains(subject.Code);

    /// <summary>
    /// The ids of the family's subjects by the id of the pathway's, one entry for each of the pathway's subjects, empty
    /// where nothing stands behind it. A decision wins over the proposal both ways; one about a subject that the
    /// pathway or the family no longer has says nothing, and of two about the same pair the later in the list holds.
    /// </summary>
    public static IReadOnlyDictionary<string, IReadOnlySet<Guid>> Of(Pathway pathway, IReadOnlyCollection<CodedSubject> subjects, IEnumerable<SubjectDecision> decisions)
    {
        var decided = new Dictionary<(string, Guid), bool>();
        foreach (var decision in decisions)
            decided[(decision.StatuteSubject, decision.Subject)] = decision.Counts;
        return pathway.Subjects.ToDictionary(
            statute => statute.Id,
            statute => (IReadOnlySet<Guid>)subjects
                .Where(s => decided.TryGetValue((statute.Id, s.Id), out var counts) ? counts : Proposes(statute, s))
                .Select(s => s.Id).ToHashSet());
    }
}
