using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Turns;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using RotaWords = CoopLessons.Core.Coop.CoopWords;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A turn of the family that looks.</summary>
public sealed record OwnTurn(DateOnly On, Guid MeetingId, string Adult, string Role);

/// <summary>The rota of a term: who has which role when, why, and what each family did beside its share. Open to all.</summary>
public sealed class TurnsModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public const int OwnShown = 5;

    /// <summary>Newest first.</summary>
    public IReadOnlyList<TurnTerm> Terms { get; private set; } = [];

    public TurnTerm? Term { get; private set; }

    public TurnTable? Table { get; private set; }

    public IReadOnlyList<OwnTurn> Own { get; private set; } = [];

    public IReadOnlyList<string> Balances { get; private set; } = [];

    public bool HasRoles { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid? termId)
    {
        Terms = await Db.TurnTerms.AsNoTracking().Where(t => t.CoopId == CoopId).OrderByDescending(t => t.First).ToListAsync(Ct);
        var roles = await Db.TurnRoles.AsNoTracking().Where(r => r.CoopId == CoopId).OrderBy(r => r.Order).ThenBy(r => r.Id).ToListAsync(Ct);
        HasRoles = roles.Any(r => !r.Ended);
        if (termId is { } asked && Terms.All(t => t.Id != asked))
            return NotFound();
        Term = termId is { } id ? Terms.Single(t => t.Id == id) : Terms.LastOrDefault(t => t.Last >= Today) ?? (Terms.Count > 0 ? Terms[0] : null);
        if (Term is not { } term)
            return Page();
        var meetings = await Db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == CoopId && m.On >= term.First && m.On <= term.Last).OrderBy(m => m.On).ToListAsync(Ct);
        var ids = meetings.Select(m => m.Id).ToList();
        var turns = await Db.CoopTurns.AsNoTracking().Where(t => t.CoopId == CoopId && ids.Contains(t.MeetingId)).ToListAsync(Ct);
        var away = await Db.AdultsAway.AsNoTracking().Where(a => a.CoopId == CoopId && ids.Contains(a.MeetingId)).ToListAsync(Ct);
        Table = TurnTable.Of($"Turns from {term.First:d MMMM} to {term.Last:d MMMM yyyy}", meetings, roles, turns, away, Family.Id);
        Own =
        [
            .. from turn in turns
               where turn.FamilyId == Family.Id
               join meeting in meetings on turn.MeetingId equals meeting.Id
               where meeting.Stands && meeting.On >= Today
               orderby meeting.On, turn.Adult
               select new OwnTurn(meeting.On, meeting.Id, turn.Adult, turn.Role),
        ];
        if (meetings.Any(m => m.Stands))
        {
            var atHand = await RotaAtHand.LoadAsync(Db, CoopId, term.First, term.Last, withKept: true, Ct);
            Balances = [.. RotaCheck.Balances(atHand.Problem, atHand.Kept).Select(b => RotaWords.Balance(atHand.Problem, b))];
        }

        return Page();
    }
}
