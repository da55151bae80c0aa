using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Data.Planning;

/// <summary>What a move by hand breaks. It is told and never forbidden.</summary>
public static class HandMoves
{
    /// <summary>Sentences on the rules that a session breaks where it stands now; empty where it has no hour, or lies behind.</summary>
    public static async Task<IReadOnlyList<string>> BreaksAsync(AppDb db, Guid sessionId, DateOnly day, DateOnly today, CancellationToken ct)
    {
        var ask = WeekAsk.Plain with { PlannedOnly = true };
        if (await WeekReading.LoadAsync(db, Week.Of(day), today, 0, ask, ct) is not { } week)
            return [];
        var places = week.Wanted.Where(w => w.Session is { StartsAt: not null } s && week.Problem.Days.Contains(s.Date)).Select(w => PlaceOf(week, w.Session!)).ToList();
        return
        [
            .. PlanCheck.Faults(week.Problem, places).Where(f => f.SessionId == sessionId || f.With.Contains(sessionId)).Select(f => f.Sentence).Distinct(),
        ];
    }

    private static Placing PlaceOf(WeekAtHand week, PlannedSession session)
    {
        var problem = week.Problem.Sessions.First(s => s.Id == session.Id);
        var over = session.StartsAt!.Value + problem.Minutes;
        // Where no hour was set for the look, somebody looks when the wait is over.
        return new Placing(session.Id, session.Date, session.StartsAt.Value, problem.Wait is { } wait ? session.LooksAt ?? over + wait.Minutes : null, Hands(week, session), null);
    }

    private static Guid? Hands(WeekAtHand week, PlannedSession session) => week.Adults.Any(a => a.Id == session.AdultId) ? session.AdultId : null;
}
