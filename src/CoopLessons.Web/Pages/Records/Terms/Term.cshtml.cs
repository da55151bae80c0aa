using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A report on a term: every sentence can be changed until it is finished; then it is read.</summary>
public sealed class TermModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public TermInput Input { get; set; } = new();

    public TermReport Report { get; private set; } = null!;
    public SchoolYear Year { get; private set; } = null!;

    /// <summary>The term as log and plan hold it now.</summary>
    public TermAtHand Term { get; private set; } = null!;

    /// <summary>What changed in the log since the report was finished; null where nothing did.</summary>
    public string? Since => Report.Totals is not { } then || then.Fingerprint == Term.Fingerprint ? null
        : $"The log of these days has changed since: it now holds {Term.Log.Ledger.Total.Clock} hours on {RecordWords.SchoolDays(Term.Log.Days.Strict)}. This report stays as it was; draft it anew if a corrected one is needed.";

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (!await LoadAsync(id))
            return NotFound();
        Input = TermInput.From(Report, Term.Told(Report));
        return Page();
    }

    /// <param name="finish">Fixes every figure and sentence.</param>
    public async Task<IActionResult> OnPostAsync(Guid id, bool finish)
    {
        if (!await LoadAsync(id))
            return NotFound();
        if (Report.IsFinished)
        {
            Say("This report is finished; it stays as it was sent.");
            return LocalRedirect($"/records/terms/{id}");
        }

        if (Input is { First: { } first, Last: { } last } && (last < first || !Year.Days.Contains(first) || !Year.Days.Contains(last)))
            ModelState.AddModelError("Input.First", $"Choose two days of {Year.Name}: {Year.Days}, the earlier one first.");
        if (Input.Parts.Count == 0 || Input.Parts.Exists(p => !Enum.IsDefined(p)))
            ModelState.AddModelError("Input.Parts", "Tick at least one thing that the report holds.");
        if (!ModelState.IsValid)
            return Again();
        var days = new DayRange(Input.First!.Value, Input.Last!.Value);
        if (days != Report.Days)
            Term = (await TermAtHand.LoadAsync(Db, Report.LearnerId, Year, days, Today, Ct))!;
        var told = Input.Told(Term);
        if (finish && !MayFinish(days, told))
            return Again();
        Expect(Report, Input.Version);
        Report.Describe(Input.Title!.Trim(), days, Input.Parts, (Input.Opening ?? "").Trim(), told.Concat(Term.Unshown(Report)).ToList());
        if (finish)
            Report.Finish(Term.Totals(Family.Name), Term.Fixed(told), Today, await AuthorAsync());
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say(finish ? "Finished. It stays as it is now; take the PDF and hand it in." : "Saved.");
        return LocalRedirect($"/records/terms/{id}");
    }

    /// <param name="version">What the page that asked had seen: what somebody else saved since is not thrown away unread.</param>
    public async Task<IActionResult> OnPostRemoveAsync(Guid id, int version)
    {
        ModelState.Clear();
        if (!await LoadAsync(id))
            return NotFound();
        if (!Report.IsFinished)
        {
            Expect(Report, version);
            Db.TermReports.Remove(Report);
            if (!await SaveAsync())
            {
                Say("Somebody changed this draft meanwhile; it was not thrown away. Look at it once more.");
                return LocalRedirect($"/records/terms/{id}");
            }

            Say("The draft is gone.");
        }

        return Redirect(Url.Page("/Records/Terms/Index", new { learner = Report.LearnerId, year = Report.SchoolYearId })!);
    }

    /// <summary>Whether less was covered than the law lets pass without a word.</summary>
    public bool IsUnder(TermSubject subject, int? perCent) =>
        !subject.Subject.Topic && Report.ExplainUnder is { } figure && Report.Parts.Contains(ReportPart.Material) && (perCent is { } said ? said < figure : subject.Covered.IsUnder(figure));

    public string Fault(int index, string field) => ModelState[$"Input.Subjects[{index}].{field}"]?.Errors.FirstOrDefault()?.ErrorMessage ?? "";

    private bool MayFinish(DayRange days, IReadOnlyList<TermSubjectTold> told)
    {
        if (days.Last > Today)
            ModelState.AddModelError("Input.Last", $"The term ends on {RecordWords.Of(days.Last)}. It can be finished when it is over.");
        for (var i = 0; i < told.Count; i++)
        {
            var at = Input.Subjects.FindIndex(s => s.Key == told[i].Key);
            if (IsUnder(Term.Subjects[i], told[i].PerCent) && told[i].Explanation.Length == 0)
                ModelState.AddModelError($"Input.Subjects[{at}].Explanation", $"Less than {Report.ExplainUnder} per cent of the plan was covered: say why.");
        }

        return ModelState.IsValid;
    }

    private async Task<bool> LoadAsync(Guid id)
    {
        if (await Db.TermReports.SingleOrDefaultAsync(r => r.Id == id, Ct) is not { } report)
            return false;
        Report = report;
        Year = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleAsync(y => y.Id == report.SchoolYearId, Ct);
        Term = (await TermAtHand.LoadAsync(Db, report.LearnerId, Year, report.Days, Today, Ct))!;
        return true;
    }
}
