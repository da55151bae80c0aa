using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Week.Ways;

/// <summary>Where a child stands under the law, as the calendar is and as it would be.</summary>
public sealed record StandingLine(string Name, string Before, string After);

/// <summary>A way on as it is shown.</summary>
/// <param name="Step">Minted with the page: a second sending of its form is known by it.</param>
/// <param name="Lost">One sentence a child: which minutes of which subjects would not be taught.</param>
public sealed record WayView(Future Future, Guid Step, string Heading, string Tells, IReadOnlyList<string> Lost, int LostMinutes);

/// <summary>The three ways on after something upset the plan: asked for, shown side by side, taken.</summary>
public abstract class WaysPage(AppDb db, TimeProvider clock, LayoutLine line) : FamilyPage(db, clock)
{
    public JobStanding? Job { get; private set; }
    public UpsetOutcome? Outcome => Job?.Result as UpsetOutcome;
    public IReadOnlyList<WayView> Ways { get; private set; } = [];
    public IReadOnlyList<StandingLine> Standings { get; private set; } = [];

    /// <summary>This page, with the question it answers.</summary>
    public abstract string Address { get; }
    public abstract string Title { get; }
    protected abstract string Key { get; }
    protected abstract Guid? Ask();

    public string At(string handler) => $"{Address}{(Address.Contains('?', StringComparison.Ordinal) ? '&' : '?')}handler={handler}";

    protected async Task FindAsync()
    {
        Job = line.Newest(Family.Id, Key);
        if (Outcome is not { } outcome)
            return;
        var names = await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        var subjects = await Db.Subjects.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Name, Ct);
        Ways = [.. outcome.Futures.Select(f => ViewOf(f, outcome.Upset, names, subjects))];
        if (outcome.Upset.Lost.Count > 0)
            Standings = await StandingsAsync(new DayRange(outcome.Upset.Lost[0], outcome.Upset.Lost[^1]));
    }

    protected IActionResult AskAgain()
    {
        if (Ask() is not null)
            return LocalRedirect(Address);
        ModelState.AddModelError("", JobWords.Busy);
        return Again(StatusCodes.Status503ServiceUnavailable);
    }

    public WorkAtHand Waiting => new(Job, JobWords.Of(Job), Address, At("Progress"), "the answer is kept for an hour");

    /// <param name="job">The answer that was looked at; a newer one is not taken unseen.</param>
    protected async Task<IActionResult> TakeAsync(Guid job, FutureKind kind, Guid step)
    {
        if (step == Guid.Empty || !Enum.IsDefined(kind))
            return BadRequest();
        if (await Db.PlanSteps.AnyAsync(s => s.Id == step, Ct))
            return Taken(step);
        if (line.Find(Family.Id, job) is not { Result: UpsetOutcome outcome } found || found.Key != Key)
            return Overtaken(JobWords.Forgotten);
        var future = outcome.Futures.First(f => f.Kind == kind);
        if (await PlanPrint.OfAsync(Db, outcome.Upset.From, Ct) != outcome.Print || await PlanStep.TakeAsync(Db, step, future.Proposal, await AuthorAsync(), Now, Ct) != PlanAnswer.Taken || !await SaveNewAsync())
            return Overtaken("Something of this plan was changed since the three ways were looked for. Nothing was taken; look once more.");
        return Taken(step);
    }

    protected abstract IActionResult Taken(Guid stepId);

    private IActionResult Overtaken(string sentence)
    {
        Db.ChangeTracker.Clear();
        ModelState.AddModelError("", sentence);
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<IReadOnlyList<StandingLine>> StandingsAsync(DayRange away)
    {
        if (await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).FirstOrDefaultAsync(y => y.First <= Today && y.Last >= Today, Ct) is not { } year)
            return [];
        var all = await LearnerStanding.LoadAllAsync(Db, Family, year, Today, Ct);
        var without = new Supposition(away, null, null);
        return [.. all.Select(s => new StandingLine(s.Law.Learner.Name, s.Now?.Brief ?? "", Of(without.Of(s.Question, s.Law.Spans))?.Brief ?? "")).Where(l => l.Before.Length > 0)];

        PathwayStanding? Of(IReadOnlyList<PathwayStanding> supposed) => supposed.FirstOrDefault(p => p.Span.Holds(Today)) ?? (supposed.Count > 0 ? supposed[^1] : null);
    }

    private static WayView ViewOf(Future future, Upset upset, List<Learner> learners, Dictionary<Guid, string> subjects)
    {
        var lost = learners.Select(l => (l.Name, Of: future.Lost.Where(m => m.LearnerId == l.Id).OrderByDescending(m => m.Minutes).ToList())).Where(l => l.Of.Count > 0)
            .Select(l => $"{l.Name}: {DayWords.Names(l.Of.Select(m => $"{subjects.GetValueOrDefault(m.SubjectId, "")} {DayWords.Length(m.Minutes)}"))}");
        var (heading, tells) = WayWords.Of(future, upset);
        return new WayView(future, Guid.CreateVersion7(), heading, tells, [.. lost], future.Lost.Sum(m => m.Minutes));
    }
}
