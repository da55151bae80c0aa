using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>Minutes that the plan still holds for a learner in one of the family's subjects.</summary>
public sealed record PlannedCredit(DateOnly Date, Guid SubjectId, Minutes Minutes);

/// <summary>An activity of a present unit that the learner has not done.</summary>
/// <param name="Subjects">The family's subjects to which its minutes go.</param>
/// <param name="Touches">Those that it meets in passing.</param>
public sealed record OpenActivity(Guid Id, string Title, string Unit, Minutes Minutes, bool NeedsAdult, IReadOnlySet<Guid> Subjects, IReadOnlySet<Guid> Touches);

/// <summary>How far one subject that the law asks for has been met.</summary>
/// <param name="Family">The family's subjects that count for it; empty where none is matched.</param>
/// <param name="Days">Days on which it was taught or touched.</param>
/// <param name="Touches">Entries that met it in passing.</param>
/// <param name="LastMet">The last day on which it was taught or touched; null for never.</param>
/// <param name="Quiet">Never met, or not for three weeks, with nothing planned ahead (three weeks: common practice, no source).</param>
/// <param name="Fill">The cheapest activity left that would meet it: fewest minutes, without an adult before with one; only where it is quiet.</param>
public sealed record SubjectCoverage(
    StatuteSubject Subject,
    IReadOnlySet<Guid> Family,
    Minutes Logged,
    Minutes Planned,
    int Days,
    int Touches,
    DateOnly? LastMet,
    bool Quiet,
    OpenActivity? Fill)
{
    public const int QuietDays = 21;

    /// <summary>The subjects that a pathway asks of the learner's grade, in the law's order. Where no grade is set, those of all grades.</summary>
    /// <param name="planned">What the plan holds after today.</param>
    public static IReadOnlyList<SubjectCoverage> Of(StandingQuestion asked, PathwaySpan span, IReadOnlyList<PlannedCredit> planned, IReadOnlyList<OpenActivity> open)
    {
        if (LegalWindow.Of(asked.Learner, span, asked.School, asked.AsOf).Counted is not { } days)
            return [];
        return [.. span.Pathway.Subjects.Where(s => s.Required && (s.Grades is null || asked.Learner.Grade is not { } grade || s.Grades.Hold(grade)))
            .Select(s => One(s, asked, span.Choices.SubjectsFor(s.Id), days, planned, open))];
    }

    private static SubjectCoverage One(
        StatuteSubject subject, StandingQuestion asked, IReadOnlySet<Guid> family, DayRange days, IReadOnlyList<PlannedCredit> planned, IReadOnlyList<OpenActivity> open)
    {
        var taught = asked.Ledger.Credits.Where(c => days.Contains(c.Date) && c.Minutes > Minutes.Zero && family.Contains(c.SubjectId)).ToList();
        var touched = asked.Ledger.Touches.Where(t => days.Contains(t.Date) && family.Contains(t.SubjectId)).ToList();
        var met = taught.Select(c => c.Date).Concat(touched.Select(t => t.Date)).Where(d => d <= asked.AsOf).Distinct().ToList();
        DateOnly? last = met.Count > 0 ? met.Max() : null;
        var ahead = planned.Where(p => days.Contains(p.Date) && family.Contains(p.SubjectId)).Select(p => p.Minutes).Sum();
        var quietSince = last ?? days.First;
        var quiet = family.Count > 0 && ahead == Minutes.Zero && asked.AsOf <= days.Last && asked.AsOf.DayNumber - quietSince.DayNumber >= QuietDays;
        var fill = quiet
            ? open.Where(a => a.Subjects.Overlaps(family)).OrderBy(a => a.Minutes).ThenBy(a => a.NeedsAdult).FirstOrDefault()
                ?? open.Where(a => a.Touches.Overlaps(family)).OrderBy(a => a.Minutes).ThenBy(a => a.NeedsAdult).FirstOrDefault()
            : null;
        return new SubjectCoverage(subject, family, taught.Select(c => c.Minutes).Sum(), ahead, met.Count, touched.Select(t => t.EntryId).Distinct().Count(), last, quiet, fill);
    }
}
