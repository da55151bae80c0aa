using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

public static partial class PlanCheck
{
    /// <summary>What the placings cost, whether they are valid or not. Of a session that stands twice the first place counts; unknown ones do not.</summary>
    public static PlanCost Cost(WeekProblem problem, IReadOnlyList<Placing> placings)
    {
        var laid = problem.Sessions
            .Select(s => (Session: s, Place: placings.FirstOrDefault(p => p.SessionId == s.Id)))
            .ToList();
        var leftOut = laid.Where(l => l.Place is null).Sum(l => l.Session.Weight switch { Weight.AboveAll => 25, Weight.Usual => 5, _ => 1 });
        var moved = laid.Count(l => l.Session is { Was: { } was, Fixed: false } && l.Place?.Day != was.Day);
        var unmet = laid.Count(l => l.Session.Wish?.Day is { } day && l.Place?.Day.DayOfWeek != day)
            + laid.Count(l => l.Session.Wish is { Morning: true } && (l.Place is null || l.Place.StartsAt + l.Session.Minutes > 720));

        var placed = laid.Where(l => l.Place is not null).Select(l => (l.Session, l.Place!.Day)).ToList();
        var uneven = problem.Learners.Sum(learner =>
        {
            var own = placed.Where(p => p.Session.Learners.Contains(learner.Id)).ToList();
            var all = problem.Sessions.Where(s => s.Learners.Contains(learner.Id)).ToList();
            return Unevenness(problem, [learner.Free], all.Sum(Work), day => own.Where(p => p.Day == day).Sum(p => Work(p.Session)))
                + Crowding(problem, learner, all, own);
        });
        uneven += Unevenness(problem, [.. problem.Adults.Select(a => a.Free)], problem.Sessions.Sum(WorkOfHands), day => placed.Where(p => p.Day == day).Sum(p => WorkOfHands(p.Session)));
        return new PlanCost(leftOut, moved, uneven, unmet);
    }

    // In units of five minutes, begun ones counted whole.
    private static int Fives(int minutes) => (int)Math.Ceiling(minutes / 5m);

    private static int Work(WeekSession session) => Fives(session.Minutes) + Fives(session.Wait?.LookMinutes ?? 0);

    private static int WorkOfHands(WeekSession session) => (session.Need == AdultNeed.HandsOn ? Fives(session.Minutes) : 0) + Fives(session.Wait?.LookMinutes ?? 0);

    private static int FreeFives(FreeTime free, DateOnly day) => free.On(day).Sum(s => Math.Max(0, s.To / 5 - Fives(s.From)));

    private static int Unevenness(WeekProblem problem, IReadOnlyList<FreeTime> free, int work, Func<DateOnly, int> done)
    {
        var all = problem.Days.Sum(d => free.Sum(f => FreeFives(f, d)));
        return problem.Days.Sum(day =>
        {
            var share = all == 0 ? 0 : (int)Math.Round((decimal)work * free.Sum(f => FreeFives(f, day)) / all, MidpointRounding.AwayFromZero);
            return Math.Max(0, Math.Abs(done(day) - share) - 6);
        });
    }

    private static int Crowding(WeekProblem problem, WeekLearner learner, List<WeekSession> all, List<(WeekSession Session, DateOnly Day)> own)
    {
        var days = Math.Max(1, problem.Days.Count(d => FreeFives(learner.Free, d) > 0));
        return all.Where(s => s.Subject is not null).GroupBy(s => s.Subject, StringComparer.Ordinal).Sum(subject =>
        {
            var share = (int)Math.Ceiling(subject.Count() / (decimal)days);
            return 6 * problem.Days.Sum(day => Math.Max(0, own.Count(p => p.Day == day && p.Session.Subject == subject.Key) - share));
        });
    }
}
