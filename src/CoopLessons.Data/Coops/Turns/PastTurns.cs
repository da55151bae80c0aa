using CoopLessons.Core.Hours;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>What families did above or below their fair share before a day.</summary>
public static class PastTurns
{
    /// <summary>
    /// In hundredths of a weighted turn; a family that never took part is not in it. Term after term: what was done there is
    /// divided evenly among the families of that term, with what they brought along. What was called off was done by nobody,
    /// and a place that stayed empty is nobody's debt.
    /// </summary>
    /// <param name="before">Exclusive.</param>
    public static async Task<IReadOnlyDictionary<Guid, int>> OfAsync(AppDb db, Guid coopId, DateOnly before, CancellationToken ct)
    {
        var terms = await db.TurnTerms.AsNoTracking().Where(t => t.CoopId == coopId && t.First < before).OrderBy(t => t.First).ToListAsync(ct);
        var turns = await (
            from turn in db.CoopTurns.AsNoTracking()
            join meeting in db.CoopMeetings.AsNoTracking() on new { turn.CoopId, Id = turn.MeetingId } equals new { meeting.CoopId, meeting.Id }
            where turn.CoopId == coopId && meeting.CalledOffAt == null && meeting.On < before
            select new { turn.TermId, turn.FamilyId, turn.Weight }).ToListAsync(ct);
        var past = new Dictionary<Guid, int>();
        foreach (var term in terms)
        {
            var done = turns.Where(t => t.TermId == term.Id).ToList();
            var families = term.Families.Select(f => f.Id).Union(done.Select(t => t.FamilyId)).Order().ToList();
            if (families.Count == 0)
                continue;
            var pool = checked(100 * done.Sum(t => t.Weight) + families.Sum(f => past.GetValueOrDefault(f)));
            var fair = LargestRemainder.Divide(Math.Abs(pool), [.. families.Select(_ => 1)]);
            for (var i = 0; i < families.Count; i++)
                past[families[i]] = 100 * done.Where(t => t.FamilyId == families[i]).Sum(t => t.Weight) + past.GetValueOrDefault(families[i]) - Math.Sign(pool) * fair[i];
        }

        return past;
    }
}
