using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Requirements;

/// <summary>
/// A learner's log beside what the law asks in a school year: the only way by which pages, papers and commands come
/// to a standing.
/// </summary>
/// <param name="Standings">One for each pathway that meets the year, in order; empty where none was chosen.</param>
public sealed record LearnerStanding(LawOfLearner Law, StandingQuestion Question, IReadOnlyList<PathwayStanding> Standings)
{
    /// <summary>The pathway of today; where the year is over, its last; null where none was chosen.</summary>
    public PathwayStanding? Now => Standings.FirstOrDefault(s => s.Span.Holds(Question.AsOf)) ?? (Standings.Count > 0 ? Standings[^1] : null);

    /// <summary>The same for a paper; null where no pathway was chosen for any day of the year.</summary>
    public LawSection? Section => LawSection.Of(Question, Standings, [.. Law.LostInYear.Select(l => l.PaperWords)]);

    /// <param name="log">The learner's log of the school year, read again only where the law counts other days.</param>
    public static async Task<LearnerStanding> LoadAsync(AppDb db, LearnerYear log, SchoolYear year, DateOnly today, CancellationToken ct)
    {
        var law = await LawOfLearner.LoadAsync(db, log.Learner, year, ct);
        var reach = LegalWindow.Reach(law.InYear, year.Days);
        var counted = reach == log.Ledger.Period ? log : (await LearnerYear.LoadAsync(db, log.Learner.Id, reach, ct))!;
        return Of(law, counted with { Days = log.Days }, year, today);
    }

    /// <summary>All learners who are not set aside, in the family's order, from one reading of the log.</summary>
    public static async Task<IReadOnlyList<LearnerStanding>> LoadAllAsync(AppDb db, Family family, SchoolYear year, DateOnly today, CancellationToken ct)
    {
        var laws = await LawOfLearner.LoadAllAsync(db, year, ct);
        var reach = LegalWindow.Reach(laws.SelectMany(l => l.InYear), year.Days);
        var ledgers = await LearnerYear.LedgersAsync(db, laws.Select(l => l.Learner.Id), reach, ct);
        var marks = (await db.DayMarks.AsNoTracking().Where(m => m.Date >= reach.First && m.Date <= reach.Last).ToListAsync(ct)).ToLookup(m => m.LearnerId);
        var minimum = new Minutes((await db.SealedYearOfAsync(year.Days, ct))?.MinimumDay ?? family.MinimumDay);
        return [.. laws.Zip(ledgers, (law, ledger) =>
            Of(law, new StandingQuestion(law.Learner, ledger, marks[law.Learner.Id].ToDictionary(m => m.Date, m => m.Counts), minimum, year.Calendar, today)))];
    }

    /// <summary>The standings of a log that was read over at least <see cref="LegalWindow.Reach"/>.</summary>
    public static LearnerStanding Of(LawOfLearner law, LearnerYear log, SchoolYear year, DateOnly today) =>
        Of(law, new StandingQuestion(law.Learner, log.Ledger, log.Marks, log.Days.Minimum, year.Calendar, today));

    private static LearnerStanding Of(LawOfLearner law, StandingQuestion question) =>
        new(law, question, [.. law.InYear.Select(s => PathwayStanding.Of(question, s))]);

    /// <summary>What the law's subjects have had so far under one of the pathways.</summary>
    public async Task<IReadOnlyList<SubjectCoverage>> CoverageAsync(AppDb db, PathwaySpan span, CancellationToken ct)
    {
        var today = Question.AsOf;
        var sessions = await db.WorkAsync(db.PlannedSessions.Where(s => s.State == SessionState.Planned && s.Date >= today).AsNoTracking(), ct);
        var planned = sessions.Where(w => w.Session.Learners.Contains(Law.Learner.Id)).SelectMany(Credits).ToList();
        return SubjectCoverage.Of(Question, span, planned, await OpenAsync(db, today, ct));
    }

    private static IEnumerable<PlannedCredit> Credits(PlannedWork work)
    {
        var split = work.Split.Split;
        if (split.Count == 0)
            return [];
        var parts = LargestRemainder.Divide(work.Minutes, [.. split.Select(s => s.Weight)]);
        return split.Select((s, i) => new PlannedCredit(work.Session.Date, s.SubjectId, new Minutes(parts[i])));
    }

    // Units that run today or are still to come, less what this learner has done of them.
    private async Task<IReadOnlyList<OpenActivity>> OpenAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        var units = (await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).Where(u => u.StartsOn != null).AsSplitQuery().ToListAsync(ct))
            .Where(u => u.StartsOn!.Value.AddDays(7 * u.Weeks) > today).ToList();
        var ids = units.SelectMany(u => u.Activities).Select(a => a.Id).ToList();
        var done = (await db.PlannedSessions.AsNoTracking().Where(s => s.State == SessionState.Done && s.ActivityId != null && ids.Contains(s.ActivityId.Value)).ToListAsync(ct))
            .Where(s => s.Learners.Contains(Law.Learner.Id)).Select(s => s.ActivityId!.Value).ToHashSet();
        return [.. units.SelectMany(u => u.InPlan().Where(a => !done.Contains(a.Id)).Select(a => Open(u, a)))];
    }

    private static OpenActivity Open(Unit unit, Activity activity)
    {
        var split = activity.Split(unit.LeftOut)!;
        return new OpenActivity(
            activity.Id, activity.Title, unit.Title, new Minutes(activity.HandsOnMinutes), activity.AdultNeed != AdultNeed.Alone,
            split.Split.Select(s => s.SubjectId).ToHashSet(), split.Touches.ToHashSet());
    }
}
