using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Evidence;

/// <summary>What a family has of one subject of a learner between two dates.</summary>
/// <param name="Pieces">Its samples of those days, in order.</param>
/// <param name="Missing">What is not there, in sentences.</param>
public sealed record SubjectEvidence(SubjectAsked Subject, SubjectFacts Facts, IReadOnlyList<Piece> Pieces, IReadOnlyList<string> Missing)
{
    /// <summary>Facts in sentences, as they stand beside a parent’s.</summary>
    public IReadOnlyList<string> Sentences => Subject.Topic ? NarrativeFacts.OfTopic(Subject.ReadAs) : NarrativeFacts.Of(Facts);

    /// <param name="pieces">All of the learner's pieces of those days.</param>
    public static SubjectEvidence Of(LearnerStanding standing, HoursLedger ledger, SubjectAsked subject, DayRange days, IReadOnlyList<Piece> pieces)
    {
        var facts = SubjectFacts.Of(ledger, subject.Family, days);
        List<Piece> mine = [.. pieces.Where(p => days.Contains(p.Date) && p.SubjectId is { } id && subject.Family.Contains(id))];
        var missing = subject.Family.Count == 0
            ? [$"None of your own subjects is read as {subject.Name} yet: say which under Family, Law."]
            : subject.Topic ? []
            : WhatIsMissing.Of(subject.Name, facts, [.. mine.Select(p => p.Date)], mine.Count(p => p.Caption.Length == 0), standing.Question.AsOf, standing.Law.Year.Calendar.IsTeachingDay);
        return new SubjectEvidence(subject, facts, mine, missing);
    }

    /// <summary>A learner's pieces of some days, in the order in which they were taken.</summary>
    public static async Task<IReadOnlyList<Piece>> PiecesOfAsync(AppDb db, Guid learnerId, DayRange days, CancellationToken ct) =>
        // Whose a piece is stands in a list of its own row, which the database does not search.
        [.. (await db.PiecesInAsync(days, ct)).Where(p => p.Learners.Contains(learnerId))];

    /// <summary>The samples that stand for the days where nobody chose: work of this learner alone, or what was set aside.</summary>
    public IReadOnlyList<Piece> Proposed()
    {
        if (Subject.Topic)
            return [];
        var fit = Pieces.Where(p => p.SetAside || p.Learners.Count == 1).Where(p => !p.FacesOut).ToList();
        var chosen = SampleSpread.Choose(fit.Select(p => new SampleCandidate(p.Id, p.Date, p.SetAside, p.Caption.Length > 0)), Facts.Asked).ToHashSet();
        return [.. Pieces.Where(p => chosen.Contains(p.Id))];
    }
}
