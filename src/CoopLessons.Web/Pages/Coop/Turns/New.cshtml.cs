using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using RotaWords = CoopLessons.Core.Coop.CoopWords;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A leader asks for the turns of some weeks, looks at them, and takes them or not.</summary>
public sealed class NewRotaModel(AppDb db, TimeProvider clock, LayoutLine line, CoopWork work) : RotaJobPage(db, clock, line)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    protected override bool IsForLeaders => true;

    public override string Address => $"/coop/{CoopId}/turns/new";

    public RotaOutcome? Outcome => Job?.Result as RotaOutcome;

    public TurnTable? Table { get; private set; }

    /// <summary>Whether something that the turns depend on was changed since.</summary>
    public bool IsStale { get; private set; }

    public IReadOnlyList<string> Balances { get; private set; } = [];

    public IReadOnlyList<OpenPlace> OpenPlaces { get; private set; } = [];

    public async Task OnGetAsync()
    {
        Find();
        IsStale = Outcome is { } outcome && (await ReadAsync(outcome.First, outcome.Last)).Print != outcome.AtHand.Print;
        var lastTerm = await Db.TurnTerms.Where(t => t.CoopId == CoopId).OrderByDescending(t => t.Last).Select(t => (DateOnly?)t.Last).FirstOrDefaultAsync(Ct);
        Input.First = Outcome?.First ?? (lastTerm >= Today ? lastTerm.Value.AddDays(1) : Today);
        Input.Last = Outcome?.Last ?? await Db.CoopMeetings.Where(m => m.CoopId == CoopId && m.On >= Today).OrderByDescending(m => m.On).Select(m => (DateOnly?)m.On).FirstOrDefaultAsync(Ct);
    }

    public IActionResult OnGetProgress()
    {
        Find();
        return this.Progress(Waiting);
    }

    public async Task<IActionResult> OnPostAskAsync(bool longer)
    {
        Find();
        if (Input.First is not { } first)
            ModelState.AddModelError("Input.First", "Say from which day on.");
        else if (first < Today)
            ModelState.AddModelError("Input.First", "A rota begins today or later: what was, is kept.");
        if (Input.Last is not { } last)
            ModelState.AddModelError("Input.Last", "Say up to which day.");
        else if (last < Input.First)
            ModelState.AddModelError("Input.Last", "The last day is not before the first.");
        else if (await RotaTaking.FaultAsync(Db, CoopId, Input.First ?? last, last, Ct) is { } beyond)
            ModelState.AddModelError("Input.Last", beyond);
        if (!ModelState.IsValid)
            return Again();
        if (Missing(await ReadAsync(Input.First!.Value, Input.Last!.Value)) is { } fault)
            return Refused(fault);
        if (work.AskRota(Family.Id, CoopId, Input.First.Value, Input.Last.Value, longer ? Effort.Longer : Effort.Usual) is null)
            return Refused(Busy, StatusCodes.Status503ServiceUnavailable);
        return LocalRedirect(Address);
    }

    public IActionResult OnPostCallOff()
    {
        Find();
        return CalledOff();
    }

    /// <param name="job">The rota that was looked at; a newer one is not taken unseen.</param>
    /// <param name="step">Minted with the page: a second sending is known by it.</param>
    public async Task<IActionResult> OnPostTakeAsync(Guid job, Guid step)
    {
        ModelState.Clear();
        Find();
        if (step == Guid.Empty)
            return NotFound();
        if (!await Db.TurnTerms.AnyAsync(t => t.CoopId == CoopId && t.Id == step, Ct))
        {
            if (Line.Find(CoopId, job)?.Result is not RotaOutcome outcome)
                return Refused("The server no longer knows this rota. Ask for it once more.", StatusCodes.Status409Conflict);
            var now = await ReadAsync(outcome.First, outcome.Last);
            if (now.Print != outcome.AtHand.Print || await RotaTaking.FaultAsync(Db, CoopId, outcome.First, outcome.Last, Ct) is not null || RotaCheck.Faults(now.Problem, outcome.Rota.Turns).Count > 0)
                return Refused("Something that the turns depend on was changed since. Nothing was taken; ask for them once more.", StatusCodes.Status409Conflict);
            await RotaTaking.TakeAsync(Db, CoopId, step, now, outcome.Rota, outcome.First, outcome.Last, Mine.Name, Now, Ct);
            if (!await SaveNewAsync())
                return AgainAfterOthers();
            Say("The rota is taken. All families see it.");
        }

        return LocalRedirect($"/coop/{CoopId}/turns?termId={step}");
    }

    private static string? Missing(RotaAtHand atHand) => atHand.Problem switch
    {
        { Meetings.Count: 0 } => "No meeting stands between these days. Set the meetings first.",
        { Roles.Count: 0 } => "No role is there yet. Add the roles first.",
        { Adults.Count: 0 } => "No family has named an adult yet.",
        _ => RotaProblemFaults.Of(atHand.Problem) is [var first, ..] ? first : null,
    };

    private void Find()
    {
        Job = Line.Newest(CoopId, CoopWork.RotaKey);
        if (Outcome is not { } outcome)
            return;
        Table = TurnTable.Of($"Turns from {outcome.First:d MMMM} to {outcome.Last:d MMMM yyyy}, not taken yet", outcome.AtHand.Problem, outcome.Rota, Family.Id);
        Balances = [.. outcome.Rota.Balances.Select(b => RotaWords.Balance(outcome.AtHand.Problem, b))];
        OpenPlaces = [.. outcome.Rota.Gaps.Select(g => new OpenPlace(g.Meeting, g.Sentence, [.. g.Helps.Select(h => h.Sentence)]))];
    }

    private Task<RotaAtHand> ReadAsync(DateOnly first, DateOnly last) => RotaAtHand.LoadAsync(Db, CoopId, first, last, withKept: false, Ct);

    public sealed class InputModel
    {
        public DateOnly? First { get; set; }
        public DateOnly? Last { get; set; }
    }
}
