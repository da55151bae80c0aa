using CoopLessons.Core.Coop;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>A rota that was proposed becomes the co-op's.</summary>
public static class RotaTaking
{
    /// <summary>What keeps days from getting a new rota, in a sentence; null where nothing does.</summary>
    public static async Task<string?> FaultAsync(AppDb db, Guid coopId, DateOnly first, DateOnly last, CancellationToken ct)
    {
        var beyond = await db.TurnTerms.AsNoTracking().Where(t => t.CoopId == coopId && t.First <= last && t.Last > last).OrderBy(t => t.Last).FirstOrDefaultAsync(ct);
        return beyond is null ? null : $"A rota reaches on until {beyond.Last:d MMMM yyyy}. Choose that day or a later one as the last.";
    }

    /// <summary>
    /// Keeps a rota over its days. An older one ends before it, or goes where it lies within. Saved by the caller.
    /// </summary>
    public static async Task<TurnTerm> TakeAsync(AppDb db, Guid coopId, Guid id, RotaAtHand atHand, Rota rota, DateOnly first, DateOnly last, string by, DateTime now, CancellationToken ct)
    {
        var ids = atHand.Meetings.Select(m => m.Id).ToList();
        db.CoopTurns.RemoveRange(await db.CoopTurns.Where(t => t.CoopId == coopId && ids.Contains(t.MeetingId)).ToListAsync(ct));
        foreach (var older in await db.TurnTerms.Where(t => t.CoopId == coopId && t.First <= last && t.Last >= first).ToListAsync(ct))
        {
            if (older.First >= first)
                db.TurnTerms.Remove(older);
            else
                older.EndBefore(first);
        }

        var term = new TurnTerm(coopId, id, first, last, by, now);
        db.TurnTerms.Add(term);
        Know(term, atHand, rota);
        db.CoopTurns.AddRange(rota.Assignments.Select(a => Turn(term, atHand, a)));
        return term;
    }

    /// <summary>Keeps a rota that was healed, from its first day that could change. Saved by the caller.</summary>
    /// <param name="from">Inclusive.</param>
    public static async Task HealAsync(AppDb db, TurnTerm term, RotaAtHand atHand, Rota rota, DateOnly from, CancellationToken ct)
    {
        var ids = atHand.Meetings.Where(m => m.On >= from).Select(m => m.Id).ToList();
        var had = await db.CoopTurns.Where(t => t.CoopId == term.CoopId && ids.Contains(t.MeetingId)).ToListAsync(ct);
        var now = rota.Assignments.Where(a => a.Turn.Meeting >= from).ToList();
        // Turns that stay keep the reason for which they were given.
        foreach (var gone in had.Where(t => !now.Any(a => Same(t, a))))
            db.CoopTurns.Remove(gone);
        foreach (var come in now.Where(a => !had.Any(t => Same(t, a))))
            db.CoopTurns.Add(Turn(term, atHand, come));
        var before = term.OpenPlaces.Where(p => p.On < from).ToList();
        Know(term, atHand, rota);
        term.Know(term.Proof, term.Families, [.. before, .. term.OpenPlaces.Where(p => p.On >= from)]);

        bool Same(CoopTurn turn, RotaAssignment a) => turn.MeetingId == atHand.MeetingOn(a.Turn.Meeting) && turn.RoleId == a.Turn.Role && turn.AdultId == a.Turn.Adult;
    }

    private static void Know(TurnTerm term, RotaAtHand atHand, Rota rota) => term.Know(
        CoopWords.Proof(rota),
        atHand.Problem.Families.Select(f => new TermFamily(f.Id, f.Name)),
        rota.Gaps.Select(g => new OpenPlace(g.Meeting, g.Sentence, [.. g.Helps.Select(h => h.Sentence)])));

    private static CoopTurn Turn(TurnTerm term, RotaAtHand atHand, RotaAssignment a)
    {
        var role = atHand.Problem.Roles.Single(r => r.Id == a.Turn.Role);
        return new CoopTurn(term, atHand.MeetingOn(a.Turn.Meeting), role.Id, role.Name, role.Weight, atHand.Taker(a.Turn.Adult), CoopWords.Turn(atHand.Problem, a));
    }
}
