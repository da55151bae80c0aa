using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;

namespace CoopLessons.Data.Evidence;

/// <summary>One subject in a term as log and plan hold it.</summary>
public sealed record TermSubject(SubjectAsked Subject, SubjectFacts Facts, MaterialCovered Covered)
{
    /// <summary>A matter within other subjects has none of its own.</summary>
    public TermFigures Figures => Subject.Topic ? new(0, 0, 0, 0, Subject.ReadAs, Topic: true) : new(Facts.Minutes.Value, Facts.Days, Covered.Planned, Covered.Done, Subject.ReadAs);

    /// <summary>What a report begins with before anybody wrote into it.</summary>
    /// <param name="before">The law’s name of a subject that is read as the same ones of the family’s and stands before it; null where none does.</param>
    public TermSubjectTold Drafted(string learner, string? before = null) => new(
        Subject.Key, Subject.Name, null, "", TermWords.Progress(learner, Facts) is not { Length: > 0 } progress || Subject.Topic ? "" : before is null ? progress : $"As under {before}.", "");
}

/// <summary>A learner's term as log and plan hold it: the only way by which reports come to their figures.</summary>
/// <param name="Log">Of the term alone.</param>
/// <param name="Standing">Of the school year, under the law as it was on the term's last day, or is today where the term still runs.</param>
/// <param name="Subjects">Those that the law asks for; where it names none, the family's own of which something is there.</param>
public sealed record TermAtHand(LearnerYear Log, SchoolYear Year, LearnerStanding Standing, DayRange Days, IReadOnlyList<TermSubject> Subjects)
{
    public TermTotals Totals(string family) => new(
        Log.Ledger.Total.Value, Log.Days.Strict, Log.Ledger.Entries.Count, LogFingerprint.Of(Log.Ledger),
        new TermHeading(family, Log.Learner.Name, Year.Name, Standing.Law.Learner.Grade is { } grade ? new Level(grade).Name : "", Standing.Now?.Span.Named ?? ""));

    public string Fingerprint => LogFingerprint.Of(Log.Ledger);

    /// <summary>Null where the family has no such learner.</summary>
    public static async Task<TermAtHand?> LoadAsync(AppDb db, Guid learnerId, SchoolYear year, DayRange days, DateOnly today, CancellationToken ct)
    {
        if (await LearnerYear.LoadAsync(db, learnerId, year.Days, ct) is not { } whole || await LearnerYear.LoadAsync(db, learnerId, days, ct) is not { } term)
            return null;
        var standing = await LearnerStanding.LoadAsync(db, whole, year, days.Last < today ? days.Last : today, ct);
        var plan = await TermPlan.OfAsync(db, term.Ledger, days, ct);
        var all = SubjectAsked.All(standing).Select(s => new TermSubject(s, SubjectFacts.Of(term.Ledger, s.Family, days), MaterialCovered.Of(plan, s.Family, days))).ToList();
        var law = all.FindAll(s => s.Subject.ByLaw);
        return new TermAtHand(term, year, standing, days, law.Count > 0 ? law : all.FindAll(s => s.Facts.Days + s.Facts.Touched + s.Covered.Planned > 0));
    }

    /// <summary>What is told of each subject now: as it was written, and a draft of those of which nothing was.</summary>
    public IReadOnlyList<TermSubjectTold> Told(TermReport report)
    {
        var told = report.Subjects.ToDictionary(s => s.Key);
        return [.. Subjects.Select(s => told.GetValueOrDefault(s.Subject.Key) ?? s.Drafted(Log.Learner.Name, Before(s)))];
    }

    /// <summary>What was written of subjects that the term no longer has, since the law or the grade was changed: a draft keeps it.</summary>
    public IEnumerable<TermSubjectTold> Unshown(TermReport report) => report.Subjects.Where(t => Subjects.All(s => s.Subject.Key != t.Key));

    /// <summary>What was told, with every figure as it stands now.</summary>
    /// <param name="told">One for each subject, in their order.</param>
    public IReadOnlyList<TermSubjectTold> Fixed(IEnumerable<TermSubjectTold> told) => [.. told.Zip(Subjects, (t, s) => t with { Fixed = s.Figures })];

    private string? Before(TermSubject subject) => subject.Subject.Family.Count == 0 ? null
        : Subjects.TakeWhile(s => s != subject).FirstOrDefault(s => !s.Subject.Topic && s.Subject.Family.SetEquals(subject.Subject.Family))?.Subject.Name;
}
