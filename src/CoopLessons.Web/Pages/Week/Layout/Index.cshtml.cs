using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week.Layout;

/// <summary>A session without a place, with what can be chosen for it.</summary>
public sealed record MisfitLine(Misfit Misfit, string Title, string Who, string Key, bool IsActivity, int? Shorter);

/// <summary>What was chosen for a session when asking, and the choices that stay when it is taken back.</summary>
public sealed record ChosenLine(string Tells, IReadOnlyList<string> Others);

/// <summary>
/// Lays a week out: asks for it, shows how far it is, shows the plan before it is taken, and takes it. The work is done in a
/// line of its own; the page can be left and found again.
/// </summary>
public sealed class IndexModel(AppDb db, TimeProvider clock, LayoutLine line, FamilyWork work) : FamilyPage(db, clock)
{
    public IsoWeek Shown { get; private set; }
    public JobStanding? Job { get; private set; }
    public WeekLaid? Laid => (Job?.Result as WeekOutcome)?.Laid;

    /// <summary>Whether a week was asked for that has no day left.</summary>
    public bool NoDays => Job?.Result is WeekOutcome { Laid: null };
    public IReadOnlyList<LaidDay> Days { get; private set; } = [];
    public IReadOnlyList<MisfitLine> Misfits { get; private set; } = [];
    public IReadOnlyList<ChosenLine> Chosen { get; private set; } = [];

    /// <summary>What was said of single sessions, as the next form carries it on.</summary>
    public IReadOnlyList<string> Choices => Job?.Result is WeekOutcome outcome ? AskForm.Write(outcome.Ask) : [];

    /// <summary>Whether the week was changed since it was laid out, so that the layout can no longer be taken.</summary>
    public bool IsStale { get; private set; }

    /// <summary>Whether something would change.</summary>
    public bool HasChanges => Laid is { } laid && !laid.Proposal.IsEmpty;

    public string Address => $"/week/layout/{Shown.Iso}";

    public WorkAtHand Waiting => new(Job, JobWords.Of(Job), Address, Address + "?handler=Progress", "the layout is kept for an hour");

    public async Task<IActionResult> OnGetAsync(string week)
    {
        if (!TryLoad(week))
            return NotFound();
        IsStale = Laid is { } laid && await AsItStandsAsync(laid) is null;
        return Page();
    }

    public IActionResult OnGetProgress(string week) => TryLoad(week) ? this.Progress(Waiting) : NotFound();

    public IActionResult OnPostAsk(string week, List<string> choices, bool longer)
    {
        if (!TryLoad(week))
            return NotFound();
        if (!ModelState.IsValid || AskForm.Read(choices) is not { } ask)
            return BadRequest();
        if (work.AskWeek(Family.Id, Shown, ask, longer ? Effort.Longer : Effort.Usual) is null)
        {
            ModelState.AddModelError("", JobWords.Busy);
            return Again(StatusCodes.Status503ServiceUnavailable);
        }

        return LocalRedirect(Address);
    }

    public IActionResult OnPostCallOff(string week)
    {
        if (!TryLoad(week))
            return NotFound();
        if (Job is { IsOver: false })
            line.Cancel(Family.Id, Job.Id);
        return LocalRedirect(Address);
    }

    /// <param name="job">The layout that was looked at; a newer one is not taken unseen.</param>
    /// <param name="step">Minted with the page: a second sending is known by it.</param>
    public async Task<IActionResult> OnPostTakeAsync(string week, Guid job, Guid step)
    {
        if (!TryLoad(week) || step == Guid.Empty)
            return NotFound();
        if (!await Db.PlanSteps.AnyAsync(s => s.Id == step, Ct))
        {
            if (line.Find(Family.Id, job)?.Result is not WeekOutcome { Laid: { } laid } || laid.AtHand.Week != Shown)
                return Overtaken(JobWords.Forgotten);
            if (await AsItStandsAsync(laid) is not { } now)
                return Overtaken("Something of this week was changed since it was laid out. Nothing was taken; lay it out once more.");
            WeekLaid.Check(now.Problem, laid.Plan.Places);
            if (await PlanStep.TakeAsync(Db, step, laid.Proposal, await AuthorAsync(), Now, Ct) != PlanAnswer.Taken || !await SaveNewAsync())
                return Overtaken("Something of this week was changed at the same moment. Nothing was taken; lay it out once more.");
        }

        return LocalRedirect($"/week/{Shown.Iso}?step={step}");
    }

    /// <summary>The week read anew; null where it is no longer the one that was laid out.</summary>
    private async Task<WeekAtHand?> AsItStandsAsync(WeekLaid laid)
    {
        var now = await WeekReading.LoadAsync(Db, Shown, laid.AtHand.Today, laid.AtHand.Now, laid.AtHand.Ask, Ct);
        return now?.Fingerprint == laid.AtHand.Fingerprint ? now : null;
    }

    private IActionResult Overtaken(string sentence)
    {
        ModelState.AddModelError("", sentence);
        return Again(StatusCodes.Status409Conflict);
    }

    private bool TryLoad(string week)
    {
        if (!DayWords.TryWeek(week, out var shown))
            return false;
        Shown = shown;
        Job = line.Newest(Family.Id, FamilyWork.KeyOf(shown));
        if (Laid is { } laid)
        {
            Days = LaidDay.Of(laid);
            Misfits = [.. laid.Plan.Misfits.Select(m => LineOf(laid, m))];
            Chosen = [.. Choices.Select(c => new ChosenLine(Told(laid, c), [.. Choices.Where(o => o != c)]))];
        }

        return true;
    }

    private static MisfitLine LineOf(WeekLaid laid, Misfit misfit)
    {
        var wanted = laid.AtHand.Of(misfit.SessionId);
        return new MisfitLine(
            misfit, wanted.Title, DayWords.Who([.. laid.AtHand.Learners.Where(l => wanted.Learners.Contains(l.Id))], laid.AtHand.Learners), wanted.Key,
            wanted.Source.ActivityId is not null, AskForm.Shortened(wanted.Minutes));
    }

    private static string Told(WeekLaid laid, string choice)
    {
        var parts = choice.Split(':');
        var title = laid.AtHand.Wanted.Concat(laid.AtHand.Omitted).FirstOrDefault(w => w.Key == parts[1])?.Title ?? "Something that is gone by now";
        return parts[0] switch
        {
            "leave" => $"{title}: left out",
            "next" => $"{title}: next week",
            "help" => $"{title}: somebody else sees to it",
            _ => $"{title}: in {parts[2]} minutes",
        };
    }
}
