using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Evidence;

/// <summary>What was planned for a learner in a term, and what of it the log of that term bears out.</summary>
internal static class TermPlan
{
    /// <param name="ledger">The learner's, of the term alone: what others did without this learner, or what was done on a day outside the term, was not done here.</param>
    public static async Task<IReadOnlyList<PlannedThing>> OfAsync(AppDb db, HoursLedger ledger, DayRange days, CancellationToken ct)
    {
        var (first, last) = (days.First, days.Last);
        var logged = ledger.Entries.Select(e => e.Id).ToHashSet();
        var work = (await db.WorkAsync(db.PlannedSessions.AsNoTracking().Where(s => s.Date >= first && s.Date <= last), ct))
            .Where(w => w.Session.Learners.Contains(ledger.LearnerId)).ToList();
        var steps = work.Where(w => w.Loop is not null).GroupBy(w => w.Loop!).SelectMany(g => InTurn(g.Key, [.. g.Select(w => w.Session)])).ToDictionary();
        return
        [
            .. work.Select(w => new PlannedThing(
                w.Session.Date,
                steps.TryGetValue(w.Session.Id, out var step) ? new HashSet<Guid> { step.SubjectId } : w.Split.Split.Select(s => s.SubjectId).ToHashSet(),
                w.Session.State == SessionState.Done && w.Session.EntryId is { } entry && logged.Contains(entry))),
        ];
    }

    /// <summary>
    /// The step that each sitting of a loop was meant for, had every sitting taken place: the list goes on from one to the next,
    /// done or not, and is taken up anew at each step that was done. Where the bookmark stands today says nothing of a term.
    /// </summary>
    /// <param name="sittings">In their order.</param>
    private static IEnumerable<KeyValuePair<Guid, LoopStep>> InTurn(LessonLoop loop, IReadOnlyList<PlannedSession> sittings)
    {
        int? Done(PlannedSession sitting) => sitting is { State: SessionState.Done, StepId: { } id } && loop.Steps.FindIndex(s => s.Id == id) is var at and >= 0 ? at : null;
        var count = loop.Steps.Count;
        var known = sittings.Index().FirstOrDefault(s => Done(s.Item) is not null);
        // Those before the first that was done are counted back from it.
        var next = known.Item is null ? 0 : ((Done(known.Item)!.Value - known.Index) % count + count) % count;
        foreach (var sitting in sittings)
        {
            var at = Done(sitting) ?? next;
            yield return new(sitting.Id, loop.Steps[at]);
            next = (at + 1) % count;
        }
    }
}
