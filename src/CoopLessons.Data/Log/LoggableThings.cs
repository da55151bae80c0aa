using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Log;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log;

/// <summary>Everything that a family may be about to log: what is planned this week, what it did before, and its subjects.</summary>
public static class LoggableThings
{
    /// <summary>Half a year: what was not done since then is typed anew.</summary>
    private const int DaysBack = 183;

    /// <summary>Minutes of a subject of which nothing is known.</summary>
    public const int UnknownMinutes = 40;

    /// <summary>In no particular order.</summary>
    /// <param name="today">In the family's zone.</param>
    public static async Task<IReadOnlyList<LogCandidate>> LoggableAsync(
        this AppDb db, IReadOnlyList<Learner> learners, IReadOnlyList<FamilySubject> subjects, DateOnly today, CancellationToken ct)
    {
        var home = new Household([.. learners.Where(l => !l.SetAside)], [.. subjects.Where(s => !s.Retired)]);
        var week = Week.Of(today).Days;
        var open = await db.WorkAsync(
            db.PlannedSessions.AsNoTracking().Where(s => s.Date >= week.First && s.Date <= week.Last && (s.State == SessionState.Planned || s.State == SessionState.NotDone)), ct, today);
        var past = await db.PastThingsAsync(today, ct);
        return
        [
            .. open.Select((w, i) => home.Planned(w, i)),
            .. past.Select(home.Past),
            .. home.Subjects.Select(home.Alone),
        ];
    }

    /// <summary>What was done in the last half year, up to a day.</summary>
    public static async Task<IReadOnlyList<PastThing>> PastThingsAsync(this AppDb db, DateOnly until, CancellationToken ct) =>
        PastThing.Of(await db.LoggedAsync(new DayRange(until.AddDays(-DaysBack), until), null, ct), until);

    /// <summary>The entry that a planned session would be; it names children and a subject even where the plan names none.</summary>
    public static EntryFacts AsDone(PlannedWork work, IReadOnlyList<Learner> learners, IReadOnlyList<FamilySubject> subjects) =>
        work.AsPlanned() ?? new EntryFacts(
            work.Session.Date, null, work.Title, Place.Home, "",
            [.. (work.Session.Learners.Count > 0 ? work.Session.Learners.Distinct() : learners.Select(l => l.Id)).Select(l => new LearnerTime(l, new Minutes(Math.Clamp(work.Minutes, 1, 1440))))],
            work.Split.Split.Count > 0 ? work.Split.Split : [.. subjects.Take(1).Select(s => new SubjectWeight(s.Id, 1))], work.Split.Touches);

    /// <summary>The entry that a thing of the past would be once more, with the children and subjects that the family has now.</summary>
    public static EntryFacts Again(PastThing thing, DateOnly date, IReadOnlyList<Learner> learners, IReadOnlyList<FamilySubject> subjects)
    {
        var times = thing.Times.Where(t => learners.Any(l => l.Id == t.LearnerId)).ToList();
        var split = thing.Newest.Split.Where(w => subjects.Any(s => s.Id == w.SubjectId)).ToList();
        return new EntryFacts(
            date, null, thing.What, thing.Newest.Place, "",
            times.Count > 0 ? times : [.. learners.Select(l => new LearnerTime(l.Id, new Minutes(thing.Minutes)))],
            split.Count > 0 ? split : [.. subjects.Take(1).Select(s => new SubjectWeight(s.Id, 1))],
            [.. thing.Newest.Touches.Where(t => subjects.Any(s => s.Id == t))]);
    }

    /// <summary>Those who are taught now, and the subjects in use.</summary>
    private sealed record Household(IReadOnlyList<Learner> Learners, IReadOnlyList<FamilySubject> Subjects)
    {
        public LogCandidate Planned(PlannedWork work, int order) =>
            Of(AsDone(work, Learners, Subjects)) with { Session = new OpenSession(work.Session.Id, work.Session.Date, order) };

        public LogCandidate Past(PastThing thing) => Of(Again(thing, thing.LastOn, Learners, Subjects)) with { Past = thing };

        public LogCandidate Alone(FamilySubject subject, int order) => Of(new EntryFacts(
            default, null, subject.Name, Place.Home, "", [.. Learners.Select(l => new LearnerTime(l.Id, new Minutes(UnknownMinutes)))],
            [new SubjectWeight(subject.Id, 1)], [])) with
        { Subject = order };

        private LogCandidate Of(EntryFacts facts) => new(facts.What, facts.Place, facts.Times, facts.Split, facts.Touches, Names(facts));

        private List<string> Names(EntryFacts facts) =>
        [
            .. Learners.Where(l => facts.Times.Any(t => t.LearnerId == l.Id)).Select(l => l.Name),
            .. Subjects.Where(s => facts.Split.Any(w => w.SubjectId == s.Id)).Select(s => s.Name),
        ];
    }
}
