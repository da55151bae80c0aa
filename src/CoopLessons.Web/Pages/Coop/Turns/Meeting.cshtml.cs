using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using RotaWords = CoopLessons.Core.Coop.CoopWords;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>Who has which turn at a meeting and who is missing; a leader has the rota healed from there on.</summary>
public sealed class MeetingTurnsModel(AppDb db, TimeProvider clock, LayoutLine line, CoopWork work) : RotaJobPage(db, clock, line)
{
    [BindProperty(SupportsGet = true, Name = "meetingId")]
    public Guid MeetingId { get; set; }

    public override string Address => $"/coop/{CoopId}/turns/meeting/{MeetingId}";

    public CoopMeeting Meeting { get; private set; } = null!;

    public TurnTerm? Term { get; private set; }

    public IReadOnlyList<CoopTurn> Turns { get; private set; } = [];

    public IReadOnlyList<AdultAway> Away { get; private set; } = [];

    /// <summary>For whom this family may say that they are away: its own, and a leader for all.</summary>
    public IReadOnlyList<CoopAdult> MaySay { get; private set; } = [];

    public IReadOnlyDictionary<Guid, string> FamilyNames { get; private set; } = new Dictionary<Guid, string>();

    public IReadOnlyList<CoopAdult> Adults { get; private set; } = [];

    /// <summary>Who has a turn here and is away, or is no longer there.</summary>
    public IReadOnlyList<CoopTurn> Missing => [.. Turns.Where(t => Away.Any(a => a.AdultId == t.AdultId) || Adults.All(a => a.Id != t.AdultId))];

    public bool CanHeal => Mine.Leads && Term is not null && Meeting.Stands && Meeting.On >= Today;

    public HealedOutcome? Outcome => Mine.Leads ? Job?.Result as HealedOutcome : null;

    public IReadOnlyList<string> Changes { get; private set; } = [];

    public IReadOnlyList<OpenPlace> OpenPlaces { get; private set; } = [];

    public bool IsStale { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        IsStale = Outcome is { } outcome && (await ReadAsync())?.Print != outcome.AtHand.Print;
        return Page();
    }

    public async Task<IActionResult> OnGetProgressAsync() => await FindAsync() ? this.Progress(Waiting) : NotFound();

    /// <param name="away">Ids of those who are away, of those for whom this family may say it.</param>
    public async Task<IActionResult> OnPostAwayAsync(List<Guid> away)
    {
        if (!await FindAsync())
            return NotFound();
        if (away.Any(id => MaySay.All(a => a.Id != id)))
            return NotFound();
        foreach (var adult in MaySay)
        {
            var row = await Db.AdultsAway.SingleOrDefaultAsync(a => a.CoopId == CoopId && a.MeetingId == MeetingId && a.AdultId == adult.Id, Ct);
            if (row is not null && !away.Contains(adult.Id))
                Db.AdultsAway.Remove(row);
            if (row is null && away.Contains(adult.Id))
                Db.AdultsAway.Add(new AdultAway(adult, MeetingId, Mine.Name));
        }

        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say("Saved. All families see who is away.");
        return LocalRedirect(Address);
    }

    public async Task<IActionResult> OnPostAskAsync(bool longer)
    {
        if (!await FindAsync())
            return NotFound();
        if (!Mine.Leads)
            return Forbid();
        if (!CanHeal)
            return Refused("Turns are given anew for a meeting of a rota that stands and is still to come.");
        if (work.AskHealing(Family.Id, CoopId, Term!.Id, MeetingId, longer ? Effort.Longer : Effort.Usual) is null)
            return Refused(Busy, StatusCodes.Status503ServiceUnavailable);
        return LocalRedirect(Address);
    }

    public async Task<IActionResult> OnPostCallOffAsync()
    {
        if (!await FindAsync())
            return NotFound();
        return Mine.Leads ? CalledOff() : Forbid();
    }

    /// <param name="job">The changes that were looked at.</param>
    public async Task<IActionResult> OnPostTakeAsync(Guid job)
    {
        ModelState.Clear();
        if (!await FindAsync())
            return NotFound();
        if (!Mine.Leads)
            return Forbid();
        if (Line.Find(CoopId, job)?.Result is not HealedOutcome outcome || outcome.From != Meeting.On || await Db.TurnTerms.SingleOrDefaultAsync(t => t.CoopId == CoopId && t.Id == outcome.TermId, Ct) is not { } term)
            return Refused("The server no longer knows these changes. Ask for them once more.", StatusCodes.Status409Conflict);
        var now = await ReadAsync();
        // A second sending finds the changes made.
        if (now is not null && now.Kept.ToHashSet().SetEquals(outcome.Healed.Rota.Turns))
            return LocalRedirect(Address);
        if (now?.Print != outcome.AtHand.Print)
            return Refused("Something that the turns depend on was changed since. Nothing was taken; ask once more.", StatusCodes.Status409Conflict);
        await RotaTaking.HealAsync(Db, term, now!, outcome.Healed.Rota, outcome.From, Ct);
        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say("The changes are made. All families see them.");
        return LocalRedirect(Address);
    }

    private async Task<RotaAtHand?> ReadAsync() => Term is { } term ? await RotaAtHand.LoadAsync(Db, CoopId, term.First, term.Last, withKept: true, Ct) : null;

    private async Task<bool> FindAsync()
    {
        if (await Db.CoopMeetings.AsNoTracking().SingleOrDefaultAsync(m => m.CoopId == CoopId && m.Id == MeetingId, Ct) is not { } meeting)
            return false;
        Meeting = meeting;
        Term = await Db.TurnTerms.AsNoTracking().SingleOrDefaultAsync(t => t.CoopId == CoopId && t.First <= meeting.On && t.Last >= meeting.On, Ct);
        Turns = (await Db.CoopTurns.AsNoTracking().Where(t => t.CoopId == CoopId && t.MeetingId == MeetingId).ToListAsync(Ct)).OrderBy(t => t.Role, StringComparer.OrdinalIgnoreCase).ThenBy(t => t.Adult, StringComparer.OrdinalIgnoreCase).ToList();
        Away = await Db.AdultsAway.AsNoTracking().Where(a => a.CoopId == CoopId && a.MeetingId == MeetingId).ToListAsync(Ct);
        FamilyNames = (await FamiliesAsync()).ToDictionary(f => f.FamilyId, f => f.Name);
        Adults = [.. (await Db.CoopAdults.AsNoTracking().Where(a => a.CoopId == CoopId && !a.Gone).ToListAsync(Ct)).Where(a => FamilyNames.ContainsKey(a.FamilyId)).OrderBy(a => FamilyNames[a.FamilyId], StringComparer.OrdinalIgnoreCase).ThenBy(a => a.Name, StringComparer.OrdinalIgnoreCase)];
        MaySay = [.. Adults.Where(a => Mine.Leads || a.FamilyId == Family.Id)];
        Job = Mine.Leads ? Line.Newest(CoopId, CoopWork.HealingKey(MeetingId)) : null;
        if (Outcome is { } outcome)
        {
            Changes = [.. outcome.Healed.Changes.Select(c => RotaWords.Change(outcome.AtHand.Problem, c))];
            OpenPlaces = [.. outcome.Healed.Rota.Gaps.Select(g => new OpenPlace(g.Meeting, g.Sentence, [.. g.Helps.Select(h => h.Sentence)]))];
        }

        return true;
    }

    /// <summary>What is known of the number of changes.</summary>
    public static string Least(HealedRota healed) => (healed.Changes.Count, healed.IsLeast) switch
    {
        (0, true) => "Nothing has to change.",
        (0, false) => "No change was found.",
        (1, true) => "One change: it is proven that none would not do.",
        (var count, true) => $"{count} changes: it is proven that fewer would not do.",
        (1, false) => "One change.",
        (var count, false) => $"{count} changes: whether fewer would do was not found out, fewer than {healed.Least} would not.",
    };
}
