using CoopLessons.Core.Families;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data.Requirements;

namespace CoopLessons.Data.Evidence;

/// <summary>A subject by the name under which a reader asks for it: the law's, or the family's own.</summary>
/// <param name="Key">The same for as long as law and family name it: <c>law-health-1-6</c>, or <c>own-</c> with the id of the family's subject.</param>
/// <param name="Family">The family's subjects that are read as it; empty for one of the law's that none is read as.</param>
/// <param name="ReadAs">Their names, where they say more than the name itself; else empty.</param>
/// <param name="ByLaw">Whether a pathway asks for it, or counts its hours.</param>
/// <param name="Topic">A matter of the law’s within other subjects: it has no minutes and no samples of its own.</param>
public sealed record SubjectAsked(string Key, string Name, IReadOnlySet<Guid> Family, string ReadAs, bool ByLaw, bool Topic = false)
{
    /// <summary>
    /// Those that the learner's present pathway asks for in the grade, or counts in a pool of hours, in the law's order; then the
    /// family's own in its order. A subject of the family that is read as one of the law's of the same name stands once, as the law's.
    /// </summary>
    public static IReadOnlyList<SubjectAsked> All(LearnerStanding standing)
    {
        var own = standing.Question.Ledger.Subjects;
        var law = standing.Now is { } now ? ByPathway(standing, now, own) : [];
        bool IsSaid(Subject subject) => law.Exists(s => s.Family.Contains(subject.Id) && string.Equals(s.Name, subject.Name, StringComparison.OrdinalIgnoreCase));
        return [.. law, .. own.Where(s => !IsSaid(s)).Select(s => new SubjectAsked($"own-{s.Id:N}", s.Name, new HashSet<Guid> { s.Id }, "", ByLaw: false))];
    }

    private static List<SubjectAsked> ByPathway(LearnerStanding standing, PathwayStanding now, IReadOnlyList<Subject> own)
    {
        var grade = standing.Question.Learner.Grade;
        var pools = now.Span.Pathway.AllRequirements.OfType<HoursRequirement>().SelectMany(h => h.Subjects ?? []).ToHashSet();
        return [.. now.Span.Pathway.Subjects.Where(s => (s.Required || pools.Contains(s.Id)) && (s.Grades is null || grade is not { } g || s.Grades.Hold(g))).Select(s =>
        {
            var family = now.Span.Choices.SubjectsFor(s.Id);
            var names = own.Where(o => family.Contains(o.Id)).Select(o => o.Name).ToList();
            var same = names.Count == 1 && string.Equals(names[0], s.Name, StringComparison.OrdinalIgnoreCase);
            return new SubjectAsked($"law-{s.Id}", char.ToUpperInvariant(s.Name[0]) + s.Name[1..], family, same ? "" : string.Join(", ", names), ByLaw: true, s.Topic);
        })];
    }
}
