using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Requirements.Papers;

/// <summary>
/// What the law asks of a learner beside what the family logged, ready to be written in any form. The same log, law and
/// day give the same section.
/// </summary>
/// <param name="AsOf">The day on which it stands so: that of the report.</param>
/// <param name="Pathways">One for each that meets the school year, in order.</param>
/// <param name="Unread">Sentences on pathways of the year that were chosen and are no longer known.</param>
public sealed record LawSection(DateOnly AsOf, IReadOnlyList<PathwaySheet> Pathways, IReadOnlyList<string> Unread)
{
    /// <param name="standings">As measured for <paramref name="asked"/>.</param>
    /// <returns>Null where no pathway was chosen.</returns>
    public static LawSection? Of(StandingQuestion asked, IReadOnlyList<PathwayStanding> standings, IReadOnlyList<string> unread) =>
        standings.Count == 0 && unread.Count == 0 ? null : new LawSection(asked.AsOf, [.. standings.Select(s => PathwaySheet.Of(asked, s))], unread);
}

/// <summary>A subject of the pathway with the family's subjects that are read as it.</summary>
/// <param name="Pools">Names of the figures in whose pool it stands where it is not asked by itself; else empty.</param>
/// <param name="Family">Names in the family's order; empty for none.</param>
public sealed record SubjectLine(string Name, IReadOnlyList<string> Pools, IReadOnlyList<string> Family, Source Source)
{
    /// <summary>The subjects that are asked of the learner's grade, those of all grades where none is set, and those in a pool of hours; in the pathway's order.</summary>
    internal static IReadOnlyList<SubjectLine> Of(StandingQuestion asked, PathwaySpan span)
    {
        var pools = span.Pathway.AllRequirements.OfType<HoursRequirement>()
            .SelectMany(h => (h.Subjects ?? []).Select(id => (Id: id, h.Name))).ToLookup(p => p.Id, p => p.Name);
        return [.. span.Pathway.Subjects
            .Select(s => (Subject: s, Asked: s.Required && (s.Grades is null || asked.Learner.Grade is not { } grade || s.Grades.Hold(grade))))
            .Where(s => s.Asked || pools.Contains(s.Subject.Id))
            .Select(s => new SubjectLine(
                s.Subject.Name,
                s.Asked ? [] : [.. pools[s.Subject.Id].Distinct()],
                [.. asked.Ledger.Subjects.Where(own => span.Choices.SubjectsFor(s.Subject.Id).Contains(own.Id)).Select(own => own.Name)],
                s.Subject.Source))];
    }
}
